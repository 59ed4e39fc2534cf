package check

import (
	"testing"

	"yardproof/pipeline/diag"
)

func TestSpeakingRules(t *testing.T) {
	for rule, want := range map[string]bool{
		"printed/finished": true, "piecing/row-heights": true, "reference/cycle": true,
		"printed/short-of-cloth": false, "piecing/off-grid": false, "fabric/impossible": false, "reference/unknown-part": false, "cost/under-target": false,
	} {
		if byRule[rule] == nil {
			t.Errorf("there is no rule %s", rule)
		}
		if got := Of(diag.Finding{Rule: rule}).Speaks; got != want {
			t.Errorf("%s speaks of a slip: %v", rule, got)
		}
	}
}
