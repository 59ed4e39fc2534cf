package check

import (
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func TestWrongKinds(t *testing.T) {
	tryAll(t, squares, []tried{
		{"a triangle in the layout", `{"cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside"], "parts": {"square": {"cut": {"halved": "once"}}}}`,
			"reference/wrong-kind", `the layout needs four-sided parts, and "square" is a triangle`},
		{"a triangle in a block", `{"parts": {"half": {"cut": {"fabric": "sky", "square": "4 1/2", "halved": "twice"}}, "square": {"cut": null, "rows": [["half"]]}}}`,
			"reference/wrong-kind", `"square" needs four-sided parts, and "half" is a triangle`},
		{"a triangle trimmed", `{"cautions": ["rotary-cutter", "iron", "bias-edges", "bias-outside"], "parts": {"half": {"cut": {"fabric": "sky", "square": "5", "halved": "once"}}, "square": {"cut": null, "trim": {"part": "half", "square": "4 1/2"}}}}`,
			"reference/wrong-kind", `and "half" is a triangle`},
		{"a border of a part", `{"layout": {"borders": {"frame": {"fabric": "square", "width": "2"}}}}`,
			"reference/wrong-kind", `border "frame" needs a fabric, and "square" is a part`},
		{"a kit of a part", `{"kit": {"fabrics": ["square"]}}`, "reference/wrong-kind", `the kit needs a fabric`},
		{"a kit of nothing", `{"kit": {"fabrics": ["sea"]}}`, "reference/unknown-fabric", `write "sky"`},
	})
	tryAll(t, tubes, []tried{
		{"a tube of segments", `{"parts": {"trio": {"strip_set": {"segment": "5"}}}}`, "reference/wrong-kind", `"trio" is cut into segments of 5 in`},
		{"a segment of segments", `{"parts": {"cut": {"strip_set": {"strips": ["roll", "roll"], "segment": "4"}}, "slice": {"strip_set": {"set": "cut", "segment": "3"}}, "step": {"tube": null, "rows": [["slice"]]}, "trio": null}}`, "reference/wrong-kind", `segment "slice" takes whole strip sets, and "cut" is cut into segments of 4 in`},
		{"a tube of no set", `{"parts": {"trio": {"strip_set": null, "strip": {"fabric": "roll"}}}}`, "reference/wrong-kind", `"trio" is none`},
	})
}

func TestTriangleSquaresAreMadeOfTriangles(t *testing.T) {
	for _, c := range []struct {
		halved plan.Halving
		count  int
		says   string
	}{
		{plan.CutOnce, 2, ""},
		{plan.CutTwice, 4, ""},
		{plan.CutTwice, 2, `"unit" is sewn of 2 triangles from squares cut once diagonally, and "half" is cut twice`},
		{plan.CutOnce, 4, `"unit" is sewn of 4 triangles from squares cut twice diagonally, and "half" is cut once`},
		{plan.Whole, 2, `"unit" is sewn of 2 triangles from squares cut once diagonally, and "half" is not cut diagonally`},
	} {
		half := plan.Part{Name: plan.Text{Text: "half"}, Operation: plan.Cut{Halving: c.halved}}
		unit := plan.Part{Name: plan.Text{Text: "unit"}, Operation: plan.TriangleSquare{Of: slices.Repeat([]plan.Text{half.Name}, c.count)}}
		size := derive.Of(&plan.Plan{}, &plan.Size{Parts: []plan.Part{half, unit}})
		p := &Pass{Size: size, check: byRule["reference/wrong-kind"]}
		wrongKinds(p)
		said := ""
		if len(p.found) > 0 {
			said = p.found[0].Message
		}
		if said != c.says {
			t.Errorf("%d of %v: got %q, want %q", c.count, c.halved, said, c.says)
		}
	}
}

func TestCyclesAreReportedOnce(t *testing.T) {
	found := try(t, squares, `{"parts": {
		"a": {"rows": [["b"]]}, "b": {"rows": [["c"]]}, "c": {"rows": [["a"]]},
		"self": {"rows": [["self"]]},
		"above": {"rows": [["a", "square"]]}
	}, "layout": {"grid": {"blocks": [["above", "self"]]}}}`)
	if got := rulesOf(found); len(found) != 2 || got != "reference/cycle" {
		t.Fatalf("want one finding a ring, got\n%s", short(found))
	}
	for _, says := range []string{`"a" is made of itself: of b, which is made of c, which is made of a`, `"self" is made of itself [`} {
		if !strings.Contains(short(found), says) {
			t.Errorf("not said: %s\n%s", says, short(found))
		}
	}
}

func TestUnknownNamesHideWhatFollows(t *testing.T) {
	tryAll(t, squares, []tried{
		{"nothing is unused while a part is unknown", `{"fabrics": {"sand": {"yardage": {}}}, "layout": {"grid": {"blocks": [["squares"]]}}}`,
			"reference/unknown-part", `write "square"`},
		{"no name is near", `{"layout": {"grid": {"blocks": [["lighthouse"]]}}}`, "reference/unknown-part", `write "square"`},
		{"a part used in one size only", `{"parts": {"other": {"cut": {"fabric": "sky", "square": "4 1/2"}}}, "sizes": {"large": {"layout": {"grid": {"blocks": [["other"]]}}}}, "printed": {"large": "not printed"}}`,
			"", ""},
		{"a size that breaks a name", `{"sizes": {"large": {"layout": {"grid": {"blocks": [["othr"]]}}}}, "printed": {"large": "not printed"}}`,
			"reference/unknown-part", "sizes: large"},
	})
}

func TestPrintedFiguresAreAboutSomething(t *testing.T) {
	tryAll(t, squares, []tried{
		{"measures", `{"printed": {"small": {"measures": {"squar": "4 1/2"}}}}`, "reference/unknown-printed", `write "square"`},
		{"strips of nothing", `{"printed": {"small": {"strips": {"binding": 3}}}}`, "reference/unknown-printed", "nor what else of it"},
		{"sets of a cut", `{"printed": {"small": {"sets": {"square": 3}}}}`, "reference/unknown-printed", "no strip set"},
		{"packs of yardage", `{"printed": {"small": {"precuts": {"sky": 1}}}}`, "reference/unknown-printed", "sold by length"},
		{"a backing that is not there", `{"printed": {"small": {"backing": ["24", "24"]}}}`, "reference/unknown-printed", "has no backing"},
		{"a batting that is not there", `{"printed": {"small": {"batting": ["24", "24"]}}}`, "reference/unknown-printed", "has no batting"},
		{"a fabric of no plan", `{"printed": {"small": {"fabric": {"skye": "3/8 yd"}}}}`, "reference/unknown-printed", `write "sky"`},
	})
	tryAll(t, tubes, []tried{
		{"yards of a precut", `{"printed": {"small": {"fabric": {"roll": "3 yd"}}}}`, "reference/unknown-printed", "sold in packs"},
		{"segments of a whole set", `{"printed": {"small": {"per_set": {"trio": 5}}}}`, "reference/unknown-printed", "cut into segments"},
		{"squares a set", `{"printed": {"small": {"per_tube": {"trio": 5}}}}`, "reference/unknown-printed", `write "step"`},
		{"strips of a tube", `{"printed": {"small": {"strips": {"step": 12}}}}`, "reference/unknown-printed", "not cut from fabric"},
	})
}

func TestDuplicateIDs(t *testing.T) {
	at := func(file, id string) IDAt {
		text := `{"id": "` + id + `"}`
		return IDAt{ID: plan.Text{Text: id, At: source.Range{Start: 7, End: len(text) - 1}}, File: source.New(file, []byte(text))}
	}
	ids := []IDAt{at("c.plan.json", "Pool"), at("a.plan.json", "pool"), at("d.plan.json", "pond"), at("b.plan.json", "pool"), at("e.plan.json", "")}
	want := `b.plan.json:1:8: error: the id "pool" is that of a.plan.json too [reference/duplicate-id]
  hint: give one of the two plans another id
  a.plan.json:1:8: the other plan
c.plan.json:1:8: error: the id "Pool" differs from "pool" of a.plan.json only in upper and lower case [reference/duplicate-id]
  hint: give one of the two plans another id
  a.plan.json:1:8: the other plan
`
	for range len(ids) { // in whatever order the plans come
		ids = append(ids[1:], ids[0])
		if got := short(DuplicateIDs(ids)); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
}

func TestDuplicateTitles(t *testing.T) {
	at := func(file, id, title, units string) TitleAt {
		text := `{"title": "` + title + `"}`
		return TitleAt{ID: id, Title: plan.Text{Text: title, At: source.Range{Start: 10, End: len(text) - 1}}, Units: units, File: source.New(file, []byte(text))}
	}
	titles := []TitleAt{
		at("c.plan.json", "c", "Tidal Pool", "in"), at("a.plan.json", "a", "Tidal Pool", "in"), at("b.plan.json", "b", "Tidal Pool", "cm"),
		at("d.plan.json", "d", " tidal  POOL ", "in"), at("e.plan.json", "A", "Tidal Pool", "in"), at("f.plan.json", "f", "", "in"),
		at("g.plan.json", "g", "Tidal Pools", "in"),
	}
	want := `c.plan.json:1:11: warning: the title "Tidal Pool" is that of a.plan.json too [reference/duplicate-title]
d.plan.json:1:11: warning: the title " tidal  POOL " is that of a.plan.json too [reference/duplicate-title]
`
	var got strings.Builder
	for _, f := range DuplicateTitles(titles) {
		got.WriteString(strings.SplitN(Short([]diag.Finding{f}), "\n", 2)[0] + "\n")
	}
	if got.String() != want {
		t.Errorf("got\n%swant\n%s", got.String(), want)
	}
}
