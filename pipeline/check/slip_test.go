package check

import (
	"testing"

	"yardproof/pipeline/diag"
)

// The rules that speak of a slip, and those that do not, are rules.
func TestSpeakingRulesAreRules(t *testing.T) {
	for _, rule := range append(append([]string{}, silent...), outspoken...) {
		if byRule[rule] == nil {
			t.Errorf("there is no rule %s", rule)
		}
	}
	for rule, want := range map[string]bool{
		"printed/finished": true, "piecing/row-heights": true, "reference/cycle": true,
		"printed/short-of-cloth": false, "piecing/off-grid": false, "fabric/impossible": false, "reference/unknown-part": false, "cost/under-target": false,
	} {
		if got := Speaks(diag.Finding{Rule: rule}); got != want {
			t.Errorf("%s speaks of a slip: %v", rule, got)
		}
	}
}
