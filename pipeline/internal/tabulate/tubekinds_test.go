package tabulate

import (
	"fmt"
	"strings"
	"testing"

	"yardproof/pipeline/internal/drafting"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
)

// tubeParts is a tube of strips of a and b, each 2 in wide: at 40 in it gives
// floor(40 / 3) - 1 = 12 squares, of three strips floor(40 / 4.5) - 1 = 7.
func tubeParts(strips, more string) string {
	return fmt.Sprintf(`"set": { "strip_set": { "strips": [%s] } }, "step": { "tube": { "sets": ["set", "set"]%s } }`, strips, more)
}

const (
	setOfTwo   = `{ "fabric": "a", "width": 2 }, { "fabric": "b", "width": 2 }`
	setOfThree = `{ "fabric": "a", "width": 2 }, { "fabric": "a", "width": 2 }, { "fabric": "b", "width": 2 }`
	setAlike   = `{ "fabric": "a", "width": 2 }, { "fabric": "b", "width": 2 }, { "fabric": "a", "width": 2 }`
)

func cells(r report.Row) string {
	var all []string
	for _, c := range r.Cells {
		if c.Text == "" {
			all = append(all, fmt.Sprint(c.Int))
			continue
		}
		all = append(all, c.Text)
	}
	return strings.Join(all, " | ")
}

// The sewing sheet tells both kinds of every tube, with what lies along their
// diagonals, how many are needed and come out, and how the tubes are begun; also
// where they are alike. Worked by hand.
func TestTubeKindsTold(t *testing.T) {
	const step, near, far = `"step"`, `{ "part": "step", "kind": "near" }`, `{ "part": "step", "kind": "far" }`
	for _, c := range []struct {
		parts, blocks string
		rows          [2]string
		lead          string
	}{
		{tubeParts(setOfTwo, ""), near + ", " + near + ", " + far,
			[2]string{"step | near | a | b | 6 | 6 | 6", "step | far | b | a | 6 | 3 | 6"},
			"step: near and far squares differ; every tube gives 6 of each."},
		{tubeParts(setOfTwo, ""), step,
			[2]string{"step | near | a | b | 6 | 5 | 6", "step | far | b | a | 6 | 4 | 6"},
			"step: near and far squares differ; the plan does not say where which goes, and they take turns; every tube gives 6 of each."},
		{tubeParts(setOfThree, ""), far + ", " + near + ", " + far,
			[2]string{"step | near | a | b | 3 or 4 | 3 | 7", "step | far | b | a | 3 or 4 | 6 | 7"},
			"step: near and far squares differ; cut a near square first from 1 tube and a far one first from 1 tube."},
		{tubeParts(setOfThree, ""), far,
			[2]string{"step | near | a | b | 3 or 4 | 0 | 11", "step | far | b | a | 3 or 4 | 9 | 10"},
			"step: near and far squares differ; cut a near square first from 2 tubes and a far one first from 1 tube."},
		{tubeParts(setOfTwo, `, "lay": "end for end"`), step,
			[2]string{"step | near | a and b | b and a | 6 | either | 6", "step | far | b and a | a and b | 6 | either | 6"},
			"step: near and far squares are alike, once one is turned by half."},
		{tubeParts(setAlike, ""), far,
			[2]string{"step | near | a | a | 3 or 4 | either | 7", "step | far | a | a | 3 or 4 | either | 7"},
			"step: near and far squares are alike."},
	} {
		table, ok := tubeKinds(sizeOf(t, c.parts, `"grid": { "rows": 3, "columns": 3, "blocks": [[`+c.blocks+`]] }`))
		if !ok || len(table.Rows) != 2 || len(table.Lead) != 1 {
			t.Fatalf("%s of %s: %d rows", c.parts, c.blocks, len(table.Rows))
		}
		for i, want := range c.rows {
			if got := cells(table.Rows[i]); got != want {
				t.Errorf("%s:\n got %s\nwant %s", c.blocks, got, want)
			}
		}
		if table.Lead[0] != c.lead {
			t.Errorf("%s:\n got %s\nwant %s", c.blocks, table.Lead[0], c.lead)
		}
	}
	if _, ok := tubeKinds(sizeOf(t, `"plain": { "cut": { "fabric": "a", "square": 4 } }`, `"grid": { "rows": 1, "columns": 1, "blocks": [["plain"]] }`)); ok {
		t.Error("a table of tubes where there are none")
	}
}

