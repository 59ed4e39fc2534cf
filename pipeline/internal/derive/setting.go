package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Setting is parts set together: the middle of a top, or a part.
type Setting struct {
	Said  plan.Setting
	Known bool
	piecing.Box
	Blocks  []Block          // in order of first appearance
	Rows    piecing.Assembly // the blocks row by row; on point, of the full rows
	Least   piecing.Box      // unfinished size of its blocks, the least each way
	Most    piecing.Box      // the greatest each way
	Sashing *Sashing
	OnPoint *OnPoint
}

// Sashing is derived sashing. Sizes are cut sizes.
type Sashing struct {
	Said *plan.Sashing
	piecing.Sashing
	UprightCut, LevelCut, Stone piecing.Box
	Through                     *Joined // strips that run through between the rows, of both lengths joined; nil when they are pieces
}

// Runs is how many strips lie between the rows, and round them, where they
// run through.
func (g *Sashing) Runs() int64 { return g.Level() / g.Columns }

// OnPoint is derived blocks on point.
type OnPoint struct {
	Said *plan.Triangles
	piecing.OnPoint
	piecing.Setting
	Side, Corner TriangleCut
	Float        measure.Surd  // of the points inside the outer seam
	Sashing      *plan.Sashing // nil without
	Sash, Stone  piecing.Box   // cut sizes
}

// TriangleCut is the squares that setting triangles come from.
type TriangleCut struct {
	Exact     measure.Surd // cut side that leaves the points in the outer seam
	Wanted    measure.Surd // and the one for the float that the plan states
	Cut       measure.Length
	Halving   plan.Halving
	Triangles int64
	Squares   int64
	Spare     int64  // triangles that the squares give and nothing takes
	Lines     *Lines // that the squares were rounded up to; nil where the plan says their size
}

// set works out parts set together. What stands in it is listed even when its
// size is unknown.
func (s *Size) set(of plan.Setting, seam measure.Length) *Setting {
	st := &Setting{Said: of}
	g := of.Grid
	if g == nil {
		return st
	}
	rows := func(r int) []plan.Cell { return g.Row(r) }
	s.list(st, g.Rows.N, rows)
	if of.Triangles != nil {
		s.list(st, g.Rows.N-1, g.Short)
	}
	boxes, ok := s.boxes(g.Rows.N, rows)
	if !ok || len(boxes) == 0 || len(boxes[0]) == 0 {
		return st
	}
	st.Rows = piecing.Assemble(boxes, seam)
	st.extent(boxes)
	st.Known, st.Box = true, st.Rows.Box
	switch {
	case of.Triangles != nil:
		s.setOnPoint(st, of, seam)
	case of.Sashing != nil:
		s.sash(st, of, seam)
	}
	return st
}

// list counts the parts that stand in rows.
func (s *Size) list(st *Setting, rows int, row func(int) []plan.Cell) {
	at := map[string]int{}
	for i, b := range st.Blocks {
		at[b.Part.Name.Text] = i
	}
	for r := range rows {
		for _, c := range row(r) {
			p := s.byName[c.Part.Text]
			if p == nil {
				continue
			}
			i, seen := at[c.Part.Text]
			if !seen {
				i = len(st.Blocks)
				at[c.Part.Text] = i
				st.Blocks = append(st.Blocks, Block{Part: p})
			}
			st.Blocks[i].Count++
			st.Blocks[i].kinds.want(c.Kind, 1)
			if c.Mirror {
				st.Blocks[i].Mirrored++
			}
		}
	}
}

// extent takes boxes into the least and greatest block.
func (st *Setting) extent(boxes [][]piecing.Box) {
	var last piecing.Box
	for _, row := range boxes {
		for _, b := range row {
			if b == last && !st.Most.Width.IsZero() {
				continue
			}
			last = b
			if st.Most.Width.IsZero() {
				st.Least, st.Most = b, b
			}
			st.Least = piecing.Box{Width: measure.Min(st.Least.Width, b.Width), Height: measure.Min(st.Least.Height, b.Height)}
			st.Most = piecing.Box{Width: measure.Max(st.Most.Width, b.Width), Height: measure.Max(st.Most.Height, b.Height)}
		}
	}
}

// withSeams is a finished size with its seam allowance.
func withSeams(b piecing.Box, seam measure.Length) piecing.Box { return piecing.Grown(b, seam) }

