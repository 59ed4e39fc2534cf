package check

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"
)

// Fat quarters of 18 x 21 in cut into strips of 2 1/2 in give seven each of
// 21 in, and a tube of two sets of two takes four strips: by hand, seven fourths
// of the quarters, rounded down, are the tubes.
const quarterTubes = `{
	"fabrics": {"roll": {"precut": {"piece": ["18", "21"], "usable": ["18", "21"], "count": 1}}},
	"parts": {"trio": {"strip_set": {"strips": [{"fabric": "roll", "width": "2 1/2"}, {"fabric": "roll", "width": "2 1/2"}]}}},
	"layout": {"grid": {"rows": ROWS, "columns": 4}},
	"printed": {"small": {"precuts": {"roll": PACKS}}}
}`

// The squares that are said to come must come: asked for so many the plan
// passes, and for four more it does not.
func TestTubesFromQuartersCutIntoStrips(t *testing.T) {
	said := regexp.MustCompile(`from (\d+) packs? of 1 piece come (\d+): (\d+) tubes? of (\d+) squares?`)
	for packs := 1; packs <= 12; packs++ {
		patch := replaced(quarterTubes, "ROWS", "40", "PACKS", fmt.Sprint(packs))
		found := try(t, tubes, patch)
		if got := rulesOf(found); got != "yield/tube-squares" {
			t.Fatalf("%d packs: %s", packs, got)
		}
		m := said.FindStringSubmatch(found[0].Message)
		if m == nil {
			t.Fatalf("%d packs: %s", packs, found[0].Message)
		}
		come, _ := strconv.Atoi(m[2])
		made, _ := strconv.Atoi(m[3])
		each, _ := strconv.Atoi(m[4])
		if want := packs * 7 / 4; made != want || come != want*each {
			t.Errorf("%d packs: %d tubes and %d squares, by hand %d tubes", packs, made, come, want)
		}
		rows := come / 4
		if got := rulesOf(try(t, tubes, replaced(quarterTubes, "ROWS", fmt.Sprint(rows), "PACKS", fmt.Sprint(packs)))); rows > 0 && got != "" && got != "fabric/packs-over" {
			t.Errorf("%d packs and %d rows of 4: %s", packs, rows, got)
		}
		if got := rulesOf(try(t, tubes, replaced(quarterTubes, "ROWS", fmt.Sprint(rows+1), "PACKS", fmt.Sprint(packs)))); got != "yield/tube-squares" {
			t.Errorf("%d packs and %d rows of 4: %q", packs, rows+1, got)
		}
	}
}
