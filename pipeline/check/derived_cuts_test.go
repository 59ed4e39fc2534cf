package check

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// What a plan leaves to the program draws nothing: the cuts of trimmed units that
// follow from their finished size, of setting triangles and of coping, whatever the seam and however far apart the
// ruler's lines are. Of units that are not trimmed it is told at most that they
// should be. The sizes are invented.
func TestDerivedCutsDrawNothing(t *testing.T) {
	for _, in := range []struct {
		unit                         measure.Unit
		ruler                        string
		finished, seams, lines, down []string
	}{
		{measure.In, "36", []string{"2", "2 1/2", "3", "4 1/8", "4 1/2", "5", "6", "7 1/4", "8", "12"}, []string{"1/8", "1/4", "3/8"},
			[]string{"", "1/8", "1/4", "1/2", "1"}, []string{"1/8", "1/4"}},
		{measure.Cm, "90", []string{"5", "6", "7.5", "8", "9", "12.5", "14", "15", "18", "20", "30"}, []string{"0.6", "0.7", "0.75", "1"},
			[]string{"", "0.1", "0.5", "1"}, []string{"0.1", "0.5"}},
	} {
		for _, finished := range in.finished {
			for _, seam := range in.seams {
				for _, lines := range in.lines {
					d := derivedCut{in.unit, in.ruler, length(t, finished, in.unit), length(t, seam, in.unit), lines}
					for trim, parts := range d.parts(in.down) {
						for _, part := range parts {
							d.holds(t, part, `"grid": {"rows": 6, "columns": 6, "blocks": [["u"]]}`, trim == untrimmed)
						}
					}
					plain := fmt.Sprintf(`"cut": {"fabric": "a", "square": %s}`, d.long(d.finished+2*d.seam))
					d.holds(t, plain, `"setting": "on point", "grid": {"rows": 3, "columns": 4, "blocks": [["u"]]}, "triangles": {"sides": "b"}`, false)
					whole := d.long(6 * d.finished)
					d.holds(t, plain, `"setting": "on point", "grid": {"rows": 3, "columns": 3, "blocks": [["u"]]}, "triangles": {"sides": "b"},
						"borders": {"coping": {"fabric": "a", "to": [`+whole+`, `+whole+`]}}`, false)
				}
			}
		}
	}
}

const untrimmed = "not trimmed"

func length(t *testing.T, text string, unit measure.Unit) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, unit)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// derivedCut is what a unit's cuts follow from.
type derivedCut struct {
	unit           measure.Unit
	ruler          string
	finished, seam measure.Length
	lines          string // of the ruler; none where it is empty
}

func (d derivedCut) long(l measure.Length) string { return fmt.Sprintf("%q", l.Format(d.unit)) }

// parts are units of every operation that derives cuts, by how they are trimmed:
// to size, not at all, or down to lines that divide what they are to measure.
func (d derivedCut) parts(down []string) map[string][]string {
	side, double := d.finished+2*d.seam, 2*d.finished+2*d.seam
	unit := func(trim, wide string) []string {
		return []string{
			fmt.Sprintf(`"square_in_square": {"centre": "a", "corners": "b", "finished": %s%s}`, d.long(d.finished), trim),
			fmt.Sprintf(`"square_in_square": {"centre": "a", "corners": "b", "method": "flip", "finished": %s%s}`, d.long(d.finished), trim),
			fmt.Sprintf(`"flying_geese": {"goose": "a", "sky": "b", "at_a_time": 4, "finished": [%s, %s]%s}`, d.long(2*d.finished), d.long(d.finished), wide),
			fmt.Sprintf(`"flying_geese": {"goose": "a", "sky": "b", "finished": [%s, %s]%s}`, d.long(2*d.finished), d.long(d.finished), wide),
		}
	}
	all := map[string][]string{
		untrimmed: unit("", ""),
		"to size": append(unit(`, "trim": `+d.long(side), fmt.Sprintf(`, "trim": [%s, %s]`, d.long(double), d.long(side))),
			fmt.Sprintf(`"hourglass": {"half_squares": ["a", "b"], "trim": %s}`, d.long(side))),
	}
	for _, grid := range down {
		trim := fmt.Sprintf(`, "trim_down_to": %q`, grid)
		if l, err := measure.ParseLength(grid, d.unit); err == nil && side%l == 0 && double%l == 0 {
			all["down to "+grid] = unit(trim, trim)
		}
	}
	return all
}

func (d derivedCut) holds(t *testing.T, part, layout string, trimIt bool) {
	t.Helper()
	ruler := fmt.Sprintf(`"square": %q, "angles": [45]`, d.ruler)
	if d.lines != "" {
		ruler += fmt.Sprintf(`, "lines": %q`, d.lines)
	}
	text := fmt.Sprintf(`{"format": 1, "id": "u", "title": "U", "status": "testing", "skill": "beginner", "use": "wall", "units": %q, "cautions": ["rotary-cutter", "iron"],
		"seam": {"allowance": %s, "stitch": "301"}, "fabrics": {"a": {"yardage": {}}, "b": {"yardage": {}}}, "tools": {"rulers": [{%s}]},
		"parts": {"u": {%s}}, "layout": {%s}, "sizes": {"one": {}}, "printed": {"one": "not printed"}}`,
		d.unit, d.long(d.seam), ruler, part, layout)
	p, found := checkText(source.New("u.plan.json", []byte(text)), nil)
	if p == nil {
		t.Fatalf("%s\n%s", short(found), text)
	}
	for _, f := range found {
		if !trimIt || !strings.HasPrefix(f.Hint, `add "trim": `) {
			t.Errorf("%s\n%s", short(found), text)
		}
	}
}
