package slip

import (
	"fmt"
	"maps"
	"slices"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// gaps are what two tellings of a quilt differ by: a printed figure and what was
// derived, the rows of an assembly, the parts in a row, a part and what it is to be
// trimmed to. Lengths are in ticks, counts are numbers. Each is named by its size and
// by what differs.
type gaps map[gap]apart

type gap struct {
	size    string
	what    string
	printed bool
}

// apart is by how much two tellings differ, and by how much they may because one of
// them is rounded.
type apart struct {
	measure.Surd
	may measure.Length
}

// agrees reports whether rounding explains the difference.
func (a apart) agrees() bool { return abs(a.Surd).MulInt(2).Cmp(a.may.Surd()) <= 0 }

// gapsOf are those of all sizes, zeros included.
func gapsOf(sizes []*derive.Size) gaps {
	all := gaps{}
	for _, s := range sizes {
		of := ofSize{all, s.Of.Name.Text}
		for _, p := range s.Parts {
			if p.Rows != nil {
				of.assembly(p.Name.Text, *p.Rows)
			}
			if p.Known && p.Setting != nil {
				of.assembly(p.Name.Text, p.Setting.Rows)
			}
			of.trims(p)
		}
		if s.Top.Known {
			of.assembly("", s.Top.Grid)
		}
		if s.Of.Printed != nil {
			of.printed(s, s.Of.Printed)
		}
	}
	return all
}

type ofSize struct {
	gaps
	size string
}

func (o ofSize) set(value measure.Surd, printed bool, format string, args ...any) {
	o.gaps[gap{o.size, fmt.Sprintf(format, args...), printed}] = apart{Surd: value}
}

func (o ofSize) assembly(name string, a piecing.Assembly) {
	for r := range a.RowHeights {
		o.set(a.Tallest[r].Sub(a.RowHeights[r]), false, "heights %s %d", name, r)
		o.set(a.RowWidths[r].Sub(a.RowWidths[0]), false, "widths %s %d", name, r)
	}
}

func (o ofSize) trims(p *derive.Part) {
	if p.Room == nil {
		return
	}
	for i, t := range p.Room.Trims() {
		if t.To.Given() && !t.From.IsZero() {
			if short := t.To.Surd().Sub(t.From); short.Sign() > 0 {
				o.set(short, false, "trim %s %d", p.Name.Text, i)
			}
		}
	}
}

func (o ofSize) printed(s *derive.Size, said *plan.Printed) {
	if said.Finished[0].Given() && s.Top.Known {
		for i, side := range []measure.Surd{s.Top.Finished.Width, s.Top.Finished.Height} {
			o.rounded(side, said.Finished[i].Length, said.Rounding.Length, fmt.Sprintf("finished %d", i))
		}
	}
	for _, m := range said.Measures {
		p := s.Part(m.Of.Text)
		switch {
		case p == nil:
		case p.Set != nil && p.Set.Cut == nil:
			o.set(p.Set.Width.Surd().Sub(m.Width.Surd()), true, "measures %s 0", m.Of.Text)
		case p.Known:
			o.set(p.Width.Sub(m.Width.Surd()), true, "measures %s 0", m.Of.Text)
			if m.Height.At != m.Width.At {
				o.set(p.Height.Sub(m.Height.Surd()), true, "measures %s 1", m.Of.Text)
			}
		}
	}
	for _, c := range said.Parts {
		if p := s.Part(c.Of.Text); p != nil {
			o.set(measure.Rational(p.Needed-int64(c.N), 1), true, "parts %s", c.Of.Text)
		}
	}
	for _, b := range said.Borders {
		for _, d := range s.Top.Borders {
			if d.Known && d.Said.Name.Text == b.Of.Text && b.Cut.Given() {
				o.set(measure.Length(d.Cut-b.Cut.Length).Surd(), true, "border %s", b.Of.Text)
			}
		}
	}
}

// rounded is a gap between a size and what it is printed as, rounded.
func (o ofSize) rounded(is measure.Surd, said, rounding measure.Length, what string) {
	o.gaps[gap{o.size, what, true}] = apart{is.Sub(said.Surd()), rounding}
}

func abs(x measure.Surd) measure.Surd {
	if x.Sign() < 0 {
		return x.Neg()
	}
	return x
}

// disagree counts the printed figures that differ.
func (g gaps) disagree() int {
	n := 0
	for k, d := range g {
		if k.printed && !d.agrees() {
			n++
		}
	}
	return n
}

// agree counts the printed figures that differ before and do not after, and tells in
// which sizes.
func (g gaps) agree(after gaps) (n int, sizes []string) {
	of := map[string]bool{}
	for k, d := range g {
		if now, known := after[k]; k.printed && !d.agrees() && known && now.agrees() {
			n++
			of[k.size] = true
		}
	}
	return n, slices.Sorted(maps.Keys(of))
}

// unfinished reports whether some size is printed as it is before its edge is sewn in.
func unfinished(sizes []*derive.Size) bool {
	for _, s := range sizes {
		if said := s.Of.Printed; said != nil && s.Top.Known && said.Finished[0].Given() &&
			s.Top.Width.Equal(said.Finished[0].Surd()) && s.Top.Height.Equal(said.Finished[1].Surd()) {
			return true
		}
	}
	return false
}
