package derive_test

import (
	"fmt"
	"testing"

	"yardproof/pipeline/internal/derive"
)

// packed is a quilt of six by six squares of tubes, from a roll of 2 1/2-in strips.
func packed(t *testing.T, roll, set, more, rest string) *derive.Size {
	t.Helper()
	part := fmt.Sprintf(`"set": {"strip_set": {"strips": [%s]}}, "square": {"tube": {"sets": ["set", "set"], "tip": "far seam", "trim": "8 3/8"}}`, set)
	return sized(t, "1/4", roll, part+more, `"grid": {"rows": 6, "columns": 6, "blocks": [["square"]]}`, rest)
}

const (
	rollOf40 = `{"precut": {"piece": ["2 1/2", 42], "count": 40}}`
	trio     = `"ink", "ink", "ink"`
)

// A roll of 40 strips in sets of three gives 13 sets and one strip is over; these
// give 6 tubes, and one set is over. Two rolls, if they are printed, give 26 sets, two
// strips over, and 13 tubes. Derived from division.
func TestPackGives(t *testing.T) {
	for _, c := range []struct {
		rest        string
		want        derive.PackGives
		tubes, over int64
	}{
		{"", derive.PackGives{Packs: 1, Strips: 40, Sets: 13, StripsOver: 1}, 6, 1},
		{`"printed": {"only": {"precuts": {"ink": 2}}},`, derive.PackGives{Packs: 2, Strips: 80, Sets: 26, StripsOver: 2}, 13, 0},
		// Of two rolls, 36 strips are for the sets and 5 for the binding.
		{`"finish": {"binding": {"fabric": "ink", "cut": "2 1/2"}},`, derive.PackGives{Packs: 2, Strips: 75, Sets: 25}, 12, 1},
	} {
		s := packed(t, rollOf40, trio, "", c.rest)
		got, ok := s.PackGives(s.Part("set"))
		if !ok || got != c.want {
			t.Errorf("%s: %+v, want %+v", c.rest, got, c.want)
		}
		if tubes, over := got.Tubes(2); tubes != c.tubes || over != c.over {
			t.Errorf("%s: %d tubes and %d over, want %d and %d", c.rest, tubes, over, c.tubes, c.over)
		}
	}
}

// From each of 8 fat quarters of 18 by 21 in come 7 strips of 2 1/2 in, so 112 from
// two packs: 37 sets, one strip over, and 18 tubes, one set over. Strips cut narrower
// than they come are still one from each. Derived from division.
func TestPackGivesOfCutPieces(t *testing.T) {
	const strip, narrow = `{"fabric": "ink", "width": "2 1/2"}`, `{"fabric": "ink", "width": "2 1/4"}`
	quarters := `{"precut": {"piece": [18, 21], "count": 8}}`
	s := packed(t, quarters, strip+", "+strip+", "+strip, "", "")
	want := derive.PackGives{Packs: 2, Strips: 112, Sets: 37, StripsOver: 1}
	got, ok := s.PackGives(s.Part("set"))
	if tubes, over := got.Tubes(2); !ok || got != want || tubes != 18 || over != 1 {
		t.Errorf("%+v, want %+v; %d tubes and %d over", got, want, tubes, over)
	}
	s = sized(t, "1/4", rollOf40, `"square": {"strip_set": {"strips": [`+narrow+`, `+narrow+`], "segment": 4}}`, `"grid": {"rows": 2, "columns": 2, "blocks": [["square"]]}`, "")
	want = derive.PackGives{Packs: 1, Strips: 40, Sets: 20}
	if got, ok := s.PackGives(s.Part("square")); !ok || got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	s = packed(t, quarters, strip+", "+strip+", "+strip, "", `"finish": {"binding": {"fabric": "ink", "cut": "2 1/2"}},`)
	if got, ok := s.PackGives(s.Part("set")); ok {
		t.Errorf("where a binding is cut from them, too: %+v", got)
	}
}

// Strips of yardage, of two fabrics or of two widths are no pack's.
func TestNoPackGives(t *testing.T) {
	for _, s := range []*derive.Size{
		packed(t, `{"yardage": {"usable_width": 42}}`, `{"fabric": "ink", "width": "2 1/2"}, {"fabric": "ink", "width": "2 1/2"}`, "", ""),
		packed(t, rollOf40, `"ink", "ink", {"fabric": "milk", "width": "2 1/2"}`, "", ""),
		packed(t, rollOf40, `{"fabric": "ink", "width": "2 1/4"}, "ink", "ink"`, "", ""),
	} {
		if got, ok := s.PackGives(s.Part("set")); ok {
			t.Errorf("%+v", got)
		}
	}
}
