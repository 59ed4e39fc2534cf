package derive_test

import (
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// What could not be counted is missing from the fabric that it would be cut
// from, and from no other. Plans are invented.
func TestWhatIsNotCountedIsMissing(t *testing.T) {
	for _, c := range []struct{ name, change, to, short string }{
		{"all counted", "", "", ""},
		{"a binding of strips no longer than a join costs", `"40" } }, "edge": {"yardage": {}`, `"40" } }, "edge": {"yardage": {"usable_width": "2"}`, "edge"},
		{"a sleeve without depth", `"cut": "8 1/2"`, `"cut": "1/2"`, "edge"},
		{"a backing of precut pieces", `"back": {"yardage": {}`, `"back": {"precut": {"piece": ["10", "10"], "count": 40}`, "back"},
		{"a bias square too small for one strip", `"binding": {"fabric": "edge"`, `"binding": {"kind": "continuous bias", "square": "3", "fabric": "edge"`, "edge"},
		{"segments longer than a strip", `"segment": "4"`, `"segment": "41"`, "sky"},
		{"a tube of sets that are cut into segments", `{"rows": [["pair"], ["pair"]]}`, `{"tube": {"sets": ["pair", "pair"]}}`, "sky back edge"},
		{"a fabric that is not there", `"backing": {"fabric": "back"`, `"backing": {"fabric": "bakc"`, "sky back edge"},
		{"a part that is not there", `["pair"]`, `["piar"]`, "sky back edge"},
		{"a ring of parts", `{"rows": [["pair"], ["pair"]]}`, `{"rows": [["pair"], ["block"]]}`, "sky back edge"},
	} {
		text := strings.Replace(`{"format": 1, "id": "counted", "title": "Counted", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"sky": { "yardage": { "usable_width": "40" } }, "edge": {"yardage": {}}, "back": {"yardage": {}}},
			"parts": {"pair": {"strip_set": {"segment": "4", "strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}]}},
				"block": {"rows": [["pair"], ["pair"]]}},
			"layout": {"grid": {"rows": 2, "columns": 2, "blocks": [["block"]]}},
			"finish": {"backing": {"fabric": "back"}, "binding": {"fabric": "edge", "cut": "2 1/2"}, "sleeve": {"fabric": "edge", "cut": "8 1/2"}},
			"sizes": {"only": {}}}`, c.change, c.to, 1)
		s := derived(t, text)["only"]
		for _, f := range s.Fabrics {
			if got := !s.Sure(derive.Quantity{Kind: derive.Cloth, Name: f.Role.Text}); got != strings.Contains(c.short, f.Role.Text) {
				t.Errorf("%s: %q short: %v", c.name, f.Role.Text, got)
			}
		}
	}
}
