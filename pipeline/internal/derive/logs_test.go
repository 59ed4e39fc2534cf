package derive_test

import (
	"strings"
	"testing"

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
	s := derived(t, strings.Replace(unitPlan(`"rows": 1, "columns": 2`, `"unit": { "logs": { "centre": { "fabric": "a", "finished": "4 1/2" }, "log": 4, "rounds": 1, "fabrics": { "rounds": ["b"] } } }`),
		`"b": { "yardage"`, `"b": { "print": "two-way", "yardage"`, 1))["one"]
	b := s.Fabric("b")
	wantCount(t, "kinds of log", int64(len(b.Needs)), 3)
	wantLength(t, "plain", b.Plain.Length, "9")
	wantCount(t, "strips", int64(b.Plain.Strips()), 2)
	wantLength(t, "packed", b.Packed().Length, "9")
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