func (s *Size) sash(st *Setting, of plan.Setting, seam measure.Length) {
	g := &Sashing{Said: of.Sashing}
	g.Sashing = piecing.Sashing{
		Rows: int64(of.Grid.Rows.N), Columns: int64(of.Grid.Columns.N),
		Block: st.Least.Finished(seam), Width: of.Sashing.Width.Length, Outer: of.Sashing.Outer, RowsOnly: of.Sashing.RowsOnly,
	}
	g.UprightCut, g.LevelCut, g.Stone = g.Pieces(seam)
	st.Box = g.Around(st.Rows.Box)
	if !of.Sashing.Cornerstones.Given() {
		g.LevelCut.Width = st.Width
	}
	st.Sashing = g
}

func (s *Size) setOnPoint(st *Setting, of plan.Setting, seam measure.Length) {
	said := of.Triangles
	short, ok := s.boxes(of.Grid.Rows.N-1, of.Grid.Short)
	if !ok {
		st.Known = false
		return
	}
	st.extent(short)
	side := measure.Min(st.Least.Width, st.Least.Height).Sub((2 * seam).Surd())
	o := &OnPoint{Said: said, Float: said.Float.Surd()}
	o.OnPoint = piecing.OnPoint{Columns: int64(of.Grid.Columns.N), Rows: int64(of.Grid.Rows.N), Block: side}
	if of.Sashing != nil {
		o.Sashing, o.OnPoint.Sash = of.Sashing, of.Sashing.Width.Length
		o.Sash, o.Stone = o.Pieces(seam)
	}
	lines := s.lines()
	o.Setting = piecing.SettingTriangles(side, seam, lines.Apart)
	o.Side = o.triangles(said.SideCut, plan.CutTwice, seam, lines)
	o.Side.Triangles = o.SideTriangles()
	o.Corner = o.triangles(said.CornerCut, plan.CutOnce, seam, lines)
	o.Corner.Triangles = o.CornerTriangles()
	for _, t := range []*TriangleCut{&o.Side, &o.Corner} {
		t.fill(1)
	}
	st.OnPoint = o
	st.Box = withSeams(o.Floating(o.Float), seam)
	st.Known = side.Sign() > 0
}

// triangles is the squares of side or corner triangles: as the plan states
// them, else up to the ruler's lines, as the edge is trimmed afterwards. Usual is the halving that lays the
// straight grain outside.
//
// A side triangle has finished legs of a block's side and a corner triangle a
// long side of it, so the wrong halving fits too with a square of its own.
// The points float by half of what a square cut the usual way exceeds its
// exact size by, and by 1/sqrt2 and 1/(2 sqrt2) of it for side and corner
// triangles cut the other way. All derived from geometry.
func (o *OnPoint) triangles(said plan.TriangleCut, usual plan.Halving, seam measure.Length, lines Lines) TriangleCut {
	t := TriangleCut{Halving: usual, Exact: o.Setting.Side.Exact}
	if usual == plan.CutOnce {
		t.Exact = o.Setting.Corner.Exact
	}
	gain := o.Float.MulInt(2)
	if said.Halving != plan.Whole && said.Halving != usual {
		t.Halving = said.Halving
		if usual == plan.CutTwice {
			t.Exact, gain = o.Block.Add(piecing.HalfSquareAdd(seam)), o.Float.Mul(measure.Root2())
		} else {
			t.Exact, gain = o.Block.Add(piecing.QuarterSquareAdd(seam)), gain.Mul(measure.Root2())
		}
	}
	t.Wanted = t.Exact.Add(gain)
	t.Cut, t.Lines = t.Wanted.CeilTo(lines.Apart), &lines
	if said.Square.Given() {
		t.Cut, t.Lines = said.Square.Length, nil
	}
	return t
}

// FloatOf is how far the points float when squares are cut so, tight being 0:
// what the smaller of the two leaves. It is negative when one is short.
func (o *OnPoint) FloatOf() measure.Surd {
	side, corner := o.Side.Cut.Surd().Sub(o.Side.Exact), o.Corner.Cut.Surd().Sub(o.Corner.Exact)
	if o.Side.Halving == plan.CutOnce {
		side = side.Mul(measure.Root2())
	}
	if o.Corner.Halving == plan.CutTwice {
		corner = corner.Div(measure.Root2())
	}
	return measure.Min(side, corner).DivInt(2)
}

// needSetting asks for all that so many settings of a name take: their blocks,
// sashes and setting triangles.
func (s *Size) needSetting(name plan.Text, st *Setting, p *Part) {
	times, mirrored, in := int64(1), int64(0), plan.Text{Text: "the layout"}
	if p != nil {
		times, mirrored, in = p.Needed, p.Mirrored, plan.Text{}
	} else if g := s.Of.Layout.Grid; g != nil {
		in.At = g.At
	}
	for _, b := range st.Blocks {
		b.Part.called(Call{By: p, In: in, of: b.calls(p, in)})
		b.Part.kinds.add(b.kinds, times)
		b.Part.reflect(b.Count, b.Mirrored, times, mirrored)
	}
	if !st.Known {
		return
	}
	if st.Sashing != nil {
		s.needSashes(name, st.Sashing, times)
	}
	if o := st.OnPoint; o != nil {
		s.needTriangles(called(name, "side triangles", o.Said.At), o.Said.Sides, &o.Side, times)
		s.needTriangles(called(name, "corner triangles", o.Said.At), o.Said.Corners, &o.Corner, times)
		s.needSashesOnPoint(name, o, times)
	}
}

