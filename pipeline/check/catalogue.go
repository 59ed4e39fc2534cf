package check

import (
	_ "embed"
	"fmt"
	"strings"
)

// catalogue is every rule with its reason, its mending and a worked example.
// It is generated from the rules and their fixtures; a test keeps it fresh.
//
//go:embed CHECKS.md
var catalogue string

// Catalogue is the whole catalogue, in Markdown.
func Catalogue() string { return catalogue }

// Explain is a rule's entry in the catalogue, in Markdown.
func Explain(rule string) (string, bool) {
	c := byRule[rule]
	if c == nil {
		return "", false
	}
	heading := entryHeading(c)
	_, after, ok := strings.Cut(catalogue, heading)
	if !ok {
		return entry(c, ""), true // a rule newer than the catalogue
	}
	text, _, _ := strings.Cut(after, "\n## ")
	return heading + strings.TrimRight(text, "\n") + "\n", true
}

// Family is a line for each rule of a family, such as "fabric" or "fabric/".
func Family(name string) (string, bool) {
	var b strings.Builder
	for i := range registry {
		if c := &registry[i]; strings.HasPrefix(c.Rule, strings.TrimSuffix(name, "/")+"/") {
			fmt.Fprintf(&b, "%s: %s (%s)\n", c.Rule, c.Summary, levels(c))
		}
	}
	return b.String(), b.Len() > 0
}

func entryHeading(c *Check) string { return "## " + c.Rule + "\n" }

// entry is what the catalogue says of a rule. The example is what yardproof
// printed of the rule's fixture, empty where there is none.
func entry(c *Check, example string) string {
	var b strings.Builder
	b.WriteString(entryHeading(c))
	fmt.Fprintf(&b, "\n%s: %s.\n", levels(c), c.Summary)
	fmt.Fprintf(&b, "\nWhy: %s\n", c.Why)
	fmt.Fprintf(&b, "\nWhat to do: %s.\n", c.Fix)
	if example != "" {
		b.WriteString("\nFor example:\n\n")
		for line := range strings.Lines(strings.TrimRight(example, "\n") + "\n") {
			b.WriteString(strings.TrimRight("    "+line, " \n") + "\n")
		}
	}
	return b.String()
}

func levels(c *Check) string {
	if c.Lesser != 0 {
		return fmt.Sprintf("%s, or %s when less is at stake", c.Level, c.Lesser)
	}
	return c.Level.String()
}
