package derive_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// threeStrips are two of 2 in with one of 3 in between them: a set 6 in wide.
const threeStrips = `"strips": [{"fabric": "a", "width": 2}, {"fabric": "b", "width": 3}, {"fabric": "a", "width": 2}]`

// bands is a plan of one row in which each part stands so many times, in the
// order given. Strips are 40 in long.
func bands(parts string, row ...any) string {
	var cells []string
	for i := 0; i < len(row); i += 2 {
		for range row[i].(int) {
			cells = append(cells, fmt.Sprintf("%q", row[i+1]))
		}
	}
	return `{"format": 1, "id": "bands", "title": "Bands", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
		"fabrics": {"a": {"yardage": {"usable_width": "40"}}, "b": {"yardage": {"usable_width": "40"}}},
		"parts": {` + parts + `, "whole": {"rows": [[` + strings.Join(cells, ", ") + `]]}},
		"layout": {"grid": {"rows": 1, "columns": 1, "blocks": [["whole"]]}}, "sizes": {"one": {}}}`
}

// segment is a part of segments of three strips; more is said of the part.
func segment(name, width, more string) string {
	return fmt.Sprintf(`%q: {"strip_set": {%s, "segment": %q}%s}`, name, threeStrips, width, more)
}

// stripsOf counts the strips that a fabric is cut into, for sets of which each
// has so many.
func stripsOf(s *derive.Size, fabric string, each int64) int64 {
	var n int64
	for _, need := range s.Fabric(fabric).Needs {
		n += need.Count
	}
	return n / each
}

// Fourteen segments of 2 1/2 in and one of 4 1/2 in take 39 1/2 in of a set of
// 40 in: one set, not one for each width. One segment more of either takes
// another. Derived from geometry.
func TestWidthsShareSets(t *testing.T) {
	own := segment("slim", "2 1/2", "") + ", " + segment("wide", "4 1/2", "")
	named := `"set": {"strip_set": {` + threeStrips + `}}, "slim": {"strip_set": {"set": "set", "segment": "2 1/2"}}, "wide": {"strip_set": {"set": "set", "segment": "4 1/2"}}`
	rings := `"set": {"strip_set": {` + threeStrips + `}}, "slim": {"loop": {"set": "set", "cut": "2 1/2"}}, "wide": {"loop": {"set": "set", "cut": "2 1/2", "open": [1, 2]}}`
	turned := segment("slim", "2 1/2", "") + `, "wide": {"strip_set": {"strips": [{"fabric": "b", "width": 3}, {"fabric": "a", "width": 2}, {"fabric": "a", "width": 2}], "segment": "4 1/2"}}`
	for _, c := range []struct {
		name, parts string
		slim, wide  int
		sets        int64
	}{
		{"declared alike", own, 14, 1, 1}, {"of one set", named, 14, 1, 1},
		{"one slim more", own, 15, 1, 2}, {"one slim more of one set", named, 15, 1, 2},
		{"one wide more", own, 14, 2, 2}, {"one wide more of one set", named, 14, 2, 2},
		{"alone", own, 16, 0, 1}, {"alone of one set", named, 16, 0, 1}, {"alone and one more", named, 17, 0, 2},
		{"the first is not used", own, 0, 8, 1}, {"the first is not used, of one set", named, 0, 9, 2},
		{"pressed in another way", segment("slim", "2 1/2", "") + ", " + segment("wide", "4 1/2", `, "press": "out"`), 14, 1, 2},
		{"sewn in another way", segment("slim", "2 1/2", "") + ", " + segment("wide", "4 1/2", `, "seam": {"stitch": "514"}`), 14, 1, 2},
		{"strips in another order", turned, 14, 1, 2},
		{"rings", rings, 14, 1, 1}, {"one ring more", rings, 15, 1, 2},
	} {
		s := derived(t, bands(c.parts, c.slim, "slim", c.wide, "wide"))["one"]
		if a, b := stripsOf(s, "a", 2), stripsOf(s, "b", 1); a != c.sets || b != c.sets {
			t.Errorf("%s: strips for %d and %d sets, want %d", c.name, a, b, c.sets)
		}
		if s.Fabric("a").Loose() {
			t.Errorf("%s: not proved", c.name)
		}
		for _, name := range []string{"slim", "wide"} {
			if p := s.Part(name); p.Made < p.Needed {
				t.Errorf("%s: %d of %d %s made", c.name, p.Made, p.Needed, name)
			}
		}
	}
}