// calls is how many of a block a setting takes, or the settings of all of a part.
func (b Block) calls(of *Part, in plan.Text) figure.F {
	if of == nil {
		return figure.Counted("", "places in the layout", b.Count, in.At)
	}
	return of.NeededFigure().By(b.Count)
}

// fill counts the squares for so many settings, and the triangles left of them.
func (t *TriangleCut) fill(times int64) {
	each := t.Halving.Triangles()
	t.Squares = piecing.Batches(t.Triangles*times, each)
	t.Spare = t.Squares*each - t.Triangles*times
}

// called is what a setting's own pieces are called in a cut list: by the part
// they belong to, if it is not the layout.
func called(part plan.Text, what string, at source.Range) plan.Text {
	if part.Given() {
		what = part.Text + " " + what
	}
	return plan.Text{Text: what, At: at}
}

func (s *Size) needTriangles(name, role plan.Text, t *TriangleCut, times int64) {
	t.fill(times)
	if f := s.byFabric[role.Text]; f != nil {
		f.needTriangles(name, t.Cut, t.Triangles*times, t.Halving)
	}
}

func (s *Size) needSashesOnPoint(name plan.Text, o *OnPoint, times int64) {
	if o.Sashing == nil {
		return
	}
	if f := s.byFabric[o.Sashing.Fabric.Text]; f != nil {
		s.needRectangle(f, called(name, "sashing", o.Sashing.At), o.Sash, o.Sashes()*times)
	}
	if f := s.byFabric[o.Sashing.Cornerstones.Text]; f != nil {
		s.needRectangle(f, called(name, "cornerstones", o.Sashing.At), o.Stone, o.Cornerstones()*times)
	}
}

func (s *Size) needSashes(name plan.Text, g *Sashing, times int64) {
	f := s.byFabric[g.Said.Fabric.Text]
	label := called(name, "sashing", g.Said.At)
	if f != nil {
		s.needRectangle(f, label, g.UprightCut, g.Upright()*times)
	}
	if stones := s.byFabric[g.Said.Cornerstones.Text]; stones != nil {
		s.needRectangle(stones, called(name, "cornerstones", g.Said.At), g.Stone, g.Cornerstones()*times)
		if f != nil {
			s.needRectangle(f, label, g.LevelCut, g.Level()*times)
		}
		return
	}
	if f == nil || g.Said.Cornerstones.Given() {
		return
	}
	if s.cutLength(g.LevelCut.Width) <= f.stripLength() {
		s.needRectangle(f, label, g.LevelCut, g.Runs()*times)
		return
	}
	cut := s.cutLength(g.LevelCut.Height)
	need := figure.Given(figure.Length, g.LevelCut.Width.MulInt(g.Runs()*times), "all runs between the rows")
	j := s.join(label.Text, need.Where(label.At), f, g.Said.Joins, figure.Said("w", "cut width", cut, g.Said.Width.At), s.Of.Seam)
	g.Through = &j
	f.needJoined(label, cut, j)
}

// needRectangle asks for rectangles as they lie in the quilt.
func (s *Size) needRectangle(f *Fabric, label plan.Text, b piecing.Box, count int64) {
	if count > 0 {
		f.need(label, s.cutLength(b.Width), s.cutLength(b.Height), count)
	}
}

// cutLength is a length to cut: exact where a plan can say it, else up to the
// ruler's grid.
func (s *Size) cutLength(x measure.Surd) measure.Length { return exactOr(x, s.rulerGrid()) }

// exactOr is a length to cut: exact where a plan can say it, else up to a grid.
func exactOr(x measure.Surd, grid measure.Length) measure.Length {
	if l, ok := x.Length(); ok {
		return l
	}
	return x.CeilTo(grid)
}

// reflect counts the mirror images among a part's n uses in each of a number
// of things, of which some are mirrored themselves: in those, what is
// mirrored comes out plain and the other way round.
func (p *Part) reflect(n, mirrored, times, mirroredTimes int64) {
	p.Mirrored = min(p.Mirrored+mirrored*(times-mirroredTimes)+(n-mirrored)*mirroredTimes, countless)
}
