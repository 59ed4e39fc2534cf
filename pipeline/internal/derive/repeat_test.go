package derive_test

import (
	"testing"

	"yardproof/schema/measure"
)

// Of a print that repeats every 6 in, strips for 4 1/2-in squares are 6 in, not
// 4 1/2: two strips of eight squares and 1 in to square up are 13 in (common
// practice, no source: strip heights go up to a whole repeat).
func TestStripsOfWholeRepeats(t *testing.T) {
	for _, c := range []struct{ repeat, net string }{{"6", "13"}, {"4 1/2", "10"}, {"4 3/8", "18 1/2"}, {"9", "19"}} {
		s := derived(t, `{"format": 1, "id": "squares", "title": "Squares", "units": "in", "seam": {"allowance": "1/4", "stitch": "301"},
			"fabrics": {"sky": {"repeat": "`+c.repeat+`", "yardage": {}}}, "parts": {"square": {"cut": {"fabric": "sky", "square": "4 1/2"}}},
			"layout": {"grid": {"rows": 4, "columns": 4, "blocks": [["square"]]}}, "sizes": {"only": {}}}`)["only"]
		wantLength(t, c.repeat, s.Fabric("sky").Net, c.net)
		if packed := s.Fabric("sky").Packed(); packed.Length%length(t, c.repeat) != 0 {
			t.Errorf("%s: packed %v", c.repeat, packed.Length)
		}
	}
}

// Two panels of a backing are matched at their seam: 48 x 56 in of 40-in cloth
// with a repeat of 9 in are two of 54 in crosswise, not two of 48 in. One panel
// needs no match.
func TestBackingOfWholeRepeats(t *testing.T) {
	back := func(columns, rows int) string {
		return finishedAs(t, columns, rows, `{"repeat": "9", "yardage": {}}`, `"backing": {"fabric": "edge"}`).Backing.Length.Format(measure.In)
	}
	if got := back(10, 12); got != "108 in" {
		t.Errorf("two panels: %s", got)
	}
	if got := back(8, 12); got != "56 in" {
		t.Errorf("one panel: %s", got)
	}
}

// Fat quarters of 18 x 21 in hold five rows of six 3 1/2-in squares; of a print
// that repeats every 4 in four rows, of one that repeats every 6 in three, and of
// one of 10 in one: two rows would begin 10 in apart, and the rule keeps a whole
// repeat for each (common practice, no source). Sixty squares. Strips used whole
// as they come keep nothing.
func TestRepeatOnPrecuts(t *testing.T) {
	for _, c := range []struct {
		repeat string
		sheets int
	}{{"3 1/2", 2}, {"4", 3}, {"6", 4}, {"10", 10}} {
		s := derived(t, `{"format": 1, "id": "quarters", "title": "Quarters", "units": "in", "seam": {"allowance": "1/4"},
			"fabrics": {"sky": {"repeat": "`+c.repeat+`", "precut": {"piece": ["18", "21"], "count": 4}}}, "parts": {"square": {"cut": {"fabric": "sky", "square": "3 1/2"}}},
			"layout": {"grid": {"rows": 10, "columns": 6, "blocks": [["square"]]}}, "sizes": {"only": {}}}`)["only"]
		f := s.Fabric("sky")
		if f.Err != nil || f.PlainSheets.Count != c.sheets || f.PackedSheets().Layout.Count != c.sheets {
			t.Errorf("%s: %v, %d pieces, %d packed; want %d", c.repeat, f.Err, f.PlainSheets.Count, f.PackedSheets().Layout.Count, c.sheets)
		}
	}
	s := derived(t, `{"format": 1, "id": "roll", "title": "Roll", "units": "in", "seam": {"allowance": "1/4"},
		"fabrics": {"sky": {"repeat": "6", "precut": {"piece": ["2 1/2", "42"], "count": 40}}}, "parts": {"rail": {"strip_set": {"strips": [{"fabric": "sky", "width": "2 1/2"}, {"fabric": "sky", "width": "2 1/2"}], "segment": "4 1/2"}}},
		"layout": {"grid": {"rows": 6, "columns": 3, "blocks": [["rail"]]}}, "sizes": {"only": {}}}`)["only"]
	if f := s.Fabric("sky"); f.Err != nil || f.Sheets.Count != 4 {
		t.Errorf("%v, %d strips", f.Err, f.Sheets.Count)
	}
}
