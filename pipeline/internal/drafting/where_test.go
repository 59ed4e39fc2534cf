package drafting_test

import (
	"testing"

	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

// Invented: one of each unit; a, b and c are the fabrics 0, 1 and 2.
const everyUnit = `{
  "format": 1, "id": "a", "title": "A", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
  "fabrics": {"a": {"yardage": {}}, "b": {"yardage": {}}, "c": {"yardage": {}}},
  "parts": {
    "a": {"cut": {"fabric": "a", "square": "6 1/2"}}, "b": {"cut": {"fabric": "b", "square": "6 1/2"}},
    "half": {"half_squares": {"fabrics": ["a", "b"], "square": 5, "at_a_time": 2}},
    "glass": {"hourglass": {"half_squares": "half"}},
    "glasses": {"hourglass": {"half_squares": ["b", "c"], "square": 5}},
    "goose": {"flying_geese": {"goose": "a", "sky": "b", "finished": [6, 3], "at_a_time": 1}},
    "four": {"flying_geese": {"goose": "b", "sky": "c", "finished": [6, 3], "at_a_time": 4}},
    "nipped": {"flip_corners": {"body": "a", "corners": {"top left": {"fabric": "b", "square": 3}, "bottom right": {"fabric": "c", "square": 2}}}},
    "inside": {"square_in_square": {"centre": "a", "corners": "c", "finished": 6}},
    "folded": {"square_in_square": {"centre": "b", "corners": "a", "finished": 6, "method": "flip"}},
    "steps": {"logs": {"centre": {"fabric": "a", "finished": 2}, "log": 1, "rounds": 1, "style": "courthouse", "fabrics": {"top": "b", "bottom": "b", "rounds": ["c"]}}},
    "pair": {"rows": [["a", "b"]]},
    "again": {"recut": {"part": "pair", "pieces": [2, 1], "turns": [0, 90]}},
    "swapped": {"recut": {"part": "pair", "pieces": [1, 2], "turns": [180, 0]}},
    "set": {"strip_set": {"strips": [{"fabric": "a", "width": 2}, {"fabric": "b", "width": 2}, {"fabric": "c", "width": 2}]}},
    "stairs": {"loop": {"set": "set", "cut": 2, "open": [3, 1, 2]}},
    "band": {"chain": {"strips": "c", "width": 2, "length": 80, "folds": 2}},
    "up": {"shape": {"fabric": "a", "kind": "triangle 60", "finished": 6}}, "down": {"shape": {"fabric": "b", "kind": "triangle 60", "finished": 6}},
    "end": {"shape": {"fabric": "c", "kind": "half triangle 60", "finished": 6}},
    "ridge": {"rows": [["end", "up", "down", "end"]]},
    "valley": {"rows": [["end", {"part": "up", "turn": 180}, "down", "end"]]}
  },
  "layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["a"]]}},
  "sizes": {"only": {}}
}`

// Which fabric of a unit lies where, by the words of the schema: corners and
// sides by their names, a goose points up, what is opened at a seam begins
// with the strip after it, and triangles stand up and down in turn.
func TestWhereFabricsOfUnitsLie(t *testing.T) {
	all := sizes("every.plan.json", []byte(everyUnit))
	if len(all) == 0 {
		t.Fatal("the plan is not in order")
	}
	d := drafting.Of(all[0])
	for _, c := range []struct {
		part string
		x, y int64 // in tenths of the part's size
		want int
	}{
		{"glass", 5, 2, 0}, {"glass", 8, 5, 1}, {"glass", 5, 8, 0}, {"glass", 2, 5, 1},
		{"glasses", 5, 2, 1}, {"glasses", 8, 5, 2}, {"glasses", 5, 8, 1}, {"glasses", 2, 5, 2},
		{"goose", 5, 6, 0}, {"goose", 1, 2, 1}, {"goose", 9, 2, 1}, {"four", 5, 6, 1}, {"four", 1, 2, 2}, {"four", 9, 2, 2},
		{"nipped", 1, 1, 1}, {"nipped", 9, 9, 2}, {"nipped", 9, 1, 0}, {"nipped", 1, 9, 0}, {"nipped", 5, 5, 0},
		{"inside", 5, 5, 0}, {"inside", 1, 1, 2}, {"inside", 9, 1, 2}, {"inside", 9, 9, 2}, {"inside", 1, 9, 2},
		{"folded", 5, 5, 1}, {"folded", 1, 1, 0}, {"folded", 9, 1, 0}, {"folded", 9, 9, 0}, {"folded", 1, 9, 0},
		{"steps", 5, 5, 0}, {"steps", 5, 1, 1}, {"steps", 5, 9, 1}, {"steps", 1, 1, 2}, {"steps", 9, 9, 2},
		{"again", 2, 5, 0}, {"again", 8, 5, 1}, {"swapped", 2, 2, 1}, {"swapped", 8, 2, 0}, {"swapped", 2, 8, 0}, {"swapped", 8, 8, 1},
		{"stairs", 1, 1, 0}, {"stairs", 1, 5, 1}, {"stairs", 1, 9, 2}, {"stairs", 5, 1, 1}, {"stairs", 5, 9, 0}, {"stairs", 9, 1, 2}, {"stairs", 9, 9, 1},
		{"band", 5, 1, 2}, {"band", 5, 9, 2},
		{"ridge", 3, 7, 0}, {"ridge", 6, 3, 1}, {"ridge", 1, 2, 2}, {"ridge", 9, 8, 2},
		{"valley", 3, 3, 0}, {"valley", 6, 7, 1}, {"valley", 1, 8, 2}, {"valley", 9, 2, 2},
	} {
		w, ok := d.Part(c.part)
		if !ok {
			t.Errorf("%s is not drafted", c.part)
			continue
		}
		size := w.Size()
		shows(t, c.part, w, piecing.Point{X: size.Width.MulInt(c.x).DivInt(10), Y: size.Height.MulInt(c.y).DivInt(10)}, c.want)
	}
	for _, p := range all[0].Parts {
		if w, ok := d.Part(p.Name.Text); ok {
			filled(t, p.Name.Text, w, p.Box)
		}
	}
}

// Four strips of a chain folded twice, 80 in long: 20 in by 4*2 - 6*1/4 =
// 6 1/2 in. Derived from geometry.
func TestChainIsFolded(t *testing.T) {
	all := sizes("every.plan.json", []byte(everyUnit))
	if len(all) == 0 {
		t.Fatal("the plan is not in order")
	}
	d := drafting.Of(all[0])
	w, ok := d.Part("band")
	if size := w.Size(); !ok || len(w.Patches) != 4 || !size.Width.Equal((20 * measure.Inch).Surd()) || !size.Height.Equal((13 * measure.Inch / 2).Surd()) {
		t.Errorf("%d strips, %v", len(w.Patches), w.Size())
	}
}
