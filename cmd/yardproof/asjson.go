package main

import (
	"encoding/json"

	"github.com/spf13/pflag"
)

// printsOnly are the exit statuses of a command that only prints.
const printsOnly = `Exit status:
  0  it was printed
  2  the command line makes no sense, and nothing was printed
`

// asJSONFlag declares --json.
func asJSONFlag(usage string) func(*pflag.FlagSet, *options) {
	return func(f *pflag.FlagSet, o *options) { f.BoolVar(&o.asJSON, "json", false, usage) }
}

// json prints a value for programs.
func (s streams) json(v any) error {
	e := json.NewEncoder(s.stdout)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
