package main

import (
	"context"
	"io"
	"strings"

	"yardproof/pipeline/check"
)

func explainCommand() command {
	return command{
		name: "explain", args: "[RULE]",
		summary: "say why a rule is there, with an example, or list all rules",
		about: `A family, like fabric/, lists its rules. With --json each rule has its level,
the lesser level that it also reports at, title, reason, what to do, and its
entry in the catalogue as Markdown, example included.
`,
		flags: asJSONFlag("print rules as JSON"),
		exits: printsOnly,
		takes: ruleOffers,
		run:   explain,
	}
}

func explain(_ context.Context, s streams, o *options, args []string) (int, error) {
	if len(args) > 1 {
		return 0, misuse("explain takes one rule, not %d", len(args))
	}
	name := strings.Join(args, "")
	rules := explained(name)
	text, _ := check.Explain(name)
	switch {
	case len(rules) == 0:
		return 0, misuse("there is no rule %q; `yardproof explain` lists them all", name)
	case o.asJSON:
		return exitClean, s.json(map[string]any{"rules": rules})
	case name == "":
		text = check.Catalogue()
	case text == "":
		text, _ = check.Family(name)
	}
	_, err := io.WriteString(s.stdout, text)
	return exitClean, err
}

// explainedRule is a rule for programs.
type explainedRule struct {
	Rule   string `json:"rule"`
	Level  string `json:"level"`
	Lesser string `json:"lesser_level,omitempty"` // that it also reports at
	Title  string `json:"title"`
	Why    string `json:"why"`
	Fix    string `json:"what_to_do"`
	Text   string `json:"text"` // its entry in the catalogue, Markdown
}

// explained are all rules, those of a family, or one.
func explained(name string) []explainedRule {
	var rules []explainedRule
	for _, c := range check.Rules() {
		if name != "" && c.Rule != name && !strings.HasPrefix(c.Rule, strings.TrimSuffix(name, "/")+"/") {
			continue
		}
		r := explainedRule{Rule: c.Rule, Level: c.Level.String(), Title: c.Summary, Why: c.Why, Fix: c.Fix}
		r.Text, _ = check.Explain(c.Rule)
		if c.Lesser != 0 {
			r.Lesser = c.Lesser.String()
		}
		rules = append(rules, r)
	}
	return rules
}
