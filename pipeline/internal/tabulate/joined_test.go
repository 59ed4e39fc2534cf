package tabulate

import (
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/drafting"
)

// Strips of 2 in are 40 in long; two sets joined are 79 1/2 in, and give floor(79 1/2
// / 3) - 1 = 25 squares, which take 78 in. Two joins cross two squares each: the
// same ones where they lie on each other. Derived from geometry.
func TestJoinedSetsTold(t *testing.T) {
	const grid = `"grid": { "rows": 6, "columns": 8, "blocks": [["step"]] }`
	const join = "square both ends of each set before it is joined; the 2 joins of a tube cross 2 of its 25 squares at most where those of the two sides lie on each other, and 4 where they do not: match the joins and press those of the two sides opposite ways"
	s := sizeOf(t, tubeParts(setOfTwo, `, "joined": 2`), grid)
	p := s.Part("step")
	if got, want := how(s, p), "2 tubes of sets set and set, 2 sets joined end to end on each side, cut into 25 squares each"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if got := notes(s, p, nil); !strings.HasPrefix(got, "the 25 squares take 78 in of 79 1/2 in: 1 1/2 in to spare, 3/4 in of each set; ") || !strings.Contains(got, join) {
		t.Errorf("notes: %s", got)
	}
	const cut = "set: its sets are joined end to end, 2 on each side of a tube of step. Square both ends of its strips."
	for _, table := range cutList(s, mostPictures).Tables[:2] { // of a and b
		if !slices.Contains(table.Foot, cut) {
			t.Errorf("%s: foot %q", table.ID, table.Foot)
		}
	}
	d := drafting.Of(s)
	units, _ := unitsPicture(s, d, new(mostPatches))
	if got := units.Panels[len(units.Panels)-1].Caption; len(got) != 3 || got[2] != "joins, not drawn, cross up to 4 of a tube's 25" {
		t.Errorf("caption: %q", got)
	}
	top, _ := d.Top()
	if got := quiltPicture(s, d, top).About; !strings.HasSuffix(got, " The joins that cross some squares of step are not drawn.") {
		t.Errorf("about the quilt: %s", got)
	}
}

// Where each side is one set, nothing is said of joins.
func TestNoJoinsTold(t *testing.T) {
	s := sizeOf(t, tubeParts(setOfTwo, ""), `"grid": { "rows": 3, "columns": 3, "blocks": [["step"]] }`)
	p, d := s.Part("step"), drafting.Of(s)
	units, _ := unitsPicture(s, d, new(mostPatches))
	top, _ := d.Top()
	all := append(units.Panels[len(units.Panels)-1].Caption, how(s, p), notes(s, p, nil), quiltPicture(s, d, top).About)
	for _, table := range cutList(s, mostPictures).Tables {
		all = append(all, table.Foot...)
	}
	for _, text := range all {
		if strings.Contains(text, "join") {
			t.Errorf("%s", text)
		}
	}
}
