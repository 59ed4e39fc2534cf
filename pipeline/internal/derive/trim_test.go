package derive_test

import (
	"fmt"
	"testing"

	"yardproof/schema/measure"
)

// TestTrimmedDown: each kind of unit comes down to the next line below its sewn
// size, and one on a line stays. Three 2 1/2-in strips make tube squares of
// 6 sqrt2 = about 8.4853 in, which come to 8 3/8 in of eighths; from 5-in
// squares a unit of two triangles measures 5 - sqrt2/4, about 4.6464 in, and one
// of four 5 - sqrt2/2, about 4.2929 in. Derived from geometry.
func TestTrimmedDown(t *testing.T) {
	const tube = `"set": {"strip_set": {"strips": [{"fabric": "ink", "width": "2 1/2"}, {"fabric": "milk", "width": "2 1/2"}, {"fabric": "ink", "width": "2 1/2"}]}},
		"block": {"tube": {"sets": ["set", "set"], "trim_down_to": %q}}`
	const halves = `"block": {"half_squares": {"fabrics": ["ink", "milk"], "square": "5", "trim_down_to": %q}}`
	const quarters = `"a": {"cut": {"fabric": "ink", "square": "5", "halved": "twice"}}, "block": {"triangle_square": {"of": ["a", "a", "a", "a"], "trim_down_to": %q}}`
	const hourglass = `"block": {"hourglass": {"half_squares": ["ink", "milk"], "square": "5", "trim_down_to": %q}}`
	const geese = `"block": {"flying_geese": {"goose": "ink", "sky": "milk", "finished": ["4", "2"], "at_a_time": %d, "trim_down_to": %q}}`
	const square = `"block": {"square_in_square": {"centre": "ink", "corners": "milk", "finished": "4", "trim_down_to": %q}}`
	const trim = `"a": {"cut": {"fabric": "ink", "size": ["4 1/2", "3 1/4"]}}, "block": {"trim": {"part": "a", "down_to": %q}}`
	for _, tt := range []struct{ parts, width, height string }{
		{fmt.Sprintf(tube, "1/8"), "8 3/8", "8 3/8"},
		{fmt.Sprintf(tube, "1/4"), "8 1/4", "8 1/4"},
		{fmt.Sprintf(tube, "1/64"), "8 31/64", "8 31/64"},
		{fmt.Sprintf(halves, "1/8"), "4 5/8", "4 5/8"},
		{fmt.Sprintf(halves, "1/2"), "4 1/2", "4 1/2"},
		{fmt.Sprintf(quarters, "1/8"), "4 1/4", "4 1/4"},
		{fmt.Sprintf(hourglass, "1/2"), "4", "4"},
		{fmt.Sprintf(geese, 4, "1/8"), "4 1/2", "2 1/2"}, // cut 5 1/4 and 2 7/8 in: about 4.5429 x 2.5214
		{fmt.Sprintf(geese, 1, "1/2"), "4 1/2", "2 1/2"}, // exactly on the lines
		{fmt.Sprintf(square, "1/8"), "4 1/2", "4 1/2"},
		{fmt.Sprintf(trim, "1/4"), "4 1/2", "3 1/4"}, // on the lines
		{fmt.Sprintf(trim, "1/2"), "4 1/2", "3"},
		{fmt.Sprintf(trim, "1"), "4", "3"},
	} {
		s := top(t, tt.parts, grid(2, 2))
		p := s.Part("block")
		if !p.Known {
			t.Errorf("%s is not known", tt.parts)
			continue
		}
		wantSize(t, tt.parts, p.Width, p.Height, tt.width, tt.height)
		for _, trimming := range p.Room.Trims() {
			if !trimming.To.Given() {
				t.Errorf("%s: not trimmed", tt.parts)
			}
		}
	}
}

// TestTrimmedDownQuilt: six by six tube squares, of which 8.4853 in each would
// finish 47.9117 in, come down to 8 3/8 in and finish 47 1/4 in; in centimetres,
// strips of 6.5 cm sewn with 0.75 cm make squares of about 21.2132 cm, which come
// down to 21 cm by lines of 0.5 cm and to 21.2 cm by those of 0.1. Derived from geometry.
func TestTrimmedDownQuilt(t *testing.T) {
	const plan = `{"format": 1, "id": "steps", "title": "Steps", "units": %q, "seam": {"allowance": %q, "stitch": "301"},
		"fabrics": {"ink": {"yardage": {}}}, "parts": {
			"set": {"strip_set": {"strips": [{"fabric": "ink", "width": %[3]q}, {"fabric": "ink", "width": %[3]q}, {"fabric": "ink", "width": %[3]q}]}},
			"step": {"tube": {"sets": ["set", "set"], "trim_down_to": %[4]q}}},
		"layout": {"grid": {"rows": 6, "columns": 6, "blocks": [["step"]]}}, "sizes": {"only": {}}}`
	inches := derived(t, fmt.Sprintf(plan, "in", "1/4", "2 1/2", "1/8"))["only"]
	wantSize(t, "finished", inches.Top.Finished.Width, inches.Top.Finished.Height, "47 1/4", "47 1/4")
	for grid, want := range map[string]string{"0.5": "21", "0.1": "21.2"} {
		p := derived(t, fmt.Sprintf(plan, "cm", "0.75", "6.5", grid))["only"].Part("step")
		if got := p.Width.Format(measure.Cm); got != want+" cm" {
			t.Errorf("by lines of %s cm: %s, want %s cm", grid, got, want)
		}
	}
}

// TestNoLineBelow: a grid of 4 in has a line below 4 in and none below 63/64 in
// less: nothing is trimmed, and the size is as sewn.
func TestNoLineBelow(t *testing.T) {
	for cut, trimmed := range map[string]bool{"4": true, "3 63/64": false} {
		s := top(t, `"a": {"cut": {"fabric": "ink", "square": "`+cut+`"}}, "block": {"trim": {"part": "a", "down_to": "4"}}`, grid(2, 2))
		p := s.Part("block")
		wantSize(t, cut, p.Width, p.Height, cut, cut)
		if got := p.Room.Trims()[0].To.Given(); got != trimmed {
			t.Errorf("%s in: trimmed %t", cut, got)
		}
	}
}
