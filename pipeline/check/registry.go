package check

import (
	"cmp"
	"slices"

	"yardproof/pipeline/diag"
)

// registry is every rule, sorted by name. Nothing writes to it.
var registry = sorted(
	runningChecks,
	readingChecks,
	costChecks,
	contentsChecks,
	labourChecks,
	priceChecks,
	listChecks,
	supplyChecks,
	orderChecks,
	referenceChecks,
	toolChecks,
	piecingChecks,
	unitChecks,
	shapeChecks,
	recutChecks,
	unlikelyChecks,
	yieldChecks,
	fabricChecks,
	shortChecks,
	zoneChecks,
	carefulChecks,
	layoutChecks,
	printedChecks,
	printedTopChecks,
	printedCoverChecks,
	followChecks,
	finishChecks,
	edgeChecks,
	threadChecks,
	directionChecks,
	articleChecks,
	publishChecks,
	slipChecks,
	wordsChecks,
)

var byRule = index(registry)

// retired are names that rules once had. A name is never used again.
var retired = []string{}

func sorted(families ...[]Check) []Check {
	all := slices.Concat(families...)
	slices.SortFunc(all, func(a, b Check) int { return cmp.Compare(a.Rule, b.Rule) })
	return all
}

func index(all []Check) map[string]*Check {
	m := make(map[string]*Check, len(all))
	for i := range all {
		m[all[i].Rule] = &all[i]
	}
	return m
}

// Rules lists every rule, sorted by name. The slice must not be written to.
func Rules() []Check { return registry }

// Find finds a rule by name.
func Find(rule string) (Check, bool) {
	c := byRule[rule]
	if c == nil {
		return Check{}, false
	}
	return *c, true
}

// Of is the rule of a finding; the zero Check where there is none of its name.
func Of(f diag.Finding) Check {
	c, _ := Find(f.Rule)
	return c
}
