package derive_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
)

// kindPlan is a tube of two strips a set, trimmed to 4 in, in a layout; invented.
// At 32 in it gives floor(32 / 3) - 1 = 9 squares.
func kindPlan(tube, layout, more string) string {
	return fmt.Sprintf(`{
  "format": 1, "id": "kinds", "title": "Kinds", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "ink": { "yardage": { "usable_width": 32 } }, "milk": { "yardage": { "usable_width": 32 } },
    "roll": { "precut": { "piece": [2, 34], "usable": [2, 32], "count": 30, "assorted": true } } },
  "parts": {
    "pair": { "strip_set": { "strips": [{ "fabric": "ink", "width": 2 }, { "fabric": "milk", "width": 2 }] } },
    "same": { "strip_set": { "strips": [{ "fabric": "ink", "width": 2 }, { "fabric": "ink", "width": 2 }] } },
    "back": { "strip_set": { "strips": [{ "fabric": "milk", "width": 2 }, { "fabric": "ink", "width": 2 }] } },
    "wide": { "strip_set": { "strips": [{ "fabric": "ink", "width": 2 }, { "fabric": "ink", "width": 3 }] } },
    "band": { "strip_set": { "strips": [{ "fabric": "ink", "width": 2 }, { "fabric": "milk", "width": 2 }, { "fabric": "ink", "width": 2 }] } },
    "uneven": { "strip_set": { "strips": [{ "fabric": "ink", "width": 2 }, { "fabric": "milk", "width": 2 }, { "fabric": "ink", "width": 2.5 }] } },
    "mixed": { "strip_set": { "strips": ["roll", "roll"] } }%[3]s,
    "step": { "tube": { %[1]s, "trim": 4 } }
  },
  "layout": %[2]s,
  "sizes": { "one": {} }
}`, tube, layout, more)
}

// How the kinds compare, by what the squares show. Derived from geometry: sets
// of ink and milk laid strip for strip give ink along the diagonal, or milk; one
// of them turned end for end, or sewn the other way round, gives ink along one
// side of it and milk along the other in both.
func TestKindsCompare(t *testing.T) {
	for _, c := range []struct {
		tube     string
		want     derive.Look
		assorted bool
	}{
		{`"sets": ["pair", "pair"]`, derive.Different, false},
		{`"sets": ["pair", "pair"], "lay": "end for end"`, derive.AlikeTurned, false},
		{`"sets": ["pair", "back"]`, derive.AlikeTurned, false},
		{`"sets": ["pair", "back"], "lay": "end for end"`, derive.Different, false},
		{`"sets": ["same", "same"]`, derive.Alike, false},
		{`"sets": ["pair", "same"]`, derive.Different, false},
		{`"sets": ["mixed", "mixed"]`, derive.Alike, true},
		{`"sets": ["wide", "wide"]`, derive.Alike, false}, // the widths differ and the fabric does not
		{`"sets": ["band", "band"]`, derive.Alike, false},
		{`"sets": ["uneven", "uneven"]`, derive.Different, false},
		{`"sets": ["uneven", "uneven"], "lay": "end for end"`, derive.AlikeTurned, false},
	} {
		step := derived(t, kindPlan(c.tube, `{ "grid": { "rows": 2, "columns": 2, "blocks": [["step"]] } }`, ""))["one"].Part("step")
		if k := step.Tube.Kinds; k.Look != c.want || k.Assorted != c.assorted {
			t.Errorf("%s: %v, assorted %v", c.tube, k.Look, k.Assorted)
		}
	}
}

// Nine squares a tube, five of one kind at most. Worked by hand.
func TestKindsCount(t *testing.T) {
	grid := func(rows, columns int, blocks string) string {
		return fmt.Sprintf(`{ "grid": { "rows": %d, "columns": %d, "blocks": %s } }`, rows, columns, blocks)
	}
	const near, far = `{ "part": "step", "kind": "near" }`, `{ "part": "step", "kind": "far" }`
	for _, c := range []struct {
		what                         string
		layout                       string
		near, far, free, tubes, made int64
		first                        int64
	}{
		{"not said", grid(5, 9, `[["step"]]`), 23, 22, 0, 5, 45, 3},
		{"all near", grid(2, 5, `[[`+near+`]]`), 10, 0, 0, 2, 18, 2},
		{"one near too many", grid(1, 11, `[[`+near+`]]`), 11, 0, 0, 3, 27, 2},
		{"five and four", grid(1, 9, `[[`+near+`, `+far+`]]`), 5, 4, 0, 1, 9, 1},
		{"four and five", grid(1, 9, `[[`+far+`, `+near+`]]`), 4, 5, 0, 1, 9, 0},
		{"six and three", grid(1, 9, `[[`+near+`, `+near+`, `+far+`]]`), 6, 3, 0, 2, 18, 1},
		{"the rest is near", grid(1, 9, `[["step", `+far+`, "step"]]`), 6, 3, 0, 2, 18, 1},
		{"ten and ten", grid(2, 10, `[[`+near+`, `+far+`]]`), 10, 10, 0, 3, 27, 2},
	} {
		step := derived(t, kindPlan(`"sets": ["pair", "pair"]`, c.layout, ""))["one"].Part("step")
		k := step.Tube.Kinds
		wantCount(t, c.what+", squares a tube", step.Tube.Yield.Each, 9)
		wantCount(t, c.what+", near", k.Near, c.near)
		wantCount(t, c.what+", far", k.Far, c.far)
		wantCount(t, c.what+", free", k.Free, c.free)
		wantCount(t, c.what+", tubes", step.Tube.Count, c.tubes)
		wantCount(t, c.what+", made", step.Made, c.made)
		first, ok := piecing.Starts(step.Tube.Count, k.Near, k.Far, 9)
		wantCount(t, c.what+", begun near", first, c.first)
		if !ok {
			t.Errorf("%s: no way to begin the tubes does", c.what)
		}
	}
}

