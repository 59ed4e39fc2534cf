package derive

import (
	"fmt"
	"slices"

	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// The functions of this file tell how derived numbers came about: the
// formula, and where the plan says what stood for each symbol. The values are
// those already derived; nothing is worked out anew.

func term(symbol, says string, value report.Cell, at source.Range) report.Term {
	return report.Term{Symbol: symbol, Says: says, Value: value, At: at}
}

func (s *Size) length(l measure.Length) report.Cell { return report.L(l.Surd(), s.Plan.Units) }

func (s *Size) surd(x measure.Surd) report.Cell { return report.L(x, s.Plan.Units) }

// once keeps a work under what it is about, so that two figures made of the
// same number share its work. It puts the size before what the work is about.
func (s *Size) once(what string, tell func() *report.Work) *report.Work {
	if w := s.works[what]; w != nil {
		return w
	}
	w := tell()
	w.What = s.Of.Name.Text + ": " + what
	if s.works == nil {
		s.works = map[string]*report.Work{}
	}
	s.works[what] = w
	return w
}

// because gives a cell its work.
func because(c report.Cell, w *report.Work) report.Cell {
	c.Why = w
	return c
}

func (s *Size) seamTerm(seam plan.Seam) report.Term {
	return term("s", "seam allowance", s.length(seam.Allowance.Length), seam.Allowance.At)
}

// NeededWork tells why so many of a part are needed.
func (s *Size) NeededWork(p *Part) *report.Work {
	return s.once(p.Name.Text+", needed", func() *report.Work { return s.tellNeeded(p) })
}

func (s *Size) tellNeeded(p *Part) *report.Work {
	w := &report.Work{Formula: "sum over all that use it", Value: report.N(p.Needed)}
	of := len(p.Calls)
	for i, c := range p.Calls {
		if c.By != nil {
			of = i
			break
		}
		w.Terms = append(w.Terms, term("", "in "+c.In.Text, report.N(c.N), c.In.At))
	}
	for _, c := range slices.Backward(p.Calls[of:]) {
		w.Terms = append(w.Terms, term("", "for "+c.By.Name.Text, report.N(c.N), c.By.Name.At))
	}
	return w
}

// SizeWork tells why a part measures what it does, nil where the plan itself
// says so.
func (s *Size) SizeWork(p *Part) *report.Work {
	switch {
	case p.Set != nil:
		return s.setWork(p)
	case p.Tube != nil:
		return s.once(p.Name.Text+", side of the opened square", func() *report.Work { return s.tellSide(p) })
	case p.Triangle != nil:
		return s.once(p.Name.Text+", side as sewn", func() *report.Work { return s.tellTriangle(p) })
	case p.Unit != nil:
		return s.once(p.Name.Text+", width as sewn", func() *report.Work { return s.tellUnit(p) })
	case p.Recut != nil:
		return s.once(p.Name.Text+", width as sewn", func() *report.Work { return s.tellRecut(p, p.Operation.(plan.Recut)) })
	case p.Rows != nil:
		return s.once(p.Name.Text+", width as sewn", func() *report.Work { return s.tellRows(p) })
	}
	return nil
}

func (s *Size) setWork(p *Part) *report.Work {
	return s.once(p.Name.Text+", width of the strip set T", func() *report.Work { return s.tellSet(p) })
}

func (s *Size) tellSet(p *Part) *report.Work {
	w := &report.Work{Formula: "sum of the strips' cut widths - 2(n-1)s", Value: s.length(p.Set.Width)}
	w.Terms = append(w.Terms, term("n", "strips", report.N(int64(len(p.Set.Strips))), p.Name.At))
	for i, strip := range p.Set.Strips {
		w.Terms = append(w.Terms, term(fmt.Sprintf("w%d", i+1), "cut width of a strip of "+strip.Fabric.Role.Text, s.length(strip.Width), strip.At.At))
	}
	w.Terms = append(w.Terms, s.seamTerm(p.Seam))
	return w
}

// height is the triangle's height and how it came about.
func (s *Size) height(p *Part) report.Cell {
	w := s.once(p.Name.Text+", height of the triangle h", func() *report.Work { return s.tellHeight(p) })
	return because(s.length(p.Tube.Height()), w)
}

func (s *Size) tellHeight(p *Part) *report.Work {
	t := p.Tube
	op := p.Operation.(plan.Tube)
	return &report.Work{
		Formula: "T - 2s + e", Value: s.length(t.Height()),
		Terms: []report.Term{
			term("T", "width of the tube", because(s.length(t.Width), s.setWork(t.narrower())), source.Range{}),
			s.seamTerm(p.Seam),
			term("e", "the tip's distance beyond the far seam", s.length(t.Beyond), op.TipAt),
		},
	}
}

func (s *Size) tellSide(p *Part) *report.Work {
	t := p.Tube
	w := &report.Work{
		Formula: "h x sqrt2", Value: s.surd(t.Side()),
		Terms: []report.Term{term("h", "height of the triangle", s.height(p), source.Range{})},
	}
	if op := p.Operation.(plan.Tube); op.Trim.Given() {
		w.Terms = append(w.Terms, term("", "trimmed to", s.length(op.Trim.Length), op.Trim.At))
	}
	return w
}

// formulas of the units made from squares, by how many at a time; see
// piecing.HalfSquareUnit.
func triangleFormula(p *Part) string {
	switch op := p.Operation.(type) {
	case plan.HalfSquares:
		return map[int]string{2: "c - s x sqrt2", 4: "(c/2 - s) x sqrt2", 8: "c/2 - s x sqrt2"}[op.AtATime]
	case plan.TriangleSquare:
		if len(op.Of) == 4 {
			return "c - 2s x sqrt2"
		}
	}
	return "c - s x sqrt2"
}

func (s *Size) tellTriangle(p *Part) *report.Work {
	at := p.Name.At
	if op, ok := p.Operation.(plan.HalfSquares); ok {
		at = op.Square.At
	}
	return &report.Work{
		Formula: triangleFormula(p), Value: s.surd(p.Triangle.Untrimmed),
		Terms: []report.Term{term("c", "cut square", s.length(p.Triangle.Cut), at), s.seamTerm(p.Seam)},
	}
}

func (s *Size) tellRows(p *Part) *report.Work {
	w := &report.Work{Formula: "sum of the row's widths - 2s for each seam in the row", Value: s.surd(p.Width)}
	for _, in := range p.Operation.(plan.Rows).Rows[0] {
		q := s.byName[in.Part.Text]
		width := q.Width
		if in.Sideways() {
			width = q.Height
		}
		w.Terms = append(w.Terms, term("", in.Part.Text, because(s.surd(width), s.SizeWork(q)), in.At))
	}
	w.Terms = append(w.Terms, s.seamTerm(p.Seam))
	return w
}

// YieldWork tells why so many pieces come from one set or tube, nil for parts
// that are neither.
func (s *Size) YieldWork(p *Part) *report.Work {
	switch {
	case p.Tube != nil:
		return s.once(p.Name.Text+", squares from one tube", func() *report.Work { return s.tellSquares(p) })
	case p.Loop != nil:
		return s.once(p.Name.Text+", rings from one loop", func() *report.Work { return s.tellRings(p, p.Operation.(plan.Loop)) })
	case p.Shape != nil:
		return s.once(p.Name.Text+", triangles from one strip", func() *report.Work { return s.tellShape(p, p.Operation.(plan.Shape)) })
	case p.Set != nil && p.Set.Cut != nil:
		return s.once(p.Name.Text+", segments from one strip set", func() *report.Work { return s.tellSegments(p) })
	}
	return nil
}

func (s *Size) tellSegments(p *Part) *report.Work {
	op := p.Operation.(plan.StripSet)
	return &report.Work{
		Formula: "floor(L / segment)", Value: report.N(p.Set.Cut.Each),
		Terms: []report.Term{
			term("L", "usable length of the shortest strip", s.length(p.Set.Length), s.lengthAt(p)),
			term("segment", "cut width", s.length(op.Segment.Length), op.Segment.At),
		},
	}
}

// lengthAt is where the plan says how long the strips of a set are.
func (s *Size) lengthAt(p *Part) source.Range {
	for _, strip := range p.Set.Strips {
		if strip.Fabric.stripLength() == p.Set.Length {
			return strip.Fabric.StripLength().At
		}
	}
	return source.Range{}
}

// narrower is the set that decides how wide the tube is.
func (t *Tube) narrower() *Part {
	if t.Sets[1].Set.Width < t.Sets[0].Set.Width {
		return t.Sets[1]
	}
	return t.Sets[0]
}

// shorter is the set that decides how long the tube is.
func (t *Tube) shorter() *Part {
	if t.Sets[1].Set.Length < t.Sets[0].Set.Length {
		return t.Sets[1]
	}
	return t.Sets[0]
}

func (s *Size) tellSquares(p *Part) *report.Work {
	t := p.Tube
	w := &report.Work{
		Formula: "1 + floor((L - 2h) / a), none when L < 2h", Value: report.N(t.Yield.Each),
		Terms: []report.Term{
			s.tubeLength(p),
			term("h", "height of the triangle", s.height(p), source.Range{}),
			term("a", "from tip to tip, T - 2s + 2e", s.length(t.Advance()), source.Range{}),
			term("", "one square more would need", s.length(t.Yield.Next), source.Range{}),
		},
	}
	if t.Ends == plan.EarsKept {
		w.Formula = "1 + floor((L - 2(h+s)) / a), none when L < 2(h+s)"
		w.Terms = append(w.Terms, s.seamTerm(p.Seam))
	}
	return w
}

// CountWork tells why so many sets, tubes or pairs are sewn.
func (s *Size) CountWork(p *Part) *report.Work {
	needed := term("N", "needed", because(report.N(p.Needed), s.NeededWork(p)), source.Range{})
	switch {
	case p.Pool != nil:
		return s.poolWork(p.Pool)
	case p.Tube != nil:
		return s.tubesWork(p, needed)
	case p.Set != nil && p.Set.Cut != nil:
		return s.batches(p.Name.Text+", strip sets", p.Set.Count, needed, because(report.N(p.Set.Cut.Each), s.YieldWork(p)))
	case p.Triangle != nil && p.Triangle.AtATime > 0:
		return s.batches(p.Name.Text+", pairs of squares", p.Triangle.Pairs, needed, report.N(int64(p.Triangle.AtATime)))
	case p.Chain != nil:
		return s.JoinedWork(p.Name.Text, p.Chain.Joined, p.Operation.(plan.Chain).At)
	case p.Shape != nil:
		return s.batches(p.Name.Text+", strips", p.Shape.Count, needed, because(report.N(p.Shape.Yield.Each), s.YieldWork(p)))
	case p.Unit != nil && p.Unit.Each > 1:
		return s.batches(p.Name.Text+", batches", p.Unit.Batches, needed, report.N(p.Unit.Each))
	}
	return s.NeededWork(p)
}

// batches tells how many are made of what gives so many each; nil where none can
// be made, which no formula says.
func (s *Size) batches(what string, count int64, needed report.Term, each report.Cell) *report.Work {
	if count == 0 && needed.Value.Int > 0 {
		return nil
	}
	return s.once(what, func() *report.Work {
		return &report.Work{
			Formula: "ceil(N / each)", Value: report.N(count),
			Terms: []report.Term{needed, term("each", "from one", each, source.Range{})},
		}
	})
}

// JoinedWork tells why so many strips go into a joined length.
func (s *Size) JoinedWork(what string, j Joined, at source.Range) *report.Work {
	return s.once(what+", strips", func() *report.Work {
		return &report.Work{
			Formula: "smallest k with k x U - (k-1) x join >= need", Value: report.N(j.Count),
			Terms: []report.Term{
				term("need", "length wanted", s.surd(j.Need), at),
				term("U", "usable length of a strip", s.length(j.Each), source.Range{}),
				term("join", "length each join costs", s.length(j.Loss), source.Range{}),
				term("", "length they give", s.length(j.Length), source.Range{}),
			},
		}
	})
}

// BuyWork tells why so much of a fabric is bought.
func (s *Size) BuyWork(f *Fabric) *report.Work {
	if f.Form == plan.Precut {
		pieces := term("N", "pieces cut into", report.N(int64(f.Sheets.Count)), f.At)
		return s.batches(f.Role.Text+", packs", f.Packs, pieces, report.N(int64(f.Pack.N)))
	}
	return s.once(f.Role.Text+", to buy", func() *report.Work { return s.tellBuy(f) })
}

// GoodWork tells why so much of a fabric goes into the kit.
func (s *Size) GoodWork(g Good) *report.Work {
	buy := s.BuyWork(g.Fabric)
	if g.Length == 0 || g.Length == g.Buy {
		return buy
	}
	bought := report.F(g.Buy, s.Plan.Units)
	bought.Why = buy
	allowance := s.Of.Kit.Allowance
	return &report.Work{
		What: g.Role.Text + ", in the kit", Formula: "buy + generous cut", Value: report.F(g.Length, s.Plan.Units),
		Terms: []report.Term{term("buy", "what the pattern takes, as sold", bought, g.At), term("generous cut", "cut longer by", s.length(allowance.Length), allowance.At)},
	}
}

func (s *Size) tellBuy(f *Fabric) *report.Work {
	w := &report.Work{Formula: "(strips + squaring up + backing) / (1 - shrinkage), up to the grid", Value: report.F(f.Buy, s.Plan.Units)}
	add := func(symbol, says string, value report.Cell, at source.Range, when bool) {
		if when {
			w.Terms = append(w.Terms, term(symbol, says, value, at))
		}
	}
	add("strips", many(f.Layout.Strips())+" across the fabric", s.length(f.Layout.Length), f.At, f.Layout.Length > 0)
	add("", "of which each is a whole number of the print's repeats", s.length(f.Repeat.Length), f.Repeat.At, f.Repeat.Length > 0)
	add("squaring up", "straightening the ends", s.length(f.SquaringUp.Length), f.SquaringUp.At, f.SquaringUp.Length > 0)
	add("backing", "panels", s.length(f.Panels), f.At, f.Panels > 0)
	add("", "before shrinkage", s.length(f.Gross), f.ShrinkLength.At, f.ShrinkLength.BasisPoints > 0)
	add("grid", "lengths are sold in steps of", report.F(f.Grid, s.Plan.Units), f.At, true)
	add("", "and a cushion of", report.F(f.Cushion, s.Plan.Units), f.At, f.Cushion > 0)
	return w
}

func many(strips int) string {
	if strips == 1 {
		return "1 strip"
	}
	return fmt.Sprintf("%d strips", strips)
}
