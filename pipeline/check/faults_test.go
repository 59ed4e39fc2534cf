package check

import (
	"slices"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// Every kind of fault that rooms know of is a rule of its name, which has a pair
// of plans to show that it fires, as TestRegistry holds of all rules.
func TestFaultKindsAreRules(t *testing.T) {
	kinds := derive.FaultKinds()
	if !slices.IsSorted(kinds) {
		t.Error("not in order")
	}
	for _, kind := range kinds {
		if _, ok := Find(string(kind)); !ok {
			t.Errorf("%s is no rule", kind)
		}
	}
}
