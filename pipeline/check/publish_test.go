package check

import (
	"os"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/caution"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

func TestCautionsOfTechniques(t *testing.T) {
	tryAll(t, squares, []tried{
		{"overlock", `{"seam": {"stitch": "514"}}`, "publish/cautions", `add "overlock", "pins" to the cautions`},
		{"one overlocked part", `{"parts": {"block": {"rows": [["square", "square"]], "seam": {"stitch": "504", "why": "try"}}}, "layout": {"grid": {"blocks": [["block"]]}}}`,
			"publish/cautions", "overlock (seams are overlocked), pins"},
		{"four at a time", `{"fabrics": {"edge": {"yardage": {}}}, "parts": {"square": {"cut": null, "half_squares": {"fabrics": ["sky", "edge"], "square": "6 7/8", "at_a_time": 4, "trim": "4 1/2"}}},
			"layout": {"borders": {"frame": {"fabric": "edge", "width": "2"}}}}`, "publish/cautions", `add "bias-edges" to the cautions`},
		{"none at all", `{"cautions": null}`, "publish/cautions", `add "cautions": ["rotary-cutter", "iron"]`},
		{"a size that leaves one out", `{"sizes": {"large": {"cautions": ["iron"]}}, "printed": {"large": "not printed"}}`, "publish/cautions", "rotary-cutter (fabric is cut)"},
	})
	tryAll(t, tubes, []tried{
		{"tip on the raw edge", `{"parts": {"step": {"tube": {"tip": "raw edge"}}}}`, "publish/cautions", "unpick-tip (stitches cross the tips of tube squares)"},
		{"tip a little beyond the seam", `{"parts": {"step": {"tube": {"tip": {"beyond": "1/8"}}}}}`, "publish/cautions", "unpick-tip"},
		{"tip on the far seam", `{"parts": {"step": {"tube": {"tip": "far seam"}}}}`, "", ""},
	})
}

func TestCotSizesNeedTheirCaution(t *testing.T) {
	tryAll(t, squares, []tried{
		{"one size is for a cot", `{"sizes": {"cot": {"use": "cot"}}, "printed": {"cot": "not printed"}}`, "publish/bedding", `size "cot" is for a cot`},
		{"that size says so", `{"sizes": {"cot": {"use": "cot", "cautions": ["rotary-cutter", "iron", "bare-cot"]}}, "printed": {"cot": "not printed"}}`, "", ""},
		{"a draft", `{"status": "draft", "use": "cot"}`, "publish/bedding", ": error: "},
	})
}

// Every key that a plan may list has its sentence, and no other.
func TestCautionKeysAreTheSchemas(t *testing.T) {
	text, err := os.ReadFile("../../schema/plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	tree, _ := jsontree.Parse(source.New("", text), jsontree.Limits{})
	var keys []string
	for _, n := range tree.At("/definitions/cautions/items/enum").Items {
		keys = append(keys, n.Text)
	}
	if got := caution.Keys(); !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(keys))) {
		t.Errorf("the sentences are for %s, the schema has %s", strings.Join(got, " "), strings.Join(keys, " "))
	}
}