// Segments cut at 45 degrees lose a triangle as long as the set is wide, 6 in,
// and are each sqrt2 times as long as they are wide: 34 in of set hold 34/sqrt2,
// about 24.04 in, of widths side by side. Derived from geometry.
func TestAngledWidthsShareSets(t *testing.T) {
	for _, c := range []struct {
		slim, wide int
		sets       int64
	}{{6, 1, 1}, {6, 2, 2}, {4, 2, 1}, {8, 0, 1}} {
		slanted := func(name, width string, n int) string {
			return fmt.Sprintf(`%q: {"strip_set": {%s, "segment": %q, "angle": 45}}`, name, threeStrips, width)
		}
		parts := slanted("slim", "3", c.slim) + ", " + slanted("wide", "6", c.wide) + fmt.Sprintf(`, "field": {"mosaic": {"pieces": {%s}, "finished": ["20", "20"]}}`, pieces(c.slim, c.wide))
		s := derived(t, bands(parts, 1, "field"))["one"]
		if got := stripsOf(s, "b", 1); got != c.sets {
			t.Errorf("%d slim and %d wide: %d sets, want %d", c.slim, c.wide, got, c.sets)
		}
		if pool := s.Part("slim").Pool; pool != nil && (pool.Fill > pool.Length || pool.Fill <= 0) {
			t.Errorf("%v of %v are taken", pool.Fill, pool.Length)
		}
	}
}

func pieces(slim, wide int) string {
	text := fmt.Sprintf(`"slim": %d`, slim)
	if wide > 0 {
		text += fmt.Sprintf(`, "wide": %d`, wide)
	}
	return text
}

// What is cut from alike sets in two ways might share them: nothing is proved
// of so many.
func TestTwoWaysOfCuttingProveNothing(t *testing.T) {
	parts := segment("slim", "2 1/2", "") + `, "set": {"strip_set": {` + threeStrips + `}}, "ring": {"loop": {"set": "set", "cut": "2"}}`
	s := derived(t, bands(parts, 3, "slim", 3, "ring"))["one"]
	f := s.Fabric("a")
	if !f.Loose() || f.Packed().Floor >= f.Gross {
		t.Errorf("loose: %v, floor %v, bound %v", f.Loose(), f.Packed().Floor, f.Gross)
	}
	if n := stripsOf(s, "b", 1); n != 2 {
		t.Errorf("%d sets", n)
	}
}

// Random widths and counts are compared with every way of dealing them out to
// sets, one segment after the other.
func TestSharedSetsAgainstEveryDeal(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 120 {
		var parts []string
		var row []any
		var widths []int
		for k := range 2 + r.IntN(2) {
			width, n, name := 9+r.IntN(60), 1+r.IntN(3), fmt.Sprintf("w%d", k) // quarters of an inch
			parts = append(parts, segment(name, fmt.Sprintf("%d.%02d", width/4, width%4*25), ""))
			row = append(row, n, name)
			for range n {
				widths = append(widths, width)
			}
		}
		s := derived(t, bands(strings.Join(parts, ", "), row...))["one"]
		got, want := stripsOf(s, "b", 1), int64(fewestBins(widths, nil, 160, len(widths)))
		if got != want || s.Fabric("b").Loose() {
			t.Fatalf("%v quarters from 160: %d sets, want %d (loose %v)", widths, got, want, s.Fabric("b").Loose())
		}
		cutsHold(t, s)
	}
}

// fewestBins tries every bin that is open, and a new one, for the next width.
func fewestBins(widths, left []int, size, best int) int {
	if len(left) >= best {
		return best
	}
	if len(widths) == 0 {
		return len(left)
	}
	w, rest := widths[0], widths[1:]
	for i, room := range left {
		if room >= w {
			left[i] -= w
			best = min(best, fewestBins(rest, left, size, best))
			left[i] += w
		}
	}
	return min(best, fewestBins(rest, append(left[:len(left):len(left)], size-w), size, best))
}

// cutsHold adds up what is cut from each set, and what is cut of each part.
func cutsHold(t *testing.T, s *derive.Size) {
	t.Helper()
	made, sets := map[string]int64{}, int64(0)
	pool := s.Part("w0").Pool
	for _, cut := range pool.Cuts {
		var length measure.Length
		for _, piece := range cut.Pieces {
			length += measure.Length(piece.Count) * piece.Part.Subcut.Width
			made[piece.Part.Name.Text] += piece.Count * cut.Sets
		}
		if sets += cut.Sets; length > 40*inch || length > pool.Fill {
			t.Errorf("%v of a set, at most %v", length, pool.Fill)
		}
	}
	for _, p := range pool.Parts {
		if made[p.Name.Text] != p.Needed {
			t.Errorf("%d of %d %s cut", made[p.Name.Text], p.Needed, p.Name.Text)
		}
	}
	if sets != pool.Sets {
		t.Errorf("%d sets cut of %d", sets, pool.Sets)
	}
}
