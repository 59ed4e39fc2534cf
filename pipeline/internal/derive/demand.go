package derive

import (
	"yardproof/pipeline/internal/figure"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
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
			p.Pool.settle()
		case p.Pool == nil && p.Needed > 0:
			p.Made = p.Needed
			s.passKinds(p)
			p.Room.Ask()
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

	of    figure.F // how many are asked for at a time
	times int64
}

// call asks for n more of a part, for another part.
func (p *Part) call(n figure.F, by *Part) { p.called(Call{By: by, of: n}) }

// called adds a call to those by the same.
func (p *Part) called(c Call) {
	c.N, c.times = min(c.of.N(), countless), 1
	p.Needed = min(p.Needed+c.N, countless)
	for i := range p.Calls {
		if old := &p.Calls[i]; old.By == c.By && old.In == c.In {
			old.add(c)
			return
		}
	}
	p.Calls = append(p.Calls, c)
}

// add adds another call of the same.
func (c *Call) add(more Call) {
	if c.of == more.of {
		c.times++
	} else {
		c.of, c.times = c.figure().Plus(more.of), 1
	}
	c.N = min(c.N+more.N, countless)
}

// takes calls for one of another part for each of a part, for its mirror image
// where it stands mirrored there.
func (p *Part) takes(q *Part, mirror bool) {
	if q == nil {
		return
	}
	mirrored := int64(0)
	if mirror {
		mirrored = 1
	}
	q.call(p.NeededFigure(), p)
	q.reflect(1, mirrored, p.Needed, p.Mirrored)
}

// needWhole asks for strips that are used whole; those of one width for one
// part are one need.
func (f *Fabric) needWhole(by plan.Text, strip Strip, count int64) {
	for i := range f.Needs {
		if n := &f.Needs[i]; n.Strip && n.For == by && n.Along == strip.Width && n.Last == 0 {
			n.Count = min(n.Count+count, countless)
			if n.At == n.For.At {
				n.at(strip.Said)
			}
			return
		}
	}
	f.ask(Need{For: by, At: strip.Said, Strip: true, Across: f.stripLength(), Along: strip.Width, Count: count})
}

// ask adds a need. One whose size the plan does not say stands where the plan says
// what it is for.
func (f *Fabric) ask(n Need) {
	if n.At == (source.Range{}) {
		n.At = n.For.At
	}
	f.Needs = append(f.Needs, n)
}

// last is the need that was added last.
func (f *Fabric) last() *Need { return &f.Needs[len(f.Needs)-1] }

// at moves a need to where the plan says its size, if it does.
func (n *Need) at(said source.Range) {
	if said != (source.Range{}) {
		n.At = said
	}
}

// needJoined asks for the strips of a joined length.
func (f *Fabric) needJoined(by plan.Text, width measure.Length, j Joined) {
	if !j.OK || j.Count == 0 {
		f.Missing = f.Missing || !j.OK
		return
	}
	last := j.Each - (j.Length - j.Need.CeilTo(measure.Tick))
	f.ask(Need{For: by, Strip: true, Across: j.Each, Along: width, Count: j.Count, Last: last})
	f.mustCover(measure.Area(j.Need, width.Surd()))
}
