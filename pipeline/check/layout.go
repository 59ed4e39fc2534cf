package check

import (
	"fmt"
	"iter"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var layoutChecks = []Check{
	{
		Rule: "layout/block-sizes", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "blocks that are sashed or set on point are not of one size",
		Why:     "Every sash and every setting triangle is cut for one size of block. Among 12-in blocks a 12 1/2-in one has no sash that is long enough, and on point a block that is not square leaves its neighbours out of line.",
		Fix:     "make the blocks alike, or trim them to one size",
		Run:     blockSizes,
	},
	{
		Rule: "layout/coping", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "coping strips have no room: what is inside is as large as the size they should bring it to",
		Why:     "A panel sold as 24 by 44 in may measure 23 1/2 by 43 1/4; strips make up what is missing, and cannot take away. They are worked out from the panel as it measures.",
		Fix:     "name a larger size, or trim the panel",
		Run:     copingRoom,
	},
	{
		Rule: "layout/corner-block", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the block in a border's corners is not as large as the border is wide",
		Why:     "A block that finishes 3 in in the corner of a border that finishes 3 1/2 in leaves half an inch of strip with nothing to be sewn to, at both ends of all four strips.",
		Fix:     "make the border as wide as the block finishes, or the block as large as the border is wide",
		Run:     cornerBlocks,
	},
	{
		Rule: "layout/float-unsaid", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "setting triangles are cut more than 1/4 in over and nothing says how the edge is trimmed",
		Why:     "Side squares cut an inch over let the blocks float half an inch inside the seam, and the quilt comes out an inch larger, or it is trimmed back and does not. Both are done, so the finished size depends on which. Common practice, no source; the limit is this project's.",
		Fix:     "say how far the points float, or 0 when the edge is trimmed back to them",
		Run:     floatUnsaid,
	},
	{
		Rule: "layout/kinds-unsaid", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the squares of a tube are of two kinds, and the layout does not say where which goes",
		Why:     "Triangles cut from one edge of a tube open along the near seam, those from the other along the far one. Half of the squares of light and dark strips have the light along the diagonal and half have it in two corners: a quilt drawn with all of them alike cannot be sewn. Without a word the sheets let them take turns.",
		Fix:     "give each place its kind, \"near\" or \"far\"; or, of two equal sets, lay the second end for end, and all squares are alike",
		Run:     kindsUnsaid,
	},
	{
		Rule: "layout/pieced-border", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "the units of a pieced border do not fit the sides that they are sewn to",
		Why:     "Units of 3 in fill 60 in with twenty and 61 in with none: an inch cannot be eased in. A plain spacer border before it brings the sides to a whole number of units. An error above 1/4 in, a warning above 1/8 in. Common practice, no source; the limits are this project's.",
		Fix:     "choose a unit that divides the sides, or sew a spacer border on first",
		Run:     piecedBorders,
	},
	{
		Rule: "layout/symmetry", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "a grid cannot have the symmetry that it names",
		Why:     "A quarter of 3 rows by 4 columns, turned, is 4 by 3: four of them leave a hole in the middle. Quarters in mirrored places need a whole number of blocks each.",
		Fix:     "change the rows and columns, or name another symmetry",
		Run:     symmetries,
	},
	{
		Rule: "layout/triangle-grain", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "setting triangles are cut so that the quilt's edge is on the bias",
		Why:     "Of a square cut twice the long sides are on the straight grain, of one cut once the short ones. Side triangles have their long side on the quilt's edge, corner triangles their short ones. The other way round they fit as well, and the edge stretches.",
		Fix:     "cut squares for the sides twice diagonally and those for the corners once",
		Run:     triangleGrain,
	},
	{
		Rule: "layout/triangle-short", Level: diag.Error, Since: "0.1.0", Scope: Size, Speaks: true,
		Summary: "setting triangles are too small for the blocks",
		Why:     "The points of the blocks lie beyond the edge and are cut off by the outer seam. The commonest slip is the constant: side triangles take the block's diagonal + 1 1/4 in and corners half of it + 7/8 in, at a 1/4-in seam, not the side of the block and a little.",
		Fix:     "cut the squares larger, or let the points float less",
		Run:     trianglesShort,
	},
}

// settings are the size's parts set together, by what they are called: the
// layout's, then those of parts.
func (p *Pass) settings() iter.Seq2[string, *derive.Setting] {
	return func(yield func(string, *derive.Setting) bool) {
		if st := p.Size.Top.Setting; st != nil && st.Known && !yield("the layout", st) {
			return
		}
		for _, part := range p.Size.Parts {
			if part.Setting != nil && part.Known && !yield(part.Name.Text, part.Setting) {
				return
			}
		}
	}
}

// aboutSetting is the quantity that a setting decides.
func (p *Pass) aboutSetting(name string) Subject {
	if p.Size.Part(name) == nil {
		return Subject{Kind: derive.TopSize}
	}
	return Subject{Kind: derive.Geometry, Name: name}
}

func blockSizes(p *Pass) {
	for name, st := range p.settings() {
		var at source.Range
		switch {
		case st.OnPoint != nil:
			at = st.OnPoint.Said.At
		case st.Sashing != nil && !st.Sashing.RowsOnly:
			at = st.Sashing.Said.At
		default:
			continue
		}
		f := Finding{Ways: ways(advise("make all blocks of one size"), advise("trim them to it")), About: p.aboutSetting(name), Root: true}
		wide, high := st.Most.Width.Sub(st.Least.Width), st.Most.Height.Sub(st.Least.Height)
		switch odd := oddBlocks(st); {
		case len(odd) == 2:
			f.Message = fmt.Sprintf("the blocks are not of one size: %q measures %s, and %q %s", odd[0].Name.Text, p.box(odd[0].Width, odd[0].Height), odd[1].Name.Text, p.box(odd[1].Width, odd[1].Height))
			f.Related = []Related{{sizeAt(odd[0]), "one is made here"}, {sizeAt(odd[1]), "the other is made here"}}
		case len(odd) == 1 && st.OnPoint != nil:
			f.Message = fmt.Sprintf("blocks on point have to be square, and %q measures %s", odd[0].Name.Text, p.box(odd[0].Width, odd[0].Height))
			f.Related = []Related{{sizeAt(odd[0]), "it is made here"}}
		case measure.Max(wide, high).Cmp(easedHeight.Surd()) > 0: // a block stands on its side
			f.Message = fmt.Sprintf("the blocks measure from %s to %s", p.box(st.Least.Width, st.Least.Height), p.box(st.Most.Width, st.Most.Height))
		default:
			continue
		}
		p.Report(at, f)
	}
}

// oddBlocks are the first block and the first that has another size; where all
// are of one size, the first that is not square. A difference that sewing eases
// in is none.
func oddBlocks(st *derive.Setting) []*derive.Part {
	differ := func(a, b measure.Surd) bool { return gap(a, b).Cmp(easedHeight.Surd()) > 0 }
	for _, b := range st.Blocks {
		if first := st.Blocks[0].Part; differ(first.Width, b.Part.Width) || differ(first.Height, b.Part.Height) {
			return []*derive.Part{first, b.Part}
		}
	}
	for _, b := range st.Blocks {
		if differ(b.Part.Width, b.Part.Height) {
			return []*derive.Part{b.Part}
		}
	}
	return nil
}

func copingRoom(p *Pass) {
	for _, b := range p.Size.AllBorders() {
		if !b.Said.Copes() || b.Known {
			continue
		}
		has := b.Inner.Finished(b.Seam)
		p.Report(b.Said.To[0].At, Finding{
			Message: fmt.Sprintf("border %q should bring the quilt to %s, and what is inside it finishes at %s already", b.Said.Name.Text,
				p.pair(b.Said.To[0].Length, b.Said.To[1].Length), p.box(has.Width, has.Height)),
			Ways: ways(advise("name a size that is larger, one way or both, and smaller in neither"), advise("trim what is inside")),
		})
	}
}

func cornerBlocks(p *Pass) {
	for _, b := range p.Size.AllBorders() {
		if b.Corner == nil || !b.Corner.Known {
			continue
		}
		has, width := b.Corner.Finished(b.Seam), b.Said.Width.Length.Surd()
		if measure.Max(gap(has.Width, width), gap(has.Height, width)).Cmp(easedHeight.Surd()) <= 0 {
			continue
		}
		p.Report(b.Said.CornerPart.At, Finding{
			Message: fmt.Sprintf("%q finishes %s, and border %q, whose corners it stands in, is %s wide", b.Corner.Name.Text,
				p.box(has.Width, has.Height), b.Said.Name.Text, p.length(b.Said.Width.Length)),
			Ways:  ways(p.asWide(b, has.Height)),
			About: geometryOf(b.Corner),
		})
	}
}

// floats is the float that squares may leave before the plan has to say so,
// doubled: what they are cut over.
const floats = measure.Inch / 4

func floatUnsaid(p *Pass) {
	for name, st := range p.settings() {
		o := st.OnPoint
		if o == nil || o.Said.Float.Given() || o.Sashing != nil || o.Side.Lines != nil && o.Corner.Lines != nil {
			continue
		}
		leaves := o.FloatOf()
		if leaves.MulInt(2).Cmp(floats.Surd()) <= 0 {
			continue
		}
		at := o.Said.SideCut.Square.At
		if at == (source.Range{}) {
			at = o.Said.CornerCut.Square.At
		}
		p.Report(at, Finding{
			Message: fmt.Sprintf("the setting triangles let the points float up to %s, and the plan does not say how far they do", leaves.AsThere(p.Plan.Units)),
			Ways:    ways(p.floats(o, leaves.FloorTo(p.rulerGrid()), "as far as the points may float"), p.floats(o, 0, "when the edge is trimmed back")),
			About:   p.aboutSetting(name),
		})
	}
}

func triangleGrain(p *Pass) {
	for name, st := range p.settings() {
		o := st.OnPoint
		if o == nil {
			continue
		}
		for _, t := range cutsOf(o) {
			if t.Halving == t.usual {
				continue
			}
			p.Report(t.said.At, Finding{
				Message: fmt.Sprintf("the %s triangles come from squares %s diagonally, so their bias lies on the edge", t.what, halved(t.Halving)),
				Ways:    ways(advise(fmt.Sprintf("cut squares of %s %s", p.ruler(t.proper), timesCut(t.usual)))),
				About:   p.aboutSetting(name),
			})
		}
	}
}

// triangleCut is one of the two kinds of setting triangles.
type triangleCut struct {
	derive.TriangleCut
	what   string
	said   plan.TriangleCut
	usual  plan.Halving // that lays the straight grain on the edge
	proper measure.Surd // the exact square for it
}

func cutsOf(o *derive.OnPoint) []triangleCut {
	return []triangleCut{
		{o.Side, "side", o.Said.SideCut, plan.CutTwice, o.Setting.Side.Exact},
		{o.Corner, "corner", o.Said.CornerCut, plan.CutOnce, o.Setting.Corner.Exact},
	}
}

func timesCut(h plan.Halving) string {
	if h == plan.CutTwice {
		return "twice diagonally"
	}
	return "once diagonally"
}

func trianglesShort(p *Pass) {
	for name, st := range p.settings() {
		o := st.OnPoint
		if o == nil {
			continue
		}
		for _, t := range cutsOf(o) {
			if t.Cut.Surd().Cmp(t.Wanted) >= 0 {
				continue
			}
			why := ""
			if !o.Float.IsZero() && t.Cut.Surd().Cmp(t.Exact) >= 0 {
				why = fmt.Sprintf(" for points that float %s", o.Float.Format(p.Plan.Units))
			}
			p.Report(t.said.Square.At, Finding{
				Message: fmt.Sprintf("the squares for the %s triangles are cut %s, %s; blocks of %s finished need %s%s", t.what, p.needs(t.Cut),
					timesCut(t.Halving), o.Block.Format(p.Plan.Units), t.Wanted.AsCut(p.Plan.Units), why),
				Ways:  ways(mend(p.putLength("cut them", t.said.Square.At, t.Wanted.CeilTo(p.rulerGrid())))),
				About: p.aboutSetting(name), Root: true,
			})
		}
	}
}

func piecedBorders(p *Pass) {
	for _, b := range p.Size.AllBorders() {
		if b.Units == nil {
			continue
		}
		if width := b.Said.Width; !b.Units.Deep.Equal(width.Surd()) {
			p.Report(width.At, Finding{
				Message: fmt.Sprintf("border %q is %s wide, and %q finishes %s high", b.Said.Name.Text, p.length(width.Length),
					b.Said.Part.Text, b.Units.Deep.Format(p.Plan.Units)),
				Ways: ways(p.asWide(b, b.Units.Deep)),
			})
			continue
		}
		p.unitsFit(b)
	}
}

// unitsFit reports the side that the units of a border miss by more.
func (p *Pass) unitsFit(b derive.Border) {
	u := b.Units
	drift, n, side := u.SideDrift, u.Sides, b.Sides
	if size(u.EndDrift).Cmp(size(drift)) > 0 {
		drift, n, side = u.EndDrift, u.Ends, b.Ends
	}
	f := Finding{Ways: ways(advise(p.spacer(b))), About: Subject{Kind: derive.Finish, Name: b.Said.Name.Text}}
	switch {
	case size(drift).Cmp(driftFails.Surd()) > 0:
	case size(drift).Cmp(driftWarns.Surd()) > 0:
		f.Level = diag.Warning
	default:
		return
	}
	f.Message = fmt.Sprintf("%s of %q, %s each, %s to %s; the side of border %q is %s", count(int(n), "unit"), b.Said.Part.Text,
		u.Unit.Format(p.Plan.Units), say.Goes(n, "comes", "come"), u.Unit.MulInt(n).Format(p.Plan.Units), b.Said.Name.Text, side.Sub((2 * b.Seam).Surd()).Format(p.Plan.Units))
	p.Report(b.Said.Part.At, f)
}

// asWide is the way out of a border that is to be as wide as what is sewn into it
// finishes.
func (p *Pass) asWide(b derive.Border, side measure.Surd) diag.Way {
	width, ok := side.Length()
	if !ok {
		return diag.Way{}
	}
	return mend(of(p.putLength("write", b.Said.Width.At, width), "as the border's width"))
}

// floats is the choice of saying how far the points of blocks float.
func (p *Pass) floats(o *derive.OnPoint, l measure.Length, note string) diag.Way {
	value := p.lengthText(source.Range{}, l)
	if l == 0 {
		value = "0"
	}
	return noted(choice(p.add(o.Said.At, "float", value)), note)
}

func size(x measure.Surd) measure.Surd { return measure.Max(x, x.Neg()) }

// spacer is the way out for a pieced border that does not fit.
func (p *Pass) spacer(b derive.Border) string {
	inner := b.Inner.Finished(b.Seam)
	if b.Said.Corners == plan.CornerSquares {
		if width, ok := piecing.Spacer(inner, b.Units.Unit); ok {
			return fmt.Sprintf("sew a plain border of %s finished on first", width.Format(p.Plan.Units))
		}
	}
	unit := b.Units.Unit.Format(p.Plan.Units)
	return fmt.Sprintf("bring the quilt to a whole number of %s each way with a border that says the size it reaches as its \"to\"", unit)
}

func symmetries(p *Pass) {
	p.symmetry(p.Size.Of.Layout.Grid)
	for _, part := range p.Size.Of.Parts {
		if room, ok := p.Size.Part(part.Name.Text).Room.(derive.Gridded); ok {
			p.symmetry(room.Grid())
		}
	}
}

func (p *Pass) symmetry(g *plan.Grid) {
	if g == nil || g.Symmetry == plan.NoSymmetry {
		return
	}
	rows, columns := g.Rows.N, g.Columns.N
	if g.Tile[0].Given() {
		rows, columns = g.Tile[0].N, g.Tile[1].N
	}
	message, hint := "", ""
	switch {
	case g.Symmetry == plan.QuarterTurns && rows != columns:
		message, hint = "quarters that are turned need as many rows as columns", "write \"turned quarters\" or \"mirror\", or make it square"
	case g.Symmetry == plan.TurnedQuarters && (rows%2 != 0 || columns%2 != 0):
		message, hint = "quarters in mirrored places need even numbers of rows and columns", "add or remove a row or a column"
	case g.Rows.N%rows != 0 || g.Columns.N%columns != 0:
		message, hint = fmt.Sprintf("the grid of %d by %d is no whole number of such tiles", g.Rows.N, g.Columns.N), "let the tile divide the rows and the columns"
	default:
		return
	}
	p.Report(g.SymmetryAt, Finding{
		Message: fmt.Sprintf("%q of %s by %s: %s", g.Symmetry.String(), count(rows, "row"), count(columns, "column"), message),
		Ways:    ways(advise(hint)), About: Subject{Kind: derive.TopSize}, Root: true,
	})
}