// Whoever cuts the printed number of squares from a tube that gives more is told
// the kinds that she comes to, of the printed tubes or of as many as it takes.
// Worked by hand: 5 squares of a tube are 3 of one kind and 2 of the other.
func TestPrintedKindsTold(t *testing.T) {
	count := func(n int) []plan.PrintedCount {
		return []plan.PrintedCount{{Of: plan.Text{Text: "step"}, Count: plan.Count{N: n}}}
	}
	const rest = "; the table counts all that a tube gives."
	for _, c := range []struct {
		each, tubes int
		want        string
	}{
		{5, 0, "step, as printed: 5 squares from each of 2 tubes are 6 near and 4 far ones" + rest},
		{5, 3, "step, as printed: 5 squares from each of 3 tubes are 8 near and 7 far ones" + rest},
		{5, 1, ""}, // not enough, which a finding says
		{11, 0, "step, as printed: 11 squares from the tube are 6 near and 5 far ones" + rest},
		{12, 0, ""},
		{13, 0, ""},
		{0, 0, ""},
	} {
		s := sizeOf(t, tubeParts(setOfTwo, ""), `"grid": { "rows": 3, "columns": 3, "blocks": [[{ "part": "step", "kind": "near" }, { "part": "step", "kind": "near" }, { "part": "step", "kind": "far" }]] }`)
		of := *s.Of
		of.Printed = &plan.Printed{PerTube: count(c.each), Tubes: count(c.tubes)}
		s.Of = &of
		table, _ := tubeKinds(s)
		if got := strings.Join(table.Lead[1:], "; "); got != c.want {
			t.Errorf("%d squares from each of %d tubes:\n got %s\nwant %s", c.each, c.tubes, got, c.want)
		}
	}
}

// The blocks are listed with the kinds that stand where, to and fro where they
// take turns; a block that holds an odd number of squares is made both ways.
func TestKindsLaidOut(t *testing.T) {
	for _, c := range []struct{ parts, grid, want string }{
		{"", `"rows": 3, "columns": 3, "blocks": [["step"]]`, "1, 3: step (near), step (far), step (near); 2: step (far), step (near), step (far)"},
		{"", `"rows": 2, "columns": 4, "blocks": [["step"]]`,
			"1: step (near), step (far), step (near), step (far); 2: step (far), step (near), step (far), step (near)"},
		{"", `"rows": 4, "columns": 4, "blocks": [["step", { "part": "step", "kind": "far", "turn": 90 }]]`, "1, 2, 3, 4: step (near), step (far) turned 90°"},
		{`, "pair": { "rows": [["step"], ["step"]] }`, `"rows": 1, "columns": 3, "blocks": [["pair"]]`, "1: 3 x pair"},
		{`, "small": { "trim": { "part": "step", "square": 4 } }`, `"rows": 1, "columns": 3, "blocks": [["small", { "part": "small" }]]`, "1: small (near), small (far), small (near)"},
		{`, "three": { "rows": [["step"], ["step"], ["step"]] }`, `"rows": 1, "columns": 3, "blocks": [["three"]]`,
			"1: three, three (near and far step exchanged), three"},
	} {
		s := sizeOf(t, tubeParts(setOfTwo, "")+c.parts, `"grid": { `+c.grid+` }`)
		var rows []string
		for _, r := range arrangement(s).Rows {
			rows = append(rows, r.Cells[0].Text+": "+r.Cells[1].Text)
		}
		if got := strings.Join(rows, "; "); got != c.want {
			t.Errorf("%s%s:\n got %s\nwant %s", c.parts, c.grid, got, c.want)
		}
	}
}

// Both kinds are drawn apart where they differ, one where they do not, and so is
// what is made both ways; each with how many of it are made.
func TestKindsDrawnApart(t *testing.T) {
	for _, c := range []struct{ parts, blocks, want string }{
		{tubeParts(setOfTwo, ""), `"step"`, "set, make 2; step (near), make 6; step (far), make 6"},
		{tubeParts(setOfTwo, `, "lay": "end for end"`), `"step"`, "set, make 2; step, make 12"},
		{tubeParts(setAlike, ""), `"step"`, "set, make 4; step, make 14"},
		{tubeParts(setOfTwo, "") + `, "three": { "rows": [["step"], ["step"], ["step"]] }`, `"three"`,
			"set, make 6; step (near), make 18; step (far), make 18; three, make 5; three (near and far step exchanged), make 4"},
	} {
		s := sizeOf(t, c.parts, `"grid": { "rows": 3, "columns": 3, "blocks": [[`+c.blocks+`]] }`)
		left := mostPatches
		k, ok := unitsPicture(s, drafting.Of(s), &left)
		if !ok {
			t.Fatalf("%s is not drawn", c.parts)
		}
		var names []string
		for _, p := range k.Panels {
			names = append(names, p.Caption[0])
		}
		if got := strings.Join(names, "; "); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.parts, got, c.want)
		}
	}
}
