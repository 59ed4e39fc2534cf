package check

import (
	"encoding/json"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/schema/source"
)

// squares is a plan without faults: four by four 4 1/2-in squares of one
// fabric. Tests lay a JSON Merge Patch (RFC 7396) over it.
const squares = `{
	"format": 1, "id": "squares", "title": "Squares", "status": "testing", "skill": "beginner", "use": "table", "units": "in",
	"cautions": ["rotary-cutter", "iron"],
	"seam": {"allowance": "1/4", "stitch": "301"},
	"fabrics": {"sky": {"yardage": {}}},
	"parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
	"layout": {"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}},
	"sizes": {"small": {}},
	"printed": {"small": "not printed"}
}`

// tubes is a plan without faults: ten squares from tubes of three precut
// strips, five a tube.
const tubes = `{
	"format": 1, "id": "tubes", "title": "Tubes", "status": "testing", "skill": "beginner", "use": "table", "units": "in",
	"cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside"],
	"seam": {"allowance": "1/4", "stitch": "301"},
	"fabrics": {"roll": {"precut": {"piece": ["2 1/2", "42"], "usable": ["2 1/2", "41 1/2"], "count": 40}}},
	"tools": {"rulers": [{"square": "12 1/2", "angles": [45]}]},
	"parts": {
		"trio": {"strip_set": {"strips": ["roll", "roll", "roll"]}},
		"step": {"tube": {"sets": ["trio", "trio"], "ends": "corners only"}}
	},
	"layout": {"grid": {"rows": 5, "columns": 2, "blocks": [["step"]]}},
	"sizes": {"small": {}},
	"printed": {"small": "not printed"}
}`

// try checks a plan with patches laid over it.
func try(t *testing.T, plan string, patches ...string) []diag.Finding {
	t.Helper()
	_, found := checkText(source.New("try.plan.json", textOf(t, plan, patches...)), nil)
	return found
}

// textOf is a plan with patches laid over it.
func textOf(t *testing.T, plan string, patches ...string) []byte {
	t.Helper()
	value := decoded(t, plan)
	for _, p := range patches {
		value = patched(value, decoded(t, p))
	}
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func decoded(t *testing.T, text string) any {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%v in %s", err, text)
	}
	return v
}

func patched(base, patch any) any {
	changes, ok := patch.(map[string]any)
	if !ok {
		return patch
	}
	out, ok := base.(map[string]any)
	if !ok {
		out = map[string]any{}
	}
	for key, v := range changes {
		if v == nil {
			delete(out, key)
		} else {
			out[key] = patched(out[key], v)
		}
	}
	return out
}

// rulesOf lists the rules of findings, each once, in their order.
func rulesOf(found []diag.Finding) string {
	var rules []string
	for _, f := range found {
		if n := len(rules); n == 0 || rules[n-1] != f.Rule {
			rules = append(rules, f.Rule)
		}
	}
	return strings.Join(rules, " ")
}

// tried is a patch and what comes of it.
type tried struct {
	name  string
	patch string
	rules string // that fire, in order
	says  string // a part of what is said
}

func tryAll(t *testing.T, plan string, all []tried) {
	for _, c := range all {
		t.Run(c.name, func(t *testing.T) {
			found := try(t, plan, c.patch)
			if got := rulesOf(found); got != c.rules {
				t.Errorf("rules: got %q, want %q\n%s", got, c.rules, short(found))
			}
			if !strings.Contains(short(found), c.says) {
				t.Errorf("not said: %s\n%s", c.says, short(found))
			}
		})
	}
}

func TestPlansOfTheseTestsAreClean(t *testing.T) {
	for _, plan := range []string{squares, tubes} {
		if found := try(t, plan); len(found) > 0 {
			t.Errorf("not clean:\n%s", short(found))
		}
	}
}
