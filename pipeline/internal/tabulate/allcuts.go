package tabulate

import (
	"slices"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// allCuts is the cut list of the pattern: what its buyer is told, all sizes beside
// each other.
func (in Input) allCuts() report.Sheet {
	sheet := report.Sheet{ID: "cut-list", Title: "Cut list", Pages: 1}
	for i, sizes := range in.abreast(sizesAbreast) {
		t := report.Table{ID: numbered("cut-list", i), Columns: []report.Column{{ID: "cut", Title: "Cut", Wide: true}}}
		if i == 0 {
			t.Lead = []string{"Straighten the end of each fabric first, then cut strips across it from selvage to selvage; each size of piece is cut from the strips above it."}
		}
		for _, s := range sizes {
			t.Columns = append(t.Columns, report.Column{ID: s.Of.Name.Text, Title: s.Called()})
		}
		for _, role := range in.roles() {
			t.Rows = append(t.Rows, in.cutsOf(role, sizes)...)
		}
		sheet.Tables = append(sheet.Tables, t)
	}
	sheet.Tables = append(sheet.Tables, cautionsOf("cut-list-cautions", in.Sizes...))
	return sheet
}

// cutLine is a line of the cut list: strips of a width, or what is cut from them.
type cutLine struct {
	strip, piece string
	counts       map[*derive.Size]int64
}

// lines are those of one fabric, in the order in which they are cut.
type lines struct{ all []*cutLine }

func (l *lines) add(s *derive.Size, strip, piece string, n int64) {
	at := slices.IndexFunc(l.all, func(x *cutLine) bool { return x.strip == strip && x.piece == piece })
	if at < 0 {
		// What is cut from strips stands below them, in whichever size it comes up.
		at = len(l.all)
		for i, x := range l.all {
			if x.strip == strip {
				at = i + 1
			}
		}
		l.all = slices.Insert(l.all, at, &cutLine{strip, piece, map[*derive.Size]int64{}})
	}
	l.all[at].counts[s] += n
}

func (in Input) cutsOf(role string, sizes []*derive.Size) []report.Row {
	var all lines
	for _, s := range sizes {
		if f := s.Fabric(role); f != nil && f.Used() && f.Err == nil {
			c := cutter{s: s, f: f, u: in.units(), layout: f.Layout, sheets: f.Sheets}
			c.count(&all)
		}
	}
	rows := []report.Row{{Style: report.Group, Cells: []report.Cell{report.T(in.named(role))}}}
	for _, l := range all.all {
		text := l.strip
		if l.piece != "" {
			text = "      " + l.piece
		}
		r := row(report.T(text))
		for _, s := range sizes {
			c := report.Cell{}
			if n := l.counts[s]; n > 0 {
				c = report.N(n)
			}
			r.Cells = append(r.Cells, c)
		}
		rows = append(rows, r)
	}
	return rows
}

// count adds what the layout of the plan's own method cuts of a fabric.
func (c cutter) count(all *lines) {
	pieces, strips := c.needs()
	name := func(r cutting.Row) string { return "strips " + r.Height.AsCut(c.u) + " wide" }
	if c.f.Form == plan.Precut {
		for _, sheet := range c.sheets.Sheets {
			strip := "pieces of the pack"
			all.add(c.s, strip, "", int64(sheet.Repeat))
			for _, r := range sheet.Rows {
				r.Repeat *= sheet.Repeat
				c.countRow(all, strip, r, pieces, strips)
			}
		}
		return
	}
	var rows func(of []cutting.Row, times int, beside string)
	rows = func(of []cutting.Row, times int, beside string) {
		for _, r := range of {
			r.Repeat *= times
			strip := name(r) + beside
			all.add(c.s, strip, "", int64(r.Repeat))
			c.countRow(all, strip, r, pieces, strips)
			rows(r.Panel, r.Repeat, ", from the panel beside the lengthwise cuts")
		}
	}
	rows(c.layout.Rows, 1, "")
	if c.f.Panels > 0 && c.s.Backing != nil {
		all.add(c.s, "backing panels, full width, each "+c.s.Backing.Each.AsCut(c.u)+" long", "", c.s.Backing.Panels)
	}
}

func (c cutter) countRow(all *lines, strip string, r cutting.Row, pieces, strips []derive.Need) {
	times := int64(r.Repeat)
	if r.Strip >= 0 {
		all.add(c.s, strip, "for "+strips[r.Strip].For.Text, times)
		return
	}
	for _, part := range r.Parts {
		all.add(c.s, strip, "part of a strip, "+part.Width.AsCut(c.u)+", for "+strips[part.Strip].For.Text, times)
	}
	for _, cut := range r.Cuts {
		all.add(c.s, strip, c.pieceWords(pieces[cut.Piece]), int64(cut.Count)*times)
	}
	for _, stack := range r.Stacks {
		for _, cut := range stack.Cuts {
			all.add(c.s, strip, c.pieceWords(pieces[cut.Piece]), int64(cut.Count)*int64(stack.Count)*times)
		}
	}
}

// pieceWords is a piece without how many of it.
func (c cutter) pieceWords(n derive.Need) string {
	what := "rectangles " + n.Across.BareRounded(c.u, measure.Up) + " x " + n.Along.AsCut(c.u)
	if n.Across == n.Along {
		what = "squares " + n.Across.AsCut(c.u)
	}
	return what + derive.Halved(n.Halving) + usedOf(n) + c.onBias(n) + fromOnePrint(n) + ", for " + n.For.Text
}
