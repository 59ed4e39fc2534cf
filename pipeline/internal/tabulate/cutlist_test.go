package tabulate

import (
	"strconv"
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

// Worked by hand: 3 x 9 triangles of 6 in finished, nine to a strip of 40 in, are three
// strips, and 3 x 2 half triangles part of one: three pairs, each 6/sqrt3 + 1/2 + 1/sqrt3 = 4.54145
// in long (derived from geometry). The list counts triangles, not strips,
// and says how many come from the last one.
func TestShapesAreCountedAsPieces(t *testing.T) {
	for rows, want := range map[string][][2]string{
		`["end", "peak", "peak", "peak", "peak", "peak", "peak", "peak", "peak", "peak", "end"]`: {
			{"Cut into triangles of 60 degrees, up and down in turn, 9 from a whole strip.", "18"},
			{"Cut 9 from at least about 38.9712 in of it: triangles of 60 degrees, up and down in turn.", "9"},
			{"Cut 6 from at least about 13.6244 in of it: half triangles of 60 degrees", "6"},
		},
	} {
		s := sizeOf(t, `"peak": { "shape": { "fabric": "a", "kind": "triangle 60", "finished": 6 } },
    "end": { "shape": { "fabric": "b", "kind": "half triangle 60", "finished": 6, "tips": "blunted" } }, "unit": { "rows": [`+rows+`] }`,
			`"grid": { "rows": 3, "columns": 1, "blocks": [["unit"]] }`)
		var got [][2]string
		for _, table := range cutList(s, mostPictures).Tables {
			for _, r := range table.Rows {
				if r.Cells[4].Kind == report.Count {
					got = append(got, [2]string{r.Cells[2].Text, strconv.FormatInt(r.Cells[4].Int, 10)})
				}
			}
		}
		if len(got) != len(want) {
			t.Fatalf("%q, want %q", got, want)
		}
		for i := range want {
			if !strings.HasPrefix(got[i][0], want[i][0]) || got[i][1] != want[i][1] {
				t.Errorf("%q, want %q", got[i], want[i])
			}
		}
	}
}
