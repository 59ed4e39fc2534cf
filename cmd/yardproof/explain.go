package main

import (
	"context"
	"io"

	"yardproof/pipeline/check"
)

func explainCommand() command {
	return command{
		name: "explain", args: "[RULE]",
		summary: "say why a rule is there, with an example, or list all rules",
		takes:   ruleOffers,
		run:     explain,
	}
}

func explain(_ context.Context, s streams, _ *options, args []string) (int, error) {
	text, known := check.Catalogue(), true
	switch len(args) {
	case 0:
	case 1:
		if text, known = check.Explain(args[0]); !known {
			text, known = check.Family(args[0])
		}
	default:
		return 0, misuse("explain takes one rule, not %d", len(args))
	}
	if !known {
		return 0, misuse("there is no rule %q; `yardproof explain` lists them all", args[0])
	}
	_, err := io.WriteString(s.stdout, text)
	return exitClean, err
}
