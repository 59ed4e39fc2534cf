package tabulate

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// cutList is one size's cutting, fabric by fabric, in the order of cutting.
// Where the packed and the plain layout differ in length, the one that the
// plan does not take follows. Once there are so many pictures no more are drawn.
func cutList(s *derive.Size, most int) report.Sheet {
	name, undrawn := s.Of.Name.Text, false
	hang := func(sheet *report.Sheet, c cutter, whichID, which string) {
		if undrawn = len(sheet.Pictures) >= most; !undrawn {
			sheet.Pictures = append(sheet.Pictures, c.pictures(whichID, which)...)
		}
	}
	sheet := report.Sheet{ID: "cut-list-" + name, Title: s.CutList()}
	for _, f := range s.Fabrics {
		if !f.Used() {
			continue
		}
		c := cutter{s: s, f: f, u: s.Plan.Units, layout: f.Layout, sheets: f.Sheets}
		list := c.table()
		if c.crowded() {
			list.Foot = append(list.Foot, "There is no picture of this layout: it has too many pieces to be told apart.")
		}
		sheet.Tables = append(sheet.Tables, list)
		hang(&sheet, c, "", "")
		for _, find := range []func() (another, bool){c.other, c.otherSheets, c.stacked, c.sideBySide} {
			if other, ok := find(); ok {
				sheet.Tables = append(sheet.Tables, other.list)
				hang(&sheet, other.cutter, other.id, other.name)
			}
		}
	}
	if undrawn {
		leaveOut(&sheet, most)
	}
	return sheet
}

// cutter writes the cut list of one fabric.
type cutter struct {
	s      *derive.Size
	f      *derive.Fabric
	u      measure.Unit
	layout cutting.Layout      // of yardage
	sheets cutting.SheetLayout // of precuts

	letters map[int]string // that the picture has, by what is cut; nil where they are not said
	brief   bool           // pieces are told by their letter and their length along the strip
}

// lettered is what is cut, behind its letter in the picture.
func (c cutter) lettered(about int, does string) string {
	if letter := c.letters[about]; letter != "" {
		return letter + ": " + does
	}
	return does
}

func (c cutter) table() report.Table {
	t := c.empty(c.f.Role.Text, kit.Title(c.f))
	switch {
	case c.f.Err != nil:
		t.Lead = []string{"This fabric cannot be cut as the plan says; see the sheet Checks."}
		return t
	case !c.s.SureOfCloth(c.f):
		t.Lead = []string{"Not all that is cut from this fabric could be counted; see the sheet Checks. What stands here is too little."}
	}
	t.Foot = append(append(t.Foot, c.unused()...), c.joinedStrips()...)
	switch {
	case c.f.Form == plan.Precut:
		t.Lead = append(t.Lead, packs(c.f))
		if c.f.Cuts == plan.PackedCuts {
			t.Lead = append(t.Lead, c.knownSheets())
		}
		c.packs(&t)
	default:
		t.Lead = append(t.Lead, c.proof()...)
		c.yardage(&t)
	}
	return t
}

func (c cutter) empty(id, heading string) report.Table {
	u := unitName(c.u)
	return report.Table{
		ID: "cut-" + c.s.Of.Name.Text + "-" + id, Heading: heading,
		Columns: []report.Column{
			{ID: "strips", Title: "Strips"}, {ID: "width", Title: "Strip width", Unit: u},
			{ID: "then", Title: "From each strip", Wide: true},
			{ID: "for", Title: "For"}, {ID: "pieces", Title: "Pieces"}, {ID: "running", Title: "Running total", Unit: u},
		},
	}
}

// proof says which layout this is and what is known of shorter ones.
func (c cutter) proof() []string {
	if len(c.f.Needs) == 0 || !c.s.SureOfCloth(c.f) {
		return nil
	}
	packed := c.f.Packed()
	known := c.known(packed)
	switch {
	case c.f.Cuts == plan.PackedCuts:
		return []string{"Packed layout, " + c.layout.Length.AsCut(c.u) + " of strips; " + known + "."}
	case packed.Length < c.layout.Length:
		return []string{fmt.Sprintf("Plain method, %s of strips. The packed layout below takes %s.", c.layout.Length.AsCut(c.u), packed.Length.AsCut(c.u))}
	}
	return []string{"Plain method, " + c.layout.Length.AsCut(c.u) + " of strips; " + known + "."}
}

// known says what is known of layouts shorter than the packed one. What is cut
// lengthwise first leaves panels beside it, of which no proof about strips
// speaks: the bound is then that of all straight cutting.
func (c cutter) known(packed *derive.Packed) string {
	text := c.knownAsListed(packed)
	if c.f.Loose() {
		text += " with these boxes and squares, though what is cut from them may lie closer"
	}
	return text
}

