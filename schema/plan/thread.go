package plan

import (
	"math/big"
	"strings"
	"unicode"

	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Thread is what a studio or a plan knows of its thread. The lengths of seam
// are derived.
type Thread struct {
	Waste    Percent
	Ratios   []ThreadRatio // in place of the usual figures
	Spool    Length        // for a lockstitch needle; absent when not said
	Bobbin   Length
	Cone     Length // for the needles and loopers of the other classes
	Quilting Length // all quilting lines; absent when not said
	At       source.Range
}

// ThreadRatio is thread to seam of a stitch class, all threads together.
type ThreadRatio struct {
	Class Text // ISO 4915 number
	Value *big.Rat
}

// Ratio is what is said of a class, nil when nothing is.
func (t Thread) Ratio(class string) *big.Rat {
	for _, r := range t.Ratios {
		if r.Class.Text == class {
			return r.Value
		}
	}
	return nil
}

// usualThread takes 15 % waste: thread makers' bulletins take 10 to 15 %,
// another 15 to 20 %.
func usualThread() Thread { return Thread{Waste: Percent{BasisPoints: 1500}} }

// threadOr is the project's thread, or the usual where there is no project
// file: the project is then nil or empty.
func (p *Project) threadOr() Thread {
	if p == nil || p.File == nil {
		return usualThread()
	}
	t := p.Thread
	t.At = source.Range{} // of another file
	return t
}

// thread reads what is said over what holds otherwise.
func (r *reader) thread(n *jsontree.Node, t Thread) Thread {
	if n == nil {
		return t
	}
	t.At = n.Range
	if w := n.Get("waste"); w != nil {
		t.Waste = r.percent("waste", w)
	}
	var ratios []ThreadRatio
	for _, m := range members(n.Get("ratios")) {
		if value := r.ratio(m); value != nil {
			ratios = append(ratios, ThreadRatio{Text{m.Key, m.KeyRange}, value})
		}
	}
	t.Ratios = append(ratios, t.Ratios...) // the first of a class counts
	for _, l := range []struct {
		key string
		to  *Length
	}{{"spool", &t.Spool}, {"bobbin", &t.Bobbin}, {"cone", &t.Cone}, {"quilting", &t.Quilting}} {
		if v := n.Get(l.key); v != nil {
			*l.to = r.threadLength(l.key, v)
		}
	}
	return t
}

func (r *reader) ratio(m jsontree.Member) *big.Rat {
	if m.Value.Kind != jsontree.Number {
		return nil
	}
	const digits = 12
	if text := m.Value.Text; len(text) <= digits && !strings.ContainsAny(text, "eE") {
		if value, ok := new(big.Rat).SetString(text); ok && value.Sign() > 0 {
			return value
		}
	}
	r.report(OutOfRange, m.Value.Range, quote(m.Key)+" is "+quote(m.Value.Text)+"; wanted: a ratio of thread to seam", "write it like 17 or 2.5")
	return nil
}

// threadLength is a length of thread, in metres or yards: what is on a cone is
// longer than any other length of a plan.
func (r *reader) threadLength(key string, n *jsontree.Node) Length {
	if n == nil || n.Kind != jsontree.String {
		return Length{}
	}
	text := strings.TrimSpace(n.Text)
	for _, u := range []struct {
		name string
		part measure.Unit
		of   measure.Length // that make the unit
	}{{"m", measure.Cm, 100}, {"yd", measure.In, 36}} {
		number, ok := strings.CutSuffix(text, u.name)
		if !ok || number == "" || strings.ContainsFunc(number, unicode.IsLetter) {
			continue
		}
		if l, err := measure.ParseLength(strings.TrimSpace(number), u.part); err == nil && l > 0 {
			return Length{l * u.of, n.Range}
		}
	}
	r.report(BadLength, n.Range, quote(key)+": "+quote(n.Text)+" is no length of thread", "write it like 500 m or 1000 yd")
	return Length{At: n.Range}
}