// Where it does not matter nothing is asked of the tubes; strips of an assorted
// pack do matter where the plan says which square goes where.
func TestKindsThatMatter(t *testing.T) {
	const layout = `{ "grid": { "rows": 1, "columns": 9, "blocks": [[{ "part": "step", "kind": "near" }]] } }`
	for sets, tubes := range map[string]int64{
		`"sets": ["pair", "pair"]`: 2, `"sets": ["pair", "pair"], "lay": "end for end"`: 1,
		`"sets": ["same", "same"]`: 1, `"sets": ["mixed", "mixed"]`: 2,
	} {
		wantCount(t, sets, derived(t, kindPlan(sets, layout, ""))["one"].Part("step").Tube.Count, tubes)
	}
}

// placed is how many near and far squares of a part are to be placed.
func placed(s *derive.Size, tube *derive.Part) (near, far int64) {
	for _, v := range s.Variants()[tube] {
		if v.Flips.Has(tube.Tube) {
			far += v.Count
		} else {
			near += v.Count
		}
	}
	return near, far
}

// What is placed is what is counted, in every size of the sample and of quilts
// at random, of blocks in blocks: no square is drawn that no tube gives.
func TestKindsPlacedAreThoseCounted(t *testing.T) {
	text, err := os.ReadFile("../../../schema/testdata/tube-drawer.plan.json")
	if err != nil {
		t.Fatal(err)
	}
	plans := []string{string(text)}
	random := rand.New(rand.NewPCG(11, 2))
	for range 200 {
		plans = append(plans, randomKinds(random))
	}
	for _, text := range plans {
		for name, s := range derived(t, text) {
			for _, p := range s.Parts {
				if p.Tube == nil || p.Needed == 0 {
					continue
				}
				near, far := placed(s, p)
				if k := p.Tube.Kinds; k.Matter() && (near != k.Near || far != k.Far) || near+far != p.Needed {
					t.Errorf("%s, %s: %d near and %d far are placed, %d and %d counted of %d\n%s", name, p.Name.Text, near, far, k.Near, k.Far, p.Needed, text)
				}
				if gives, more := p.Tube.Makes(p.Tube.Count); p.Tube.Kinds.Matter() && (near > gives || far > more) {
					t.Errorf("%s, %s: %d near and %d far are placed, %d and %d come out\n%s", name, p.Name.Text, near, far, gives, more, text)
				}
			}
		}
	}
}

// randomKinds is a quilt of tube squares in blocks of blocks, most of them with
// no kind said.
func randomKinds(random *rand.Rand) string {
	saying := random.IntN(2) == 0
	cell := func(name string, square bool) string {
		said := ""
		if square && saying && random.IntN(3) == 0 {
			said = [...]string{`, "kind": "near"`, `, "kind": "far"`}[random.IntN(2)]
		}
		return fmt.Sprintf(`{ "part": %q%s, "turn": %d, "mirror": %v }`, name, said, 90*random.IntN(4), random.IntN(4) == 0)
	}
	row := func(n int, names ...string) string {
		var cells []string
		for range n {
			name := names[random.IntN(len(names))]
			cells = append(cells, cell(name, name == "step" || name == "tread" || name == "small"))
		}
		return "[" + strings.Join(cells, ", ") + "]"
	}
	more := fmt.Sprintf(`,
    "tread": { "tube": { "sets": ["back", "back"], "trim": 4 } },
    "small": { "trim": { "part": "step", "square": 4 } },
    "block": { "rows": [%s, %s, %s] },
    "field": { "sashed": { "grid": { "rows": %d, "columns": %d, "blocks": [%s] }, "sashing": { "fabric": "milk", "width": 1 } } },
    "framed": { "bordered": { "part": "field", "borders": { "rim": { "fabric": "ink", "width": 1 } } } }`,
		row(3, "step", "tread"), row(3, "step", "small", "tread"), row(3, "step", "tread"),
		1+random.IntN(3), 1+random.IntN(3), row(1+random.IntN(3), "block", "step", "tread"))
	layout := fmt.Sprintf(`{ "grid": { "rows": %d, "columns": %d, "blocks": [%s, %s] },
    "borders": { "edge": { "part": %q, "width": 3.5, "corners": "corner squares", "corner_part": %q } } }`,
		1+random.IntN(5), 1+random.IntN(5), row(1+random.IntN(4), "block", "field", "framed", "step"), row(1+random.IntN(4), "block", "small", "tread", "framed"),
		[...]string{"step", "tread"}[random.IntN(2)], [...]string{"small", "tread"}[random.IntN(2)])
	return kindPlan(`"sets": ["pair", "pair"]`, layout, more)
}
