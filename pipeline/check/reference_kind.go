package check

import (
	"fmt"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

func wrongKinds(p *Pass) {
	s := p.Size.Of
	for _, m := range s.Strays() {
		fabric, part := p.Size.Fabric(m.Name.Text) != nil, p.Size.Part(m.Name.Text) != nil
		switch {
		case m.Fabric && !fabric && part:
			p.Report(m.Name.At, Finding{
				Message: fmt.Sprintf("%s needs a fabric, and %q is a part", m.By, m.Name.Text),
				Ways:    p.nameNear(m.Name.At, m.Name.Text, roles(s)),
			})
		case !m.Fabric && !part && fabric:
			p.Report(m.Name.At, Finding{
				Message: fmt.Sprintf("%s needs a part, and %q is a fabric", m.By, m.Name.Text),
				Ways:    ways(advise("make a part that is cut from it and name that")),
			})
		}
	}
	for i := range s.Parts {
		p.misfits(p.Size.Part(s.Parts[i].Name.Text).Room.Wants())
	}
	p.misfits(p.Size.Wants())
	p.wrongSquares()
}

// misfits reports parts that an operation, the layout or a border cannot take.
func (p *Pass) misfits(wants []derive.Want) {
	for _, w := range wants {
		part := p.Size.Part(w.Part.Text)
		if part == nil {
			continue
		}
		m, ok := part.Room.Serves(w.To)
		if ok {
			continue
		}
		at, f := w.Part.At, Finding{Related: []Related{{part.Name.At, "it is made here"}}}
		switch w.To {
		case derive.WholeSet:
			noWholeSet(p, &f, w, m)
		case derive.HalfSquareUnit:
			f.Message = fmt.Sprintf("%s are made from half-square units, and %q is none", w.By, w.Part.Text)
			f.Ways = ways(advise("name a part made by half_squares, or by triangle_square of two"))
		case derive.HalvedOnce, derive.HalvedTwice:
			noTriangle(&f, w, m)
		case derive.FourSided, derive.InRow:
			if noSquareCorners(&f, w, m); m.Cut && w.Place != (source.Range{}) {
				at = w.Place
			}
		}
		p.Report(at, f)
	}
}

func noWholeSet(p *Pass, f *Finding, w derive.Want, m derive.Misfit) {
	if !m.Segment.Given() {
		f.Message = fmt.Sprintf("%s takes strip sets, and %q is none", w.By, w.Part.Text)
		f.Ways = ways(advise("name a part made by strip_set"))
		return
	}
	f.Message = fmt.Sprintf("%s takes whole strip sets, and %q is cut into segments of %s", w.By, w.Part.Text, p.length(m.Segment.Length))
	f.Ways = ways(advise("make a strip set without a segment for it"))
	f.Related = []Related{{m.Segment.At, "the segment"}}
}

// noTriangle is of the triangles of squares: two cut once, or four cut twice.
func noTriangle(f *Finding, w derive.Want, m derive.Misfit) {
	count, word := 2, "once"
	if w.To == derive.HalvedTwice {
		count, word = 4, "twice"
	}
	if !m.Cut {
		f.Message = fmt.Sprintf("%s is sewn of %d triangles, and %q is not cut from fabric", w.By, count, w.Part.Text)
		f.Ways = ways(advise(fmt.Sprintf("name a part made by cut with \"halved\": %q", word)))
		return
	}
	f.Message = fmt.Sprintf("%s is sewn of %d triangles from squares cut %s diagonally, and %q is %s", w.By, count, word, w.Part.Text, halved(m.Halving))
	f.Ways = ways(advise(fmt.Sprintf("cut %q with \"halved\": %q", w.Part.Text, word)))
	f.Related[0].Message = "it is cut here"
}

func halved(h plan.Halving) string {
	switch h {
	case plan.CutOnce:
		return "cut once"
	case plan.CutTwice:
		return "cut twice"
	}
	return "not cut diagonally"
}

func noSquareCorners(f *Finding, w derive.Want, m derive.Misfit) {
	if m.Loose != "" {
		f.Message = fmt.Sprintf("%s needs a four-sided part with square corners, and %q is a %s", w.By, w.Part.Text, m.Loose)
		f.Ways = ways(advise(m.Sewn))
		f.Related[0].Message = "it is cut here"
		return
	}
	f.Message = fmt.Sprintf("%s needs four-sided parts, and %q is a triangle", w.By, w.Part.Text)
	f.Ways = ways(advise("sew the triangles into a triangle_square and name that"))
	f.Related[0].Message = "the triangle is cut here"
}
