package main

import (
	"strings"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/check"
	"yardproof/schema/plan"
)

// commas are the values of a flag that may be given several times, and each
// time with several after commas.
func commas(values []string) []string {
	var all []string
	for _, v := range values {
		all = append(all, strings.Split(v, ",")...)
	}
	return all
}

// reportsOf are the values of --report. A path may hold commas: only one before
// the name of a format and an equals sign parts two reports.
func reportsOf(values []string) []string {
	var all []string
	for _, v := range values {
		first := true
		for part := range strings.SplitSeq(v, ",") {
			name, _, ok := strings.Cut(part, "=")
			if _, known := exporters.Report(name); first || ok && known {
				all = append(all, part)
			} else {
				all[len(all)-1] += "," + part
			}
			first = false
		}
	}
	return all
}

// ruleLevels understands --rule.
func ruleLevels(flags []string) (pipeline.Levels, error) {
	levels := pipeline.Levels{}
	for _, flag := range commas(flags) {
		rule, level, ok := strings.Cut(flag, "=")
		if !ok {
			return nil, misuse("--rule %q: write NAME=LEVEL, like fabric/tight=note", flag)
		}
		if _, twice := levels[rule]; twice {
			return nil, misuse("--rule %q: the rule has a level already", flag)
		}
		if err := levels.Set(rule, level); err != nil {
			return nil, misuse("--rule %q: %w", flag, err)
		}
	}
	return levels, nil
}

// changeableRules are the rules that can have another level.
func changeableRules() []string {
	var names []string
	for _, c := range check.Rules() {
		if (pipeline.Levels{}).Set(c.Rule, "off") == nil {
			names = append(names, c.Rule)
		}
	}
	return names
}

// globs understands --exclude.
func globs(flags []string) ([]plan.Glob, error) {
	var all []plan.Glob
	for _, flag := range flags {
		g, err := plan.ParseGlob(flag)
		if err != nil {
			return nil, misuse("--exclude %q: %w", flag, err)
		}
		all = append(all, g)
	}
	return all, nil
}