func (c cutter) knownAsListed(packed *derive.Packed) string {
	kind := "layout of strips"
	lengthwise := slices.ContainsFunc(c.f.Needs, func(n derive.Need) bool { return n.First })
	if lengthwise {
		kind = "straight cutting"
	}
	if packed.Status != cutting.Proved {
		text := fmt.Sprintf("not proved the shortest: no %s goes below %s", kind, packed.Bound.AsThere(c.u))
		if !lengthwise {
			text += ", nor any other straight cutting below " + c.f.Straight().AsThere(c.u)
		}
		return text
	}
	straight := packed.Length
	if !lengthwise {
		straight = c.f.Straight()
	}
	if straight == packed.Length {
		return "proved: no straight cutting is shorter" + c.usedWhole()
	}
	return "proved: no layout of strips, each cut across the fabric and then into pieces, is shorter, nor does any other straight cutting go below " +
		straight.AsThere(c.u) + c.usedWhole()
}

// usedWhole qualifies a proof where some strips are sewn whole.
func (c cutter) usedWhole() string {
	if _, strips := c.needs(); len(strips) > 0 {
		return " while the strips of sets, borders and binding are used whole"
	}
	return ""
}

func (c cutter) yardage(t *report.Table) {
	f := c.f
	if c.layout.Length > 0 {
		t.Lead = append(t.Lead, fmt.Sprintf("Cut strips across the full usable width, %s.", f.Width.AsThere(c.u)))
	}
	if repeat := f.Repeat.Length; repeat > 0 {
		t.Lead = append(t.Lead, fmt.Sprintf("The print repeats every %s: each strip is a whole number of repeats wide, and its pieces are cut from the same place of the print.", repeat.Format(c.u)))
	}
	pieces, strips := c.needs()
	running := measure.Length(0)
	if f.SquaringUp.Length > 0 {
		running = f.SquaringUp.Length
		t.Rows = append(t.Rows, row(report.Cell{}, report.Cell{}, report.T("Straighten the end."), report.Cell{}, report.Cell{}, report.Cut(running.Surd(), c.u)))
	}
	for _, r := range c.layout.Rows {
		running += r.Height * measure.Length(r.Repeat)
		t.Rows = append(t.Rows, c.stripRow(r, pieces, strips, report.Cut(running.Surd(), c.u)))
		for _, q := range r.Panel {
			t.Rows = append(t.Rows, c.stripRow(q, pieces, strips, report.T("beside")))
		}
	}
	t.Foot = append(t.Foot, c.leftovers()...)
	if f.Panels > 0 {
		running += f.Panels
		b := c.s.Backing
		t.Rows = append(t.Rows, row(report.N(b.Panels), report.Cell{}, report.T("Backing panel, full width, each "+b.Each.AsCut(c.u)+" long."),
			report.T("backing"), report.N(b.Panels), report.Cut(running.Surd(), c.u)))
	}
}

// leftovers names what is left at the ends of the strips and may be kept.
func (c cutter) leftovers() []string {
	var all []string
	for _, o := range c.f.Offcuts(c.layout, c.s.Plan.Defaults.UsefulOffcut) {
		all = append(all, fmt.Sprintf("%d of %s x %s", o.Count, strings.TrimSuffix(o.Height.AsThere(c.u), " "+c.u.String()), o.Width.AsThere(c.u)))
	}
	if all == nil {
		return nil
	}
	return []string{"Left over at the ends of the strips: " + strings.Join(all, ", ") + "."}
}

// needs are the fabric's needs as the layout numbers them.
func (c cutter) needs() (pieces, strips []derive.Need) {
	for _, n := range c.f.Needs {
		if n.Strip {
			strips = append(strips, n)
		} else {
			pieces = append(pieces, n)
		}
	}
	return pieces, strips
}

func (c cutter) stripRow(r cutting.Row, pieces, strips []derive.Need, running report.Cell) report.Row {
	repeat := int64(r.Repeat)
	width := report.Cut(r.Height.Surd(), c.u)
	if r.Strip >= 0 {
		does, each := c.strip(strips[r.Strip], r.Height)
		return row(report.N(repeat), width, report.T(c.lettered(-1-r.Strip, does)), report.T(strips[r.Strip].For.Text), report.N(repeat*each), running)
	}
	var then, users []string
	total := int64(0)
	for _, part := range r.Parts {
		does, each := c.part(strips[part.Strip], part.Width, r.Height, len(r.Cuts)+len(r.Stacks)+len(r.Parts) == 1)
		then = append(then, c.lettered(-1-part.Strip, does))
		users = append(users, strips[part.Strip].For.Text)
		total += repeat * each
	}
	add := func(cut cutting.Cut, columns int64) string {
		n := pieces[cut.Piece]
		users = append(users, n.For.Text)
		total += int64(cut.Count) * columns * repeat
		return c.lettered(cut.Piece, c.pieces(cut, n))
	}
	for _, cut := range r.Cuts {
		then = append(then, add(cut, 1))
	}
	for _, stack := range r.Stacks {
		var column []string
		for _, cut := range stack.Cuts {
			column = append(column, add(cut, int64(stack.Count)))
		}
		then = append(then, fmt.Sprintf("%s %s wide, each cut across into %s", say.Many(int64(stack.Count), "column"), stack.Width.AsCut(c.u), strings.Join(column, " and ")))
	}
	words := sentence(strings.Join(then, ", then "))
	if len(r.Panel) > 0 {
		words = "Cut along the fabric: " + strings.Join(then, ", then ") + ". Cut the panel left beside, " + c.panelWidth(r).AsThere(c.u) + " wide, into the strips that follow."
	}
	return row(report.N(repeat), width, report.T(words), report.T(strings.Join(unique(users), ", ")), report.N(total), running)
}

