package main

import (
	"context"

	"yardproof/schema"
)

func schemaCommand() command {
	return command{
		name: "schema", args: "plan|project",
		summary: "print the JSON Schema of a plan or of the project file",
		about: `The schema is draft-07. An editor that is told of it completes keys and shows
what they mean.
`,
		run: printSchema,
	}
}

func printSchema(_ context.Context, s streams, _ *options, args []string) (int, error) {
	if len(args) != 1 {
		return 0, misuse("name one schema: plan or project")
	}
	text, ok := schema.Text(args[0])
	if !ok {
		return 0, misuse("there is no schema %q: name plan or project", args[0])
	}
	_, err := s.stdout.Write(text)
	return exitClean, err
}
