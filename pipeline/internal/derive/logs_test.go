package derive_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
)

// A 2-in centre with four rounds of 1-in logs finishes 10 in. Its logs sum to
// 96 in finished and 104 in cut, spiral or courthouse steps: each round comes
// to 4c + (8j-4)g. Derived from geometry.
func TestLogs(t *testing.T) {
	for style, first := range map[string]string{"spiral": "2 1/2, 3 1/2, 3 1/2, 4 1/2", "courthouse": "2 1/2, 2 1/2, 4 1/2, 4 1/2"} {
		s, p := unitOf(t, `"rows": 5, "columns": 4`, `"unit": { "logs": { "centre": { "fabric": "a", "finished": 2 }, "log": 1, "rounds": 4, "style": "`+style+`",
      "fabrics": { "top": "a", "right": "a", "bottom": "b", "left": "b" } } }`)
		wantSize(t, style, p.Width, p.Height, "10 1/2", "10 1/2")
		var lengths []string
		cut := measure.Length(0)
		for _, c := range p.Unit.Pieces[1:] {
			lengths = append(lengths, c.Width.Bare(measure.In))
			cut += c.Width
			wantLength(t, style+", width of a log", c.Height, "1 1/2")
		}
		if got := strings.Join(lengths[:4], ", "); got != first {
			t.Errorf("%s: the first round is cut %s, want %s", style, got, first)
		}
		wantCount(t, style+", logs", int64(len(lengths)), 16)
		wantLength(t, style+", logs in all", cut, "104")
		wantSize(t, style+", finished", s.Top.Finished.Width, s.Top.Finished.Height, "40", "50")
	}
}

// Logs are cut whole from strips, which the sum of their lengths does not
// show. Two blocks of one round about a 4 1/2-in centre, logs 4 in wide: from
// fabric b, 8 logs cut 5, 9, 9 and 13 in twice over, 72 in of strips 4 1/2 in
// wide. That is less than two strips of 40 in, and two do hold them, 13 + 13 +
// 9 + 5 and 9 + 9 + 9 + 5, as whoever cuts the longest first finds; laid size by
// size they would take three.
func TestLogsShareStripsOfTheirWidth(t *testing.T) {
	s := derived(t, unitPlan(`"rows": 1, "columns": 2`, `"unit": { "logs": { "centre": { "fabric": "a", "finished": "4 1/2" }, "log": 4, "rounds": 1, "fabrics": { "rounds": ["b"] } } }`))["one"]
	b := s.Fabric("b")
	wantCount(t, "kinds of log", int64(len(b.Needs)), 3)
	wantLength(t, "plain", b.Plain.Length, "9")
	wantCount(t, "strips", int64(b.Plain.Strips()), 2)
	wantLength(t, "packed", b.Packed().Length, "9")
}

// Right and left of the centre a directional print stands up only in logs that are
// cut with their length along the fabric: of a 2-in centre and a round of 1-in logs,
// one after the other, those are 1 1/2 in wide and 3 1/2 and 4 1/2 in high, 26 to a
// strip so high. From a pack of strips they cannot be had, and the print is told to
// lie on its side. Derived from geometry.
func TestSideLogsOfAPrint(t *testing.T) {
	logs := unitPlan(`"rows": 5, "columns": 6`, `"unit": { "logs": { "centre": { "fabric": "a", "finished": 2 }, "log": 1, "rounds": 1, "fabrics": { "rounds": ["b"] } } }`)
	for fabric, want := range map[string]string{
		`"print": "one-way", "yardage": {}`: "1 1/2 x 3 1/2 30, 1 1/2 x 4 1/2 30, 2 1/2 x 1 1/2 30, 3 1/2 x 1 1/2 30, 0 beside, strips 1 1/2: 5, 3 1/2: 2, 4 1/2: 2",
		`"yardage": {}`:                     "2 1/2 x 1 1/2 30, 3 1/2 x 1 1/2 60, 4 1/2 x 1 1/2 30, 0 beside, strips 1 1/2: 11",
		`"print": "one-way", "precut": { "piece": ["1 1/2", "42"], "usable": ["1 1/2", "40"], "count": 40 }`: "2 1/2 x 1 1/2 30, 3 1/2 x 1 1/2 60, 4 1/2 x 1 1/2 30, 1 beside, strips 1 1/2: 11",
	} {
		s := derived(t, strings.Replace(logs, `"b": { "yardage": { "usable_width": 40 } }`, `"b": { `+fabric+` }`, 1))["one"]
		f := s.Fabric("b")
		var got []string
		for _, n := range f.Needs {
			got = append(got, fmt.Sprintf("%s x %s %d", n.Across.Bare(measure.In), n.Along.Bare(measure.In), n.Count))
		}
		slices.Sort(got)
		beside := 0
		for _, l := range s.Directions() {
			if l.Way == derive.Beside {
				beside++
			}
		}
		got = append(got, fmt.Sprintf("%d beside", beside))
		rows := map[string]int{}
		var heights []string
		for _, r := range f.Layout.Rows {
			h := r.Height.Bare(measure.In)
			if rows[h] == 0 {
				heights = append(heights, h)
			}
			rows[h] += r.Repeat
		}
		for _, sheet := range f.Sheets.Sheets {
			rows["1 1/2"] += sheet.Repeat
			heights = []string{"1 1/2"}
		}
		for i, h := range heights {
			heights[i] = fmt.Sprintf("%s: %d", h, rows[h])
		}
		got = append(got, "strips "+strings.Join(heights, ", "))
		if text := strings.Join(got, ", "); text != want {
			t.Errorf("%s:\n got %s\nwant %s", fabric, text, want)
		}
	}
}

// Fabrics by round repeat from the inside out; a side that is named keeps its
// own.
func TestLogFabrics(t *testing.T) {
	_, p := unitOf(t, `"rows": 1, "columns": 1`, `"unit": { "logs": { "centre": { "fabric": "a", "finished": 2 }, "log": 1, "rounds": 3, "fabrics": { "left": "a", "rounds": ["a", "b"] } } }`)
	var got strings.Builder
	for _, c := range p.Unit.Pieces {
		got.WriteString(c.Fabric.Role.Text)
	}
	if got.String() != "a"+"aaaa"+"bbba"+"aaaa" {
		t.Errorf("fabrics %s", got.String())
	}
}