// panelWidth is what lengthwise cuts leave of the usable width.
func (c cutter) panelWidth(r cutting.Row) measure.Length {
	left := c.f.Width
	for _, cut := range r.Cuts {
		left -= c.f.AcrossOf(cut) * measure.Length(cut.Count)
	}
	return left
}

// unique are names without repeats, in order of first appearance.
func unique(names []string) []string {
	var out []string
	for _, n := range names {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// lettered begins with the letter of a picture, which keeps its case.
var lettered = regexp.MustCompile(`^[a-z][0-9]*: `)

// sentence gives words a capital and a full stop.
func sentence(words string) string {
	if words == "" {
		return ""
	}
	if lettered.MatchString(words) {
		return words + "."
	}
	return strings.ToUpper(words[:1]) + words[1:] + "."
}

// pieces is the sub-cut of a strip in words.
func (c cutter) pieces(cut cutting.Cut, n derive.Need) string {
	a, b := n.Across, n.Along
	if cut.Turned {
		a, b = b, a
	}
	if c.brief {
		return fmt.Sprintf("%d of %s", cut.Count, a.AsCut(c.u)) + fromOnePrint(n)
	}
	if a == b {
		return say.Many(int64(cut.Count), "square") + " " + a.AsCut(c.u) + derive.Halved(n.Halving) + usedOf(n) + c.onBias(n) + fromOnePrint(n)
	}
	return say.Many(int64(cut.Count), "rectangle") + " " + strings.TrimSuffix(a.AsCut(c.u), " "+c.u.String()) + " x " + b.AsCut(c.u) + c.onBias(n) + fromOnePrint(n)
}

// fromOnePrint says that pieces belong together.
func fromOnePrint(n derive.Need) string {
	if n.Alike < 2 {
		return ""
	}
	return fmt.Sprintf(", kept in groups of %d from one print", n.Alike)
}

// usedOf says how many of a square's triangles are used, where not all are.
func usedOf(n derive.Need) string {
	if n.Used == 0 {
		return ""
	}
	return fmt.Sprintf(", %s of each used", say.Many(n.Used, "triangle"))
}

// unused says what is left over where not all of a square's triangles are used.
func (c cutter) unused() []string {
	var out []string
	for _, n := range c.f.Needs {
		p := c.s.Part(n.For.Text)
		if n.Used == 0 || p == nil {
			continue
		}
		cut := n.Count * n.Halving.Triangles()
		left := cut - p.Needed
		out = append(out, fmt.Sprintf("%s: of the %d triangles of %s, %s of each used, %d %s left over.",
			n.For.Text, cut, say.Many(n.Count, "square"), say.Many(n.Used, "triangle"), left, say.Goes(left, "is", "are")))
	}
	return out
}

// packs is the cut list of a precut fabric: pieces of the pack instead of
// strips of the bolt.
func (c cutter) packs(t *report.Table) {
	t.Columns[0] = report.Column{ID: "pack_pieces", Title: "Pack pieces"}
	t.Columns[5] = report.Column{ID: "running", Title: "Pack pieces so far"}
	if repeat := c.f.Repeat.Length; repeat > 0 {
		t.Lead = append(t.Lead, fmt.Sprintf("The print repeats every %s: what lies one below the other along the shorter side of a piece is cut a whole number of repeats apart, nothing is turned.", repeat.Format(c.u)))
	}
	pieces, strips := c.needs()
	running := int64(0)
	for _, sheet := range c.sheets.Sheets {
		running += int64(sheet.Repeat)
		for i, r := range sheet.Rows {
			each := r.Repeat
			r.Repeat *= sheet.Repeat
			line := c.stripRow(r, pieces, strips, report.N(running))
			if each > 1 {
				line.Cells[2].Text = say.Many(int64(each), "strip") + " from each piece. " + line.Cells[2].Text
			}
			line.Cells[0] = report.N(int64(sheet.Repeat))
			if i > 0 {
				line.Cells[0] = report.T("same")
			}
			if r.Strip >= 0 && r.Height == c.f.StripWidth().Length {
				line.Cells[2].Text = strings.Replace(line.Cells[2].Text, "Use whole.", "Use whole, as it comes.", 1)
			}
			t.Rows = append(t.Rows, line)
		}
	}
}
