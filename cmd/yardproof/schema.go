package main

import (
	"context"

	"yardproof/exporters"
	"yardproof/pipeline/store"
	"yardproof/schema"
)

func schemaCommand() command {
	return command{
		name: "schema", args: "plan|project|baseline|report|result",
		summary: "print the JSON Schema of a plan, the project file, a baseline, the JSON report or a result",
		about: `The schema is draft-07. An editor that is told of it completes keys and shows
what they mean.
`,
		takes: plainOffers("plan", "project", "report"),
		run:   printSchema,
	}
}

func printSchema(_ context.Context, s streams, _ *options, args []string) (int, error) {
	if len(args) != 1 {
		return 0, misuse("name one schema: plan, project, baseline, report or result")
	}
	text, ok := schema.ForEditors(args[0])
	if args[0] == "report" {
		text, ok = exporters.ReportSchema(), true
	}
	if args[0] == "result" {
		text, ok = store.ResultSchema(), true
	}
	if !ok {
		return 0, misuse("there is no schema %q: name plan, project, baseline, report or result", args[0])
	}
	_, err := s.stdout.Write(text)
	return exitClean, err
}
