package derive

import (
	"slices"

	"yardproof/pipeline/internal/say"
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
	if room, ok := p.Room.(sizeTold); ok {
		return room.TellSize()
	}
	return nil
}

// tellTriangle tells by a formula how large a unit made from squares is as sewn; at
// is where the plan says their size.
func (s *Size) tellTriangle(p *Part, formula string, at source.Range) *report.Work {
	if p.Triangle == nil {
		return nil
	}
	return s.once(p.Name.Text+", side as sewn", func() *report.Work {
		return &report.Work{
			Formula: formula, Value: s.surd(p.Triangle.Untrimmed),
			Terms: []report.Term{term("c", "cut square", s.length(p.Triangle.Cut), at), s.seamTerm(p.Seam)},
		}
	})
}

// YieldWork tells why so many pieces come from one set, tube, loop or strip, nil
// for parts that are cut from none.
func (s *Size) YieldWork(p *Part) *report.Work {
	if room, ok := p.Room.(yieldTold); ok {
		return room.TellYield()
	}
	return nil
}

// CountWork tells why so many sets, tubes or pairs are sewn.
func (s *Size) CountWork(p *Part) *report.Work {
	if p.Pool != nil {
		return s.poolWork(p.Pool)
	}
	if room, ok := p.Room.(countTold); ok {
		return room.TellCount()
	}
	return s.NeededWork(p)
}

// neededTerm is how many of a part are needed, as a term.
func (s *Size) neededTerm(p *Part) report.Term {
	return term("N", "needed", because(report.N(p.Needed), s.NeededWork(p)), source.Range{})
}

// batchWork tells how many sets, tubes or the like are made for a part.
func (s *Size) batchWork(p *Part, of string, count int64, each report.Cell) *report.Work {
	return s.batches(p.Name.Text+", "+of, count, s.neededTerm(p), each)
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
	if j.Count == 0 {
		return nil // no formula says it
	}
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

// KitWork tells why so much of a fabric goes into the kit: a length, which is 0
// of a precut.
func (s *Size) KitWork(f *Fabric, length measure.Length) *report.Work {
	buy := s.BuyWork(f)
	if length == 0 || length == f.Buy {
		return buy
	}
	bought := report.F(f.Buy, s.Plan.Units)
	bought.Why = buy
	allowance := s.Of.Kit.Allowance
	return &report.Work{
		What: s.Of.Name.Text + ": " + f.Role.Text + ", in the kit", Formula: "buy + generous cut", Value: report.F(length, s.Plan.Units),
		Terms: []report.Term{term("buy", "what the pattern takes, as sold", bought, f.At), term("generous cut", "cut longer by", s.length(allowance.Length), allowance.At)},
	}
}

func (s *Size) tellBuy(f *Fabric) *report.Work {
	w := &report.Work{Formula: "(strips + squaring up + backing) / (1 - shrinkage), up to the grid", Value: report.F(f.Buy, s.Plan.Units)}
	add := func(symbol, says string, value report.Cell, at source.Range, when bool) {
		if when {
			w.Terms = append(w.Terms, term(symbol, says, value, at))
		}
	}
	add("strips", say.Many(int64(f.Layout.Strips()), "strip")+" across the fabric", s.length(f.Layout.Length), f.At, f.Layout.Length > 0)
	add("", "of which each is a whole number of the print's repeats", s.length(f.Repeat.Length), f.Repeat.At, f.Repeat.Length > 0)
	add("squaring up", "straightening the ends", s.length(f.SquaringUp.Length), f.SquaringUp.At, f.SquaringUp.Length > 0)
	add("backing", "panels", s.length(f.Panels), f.At, f.Panels > 0)
	add("", "before shrinkage", s.length(f.Gross), f.ShrinkLength.At, f.ShrinkLength.BasisPoints > 0)
	add("grid", "lengths are sold in steps of", report.F(f.Grid, s.Plan.Units), f.At, true)
	add("", "and a cushion of", report.F(f.Cushion, s.Plan.Units), f.At, f.Cushion > 0)
	return w
}
