package derive

import (
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// count walks from the layout down to the fabric: each part, once it is known
// how many of it are needed, asks for its ingredients.
func (s *Size) count() {
	s.share()
	s.needSetting(plan.Text{}, s.Top.Setting, nil)
	for i := range s.Top.Borders {
		b := &s.Top.Borders[i]
		s.needBorder(b.Said.Name, b, 1, nil)
	}
	for i := len(s.Parts) - 1; i >= 0; i-- {
		switch p := s.Parts[i]; {
		case p.Pool != nil && p.Pool.Parts[0] == p:
			p.Pool.settle(s)
		case p.Pool == nil && p.Needed > 0:
			s.ask(p)
		}
	}
}

// countless is where counting stops: far more than any fabric is laid out for,
// and few enough that nothing counted from it overflows. Blocks nested in
// blocks get there in six steps.
const countless = 1 << 40

// Call is that so many of a part are asked for.
type Call struct {
	By *Part     // that it is for; nil for the top
	In plan.Text // of the top: "the layout" or a border, and its place
	N  int64
}

// call asks for n more of a part, for another part.
func (p *Part) call(n int64, by *Part) { p.called(Call{By: by, N: n}) }

// called adds a call to those by the same.
func (p *Part) called(c Call) {
	p.Needed = min(p.Needed+c.N, countless)
	for i := range p.Calls {
		if old := &p.Calls[i]; old.By == c.By && old.In == c.In {
			old.N = min(old.N+c.N, countless)
			return
		}
	}
	p.Calls = append(p.Calls, c)
}

// ask counts what it takes to make a part as often as it is needed.
func (s *Size) ask(p *Part) {
	p.Made = p.Needed
	s.passKinds(p)
	switch op := p.Operation.(type) {
	case plan.Loop: // its pool asks, and one without a yield takes nothing
	case plan.Cut:
		s.askCut(p, op)
	case plan.WholeStrip:
		if f := s.byFabric[op.Fabric.Text]; f != nil {
			f.Needs = append(f.Needs, Need{For: p.Name, Strip: true, Across: f.stripLength(), Along: f.stripWidth(op.Width), Count: p.Needed})
			f.mustHold(p.Name, f.stripLength(), f.stripWidth(op.Width), p.Needed)
		}
	case plan.StripSet:
		if p.Set != nil && p.Set.Cut == nil {
			s.askSets(p, true)
		}
	case plan.Tube:
		s.askTube(p)
	case plan.HalfSquares:
		s.askHalfSquares(p, op)
	case plan.Hourglass, plan.FlyingGeese, plan.FlipCorners, plan.SquareInSquare, plan.Logs, plan.Template:
		s.askUnit(p)
	case plan.Shape:
		s.askShape(p)
	case plan.Chain:
		s.askChain(p, op)
	case plan.Mosaic:
		s.askMosaic(p, op)
	case plan.Rows:
		s.askRows(p, op)
	case plan.Setting:
		s.needSetting(p.Name, p.Setting, p)
	case plan.Bordered:
		s.askBordered(p, op)
	default:
		for _, in := range p.Operation.Ingredients() {
			if q := s.byName[in.Name.Text]; q != nil {
				q.call(p.Needed, p)
				q.reflect(1, 0, p.Needed, p.Mirrored)
			}
		}
	}
}

func (s *Size) askRows(p *Part, op plan.Rows) {
	for _, row := range op.Rows {
		for _, c := range row {
			q := s.byName[c.Part.Text]
			if q == nil {
				continue
			}
			mirrored := int64(0)
			if c.Mirror {
				mirrored = 1
			}
			q.call(p.Needed, p)
			q.kinds.want(c.Kind, p.Needed)
			q.reflect(1, mirrored, p.Needed, p.Mirrored)
		}
	}
}

func (s *Size) askBordered(p *Part, op plan.Bordered) {
	if q := s.byName[op.Part.Text]; q != nil {
		q.call(p.Needed, p)
		q.reflect(1, 0, p.Needed, p.Mirrored)
	}
	for i := range p.Borders {
		b := &p.Borders[i]
		s.needBorder(called(p.Name, b.Said.Name.Text, b.Said.Name.At), b, p.Needed, p)
	}
}

func (s *Size) askCut(p *Part, op plan.Cut) {
	f := s.byFabric[op.Fabric.Text]
	if f == nil {
		return
	}
	each := op.Each()
	if op.Halving != plan.Whole {
		p.Squares = piecing.Batches(p.Needed, each)
		p.Made = p.Squares * each
	}
	f.needCut(p.Name, op.Width.Length, op.Height.Length, p.Needed, op.Halving)
	need := &f.Needs[len(f.Needs)-1]
	if each < op.Halving.Triangles() {
		need.Used, need.Count = each, p.Squares
	}
	if n := int64(op.Alike.N); f.Assorted && n > 1 { // whole groups come from one print each
		need.Alike, need.Count = op.Alike.N, piecing.Batches(need.Count, n)*n
	}
}

func (s *Size) askTube(p *Part) {
	if !p.Known || p.Tube.Yield.Each == 0 {
		return
	}
	t := p.Tube
	s.settleKinds(p)
	t.Count = t.CountAt(t.Yield.Each)
	p.Made = t.Count * t.Yield.Each
	for _, set := range t.Sets {
		set.call(t.Count, p)
		for _, strip := range set.Set.Strips {
			// However tubes are arranged, each square takes one advance of every strip.
			strip.Fabric.mustCover(measure.Area(t.Advance().Surd(), strip.Width.Surd()).MulInt(p.Needed))
		}
	}
}

func (s *Size) askHalfSquares(p *Part, op plan.HalfSquares) {
	if !p.Known {
		return
	}
	t := p.Triangle
	t.Pairs = piecing.Batches(p.Needed, int64(op.AtATime))
	p.Made = t.Pairs * int64(op.AtATime)
	for _, role := range op.Fabrics {
		s.byFabric[role.Text].need(p.Name, op.Square.Length, op.Square.Length, t.Pairs)
	}
}

// needWhole asks for strips that are used whole; those of one width for one
// part are one need.
func (f *Fabric) needWhole(by plan.Text, width measure.Length, count int64) {
	for i := range f.Needs {
		if n := &f.Needs[i]; n.Strip && n.For == by && n.Along == width && n.Last == 0 {
			n.Count = min(n.Count+count, countless)
			return
		}
	}
	f.Needs = append(f.Needs, Need{For: by, Strip: true, Across: f.stripLength(), Along: width, Count: count})
}

// needJoined asks for the strips of a joined length.
func (f *Fabric) needJoined(by plan.Text, width measure.Length, j Joined) {
	if !j.OK || j.Count == 0 {
		f.Missing = f.Missing || !j.OK
		return
	}
	last := j.Each - (j.Length - j.Need.CeilTo(measure.Tick))
	f.Needs = append(f.Needs, Need{For: by, Strip: true, Across: j.Each, Along: width, Count: j.Count, Last: last})
	f.mustCover(measure.Area(j.Need, width.Surd()))
}
