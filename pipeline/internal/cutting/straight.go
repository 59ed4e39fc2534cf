package cutting

import (
	"math"
	"slices"

	"yardproof/schema/measure"
)

// StraightBound is a length that no straight cutting of the problem can go below,
// whatever its rounds of cuts: strips, columns stacked in them, panels beside what is
// cut lengthwise, or pieces laid in no order at all, each side parallel to an edge of
// the cloth. In ticks, rounded up to what heights of pieces can add up to, and never
// less than [AreaBound]. A problem that [Plain] refuses has the bound 0.
//
// A line across the cloth crosses pieces that lie side by side, no more of them than
// fit its width. So each stretch of cloth is a filling of the width, of which the
// pieces take as much as they are high: the linear program of cutting stock in one
// dimension, with heights for demands (the bar relaxation of Scheithauer, 1999, from
// memory). Its duals, rounded down, are the worths of the certificate.
func StraightBound(p Problem, limits Limits) (measure.Length, *StraightCertificate, Spent) {
	var spent Spent
	if _, err := Plain(p); err != nil {
		return 0, nil, spent
	}
	area := AreaBound(p)
	kinds := slices.Concat(pieceKinds(p.Pieces, false), partKinds(p.Strips, p.Cloth.Width), wholeKinds(p.Strips, p.Cloth.Width))
	if len(kinds) == 0 {
		return area, nil, spent
	}
	var lying [][]oriented
	for _, k := range kinds {
		lying = append(lying, k.lie(Cloth{Width: p.Cloth.Width}, maxSide))
	}
	l := newLines(p.Cloth.Width, kinds, lying)
	var heights []measure.Length
	for _, o := range slices.Concat(lying...) {
		heights = append(heights, o.height)
	}
	steps := newMeter(limits.withDefaults(len(kinds)), &Steps{}, &spent)
	w := l.weigh(heights, steps)
	steps.hand(&Steps{}, &spent)
	bound := attained(heights, max(area, w.over(l, heights)))
	return bound, l.certificate(kinds, lying, w, bound), spent
}

// attained is the least sum of heights that is no less than a length: pieces can be
// moved up until each lies against another or the edge.
func attained(heights []measure.Length, least measure.Length) measure.Length {
	unit, most := measure.Length(0), measure.Length(0)
	for _, h := range heights {
		unit, most = gcd(unit, h), max(most, h)
	}
	var units []int64
	for _, h := range heights {
		units = append(units, int64(h/unit))
	}
	n := int64(ceilLength(least, unit))
	return measure.Length(newSums(units, n+int64(most/unit)).from(n)) * unit
}

// lines are fillings of a width by pieces side by side, each lying in one of its ways.
type lines struct {
	in    *instance // a kind for each way, all in strips of one class
	most  []int     // by way: how often, as often as the piece is wanted
	piece []int     // by way
	count []int     // by piece
}

func newLines(width measure.Length, kinds []kind, lying [][]oriented) *lines {
	l := &lines{in: &instance{heights: []int64{1}, unitH: 1}}
	for _, o := range slices.Concat(lying...) {
		l.in.unitW = gcd(l.in.unitW, o.width)
	}
	l.in.width = int(width / l.in.unitW)
	for i, k := range kinds {
		l.count = append(l.count, k.demand)
		for _, o := range lying[i] {
			l.in.kinds = append(l.in.kinds, kind{demand: k.demand, shapes: []shape{{width: int(o.width / l.in.unitW)}}})
			l.most, l.piece = append(l.most, k.demand), append(l.piece, i)
		}
	}
	l.in.cellsOfWidths(width, kinds, lying)
	return l
}

// worths are what each way is worth to a line that crosses it, and the most that a
// line is worth.
type worths struct {
	way  []int64
	most int64
}

// worthScale is what a full line is worth, about.
const worthScale = 1 << 24

// weigh looks for the worths that make the sum of worth times weight, over all pieces
// in the way that makes it least, as large as can be for the most that a line is worth.
func (l *lines) weigh(weight []measure.Length, steps *meter) worths {
	rows := len(l.most) + len(l.count)
	if steps.limited && steps.halted(leastVisits+4*l.in.filling()+rows*rows*rows/8) { // as many pivots as rows, at least
		return worths{}
	}
	lp := l.program(weight)
	knap := newKnapsack(l.in, l.most)
	known := map[string]bool{}
	add := func(q pattern) bool {
		key := patternKey(q)
		if known[key] {
			return false
		}
		known[key] = true
		lp.addColumn(l.column(q), 1, 0, math.Inf(1))
		return true
	}
	for k := range l.most {
		q := pattern{count: make([]int, len(l.most))}
		q.count[k] = min(l.most[k], l.in.width/l.in.kinds[k].shapes[0].width)
		add(q)
	}
	var best worths
	for promised := -1.0; ; {
		if steps.solve(lp) != lpOptimal || steps.halted(0) {
			return best
		}
		w := worths{way: make([]int64, len(l.most))}
		for k := range w.way {
			w.way[k] = int64(max(0, math.Floor(float64(lp.y[k]*worthScale))))
		}
		steps.toll(l.in.pricing())
		var q pattern
		knap.price(w.way, func(_ int, most int64) { w.most, q = most, knap.best() })
		if w.most == 0 {
			return best
		}
		if v := l.sum(w, weight).float() / float64(w.most); v > promised {
			best, promised = w, v
		}
		if worth(q, w.way) <= worthScale || !add(q) {
			return best
		}
	}
}

// program has a row for each way, whose pieces take as much of the lines as they are
// heavy, and one for each piece, which lies in its ways as often as it is wanted.
func (l *lines) program(weight []measure.Length) *simplex {
	ways := len(l.most)
	rows := ways + len(l.count)
	lp := newSimplex(rows, rows)
	heaviest := float64(slices.Max(weight))
	for i, n := range l.count {
		lp.lo[ways+i] = float64(n)
	}
	for k, i := range l.piece {
		lp.addColumn(sparse{row: []int{k, ways + i}, val: []float64{-float64(weight[k]) / heaviest, 1}}, 0, 0, float64(l.count[i]))
	}
	return lp
}

func (l *lines) column(q pattern) sparse {
	var c sparse
	for k, n := range q.count {
		if n > 0 {
			c.row, c.val = append(c.row, k), append(c.val, float64(n))
		}
	}
	return c
}

// sum is the worth times the weight of all pieces, each in the way that makes it least.
func (l *lines) sum(w worths, weight []measure.Length) area {
	var sum area
	for i, n := range l.count {
		least := -1
		for k, of := range l.piece {
			if of == i && (least < 0 || w.way[k]*int64(weight[k]) < w.way[least]*int64(weight[least])) {
				least = k
			}
		}
		sum.add(measure.Length(w.way[least]), weight[least], n)
	}
	return sum
}

// over is how many lines, or how much of the length, all pieces take.
func (w worths) over(l *lines, weight []measure.Length) measure.Length {
	if w.most == 0 {
		return 0
	}
	return l.sum(w, weight).over(measure.Length(w.most))
}

func (a area) float() float64 { return float64(float64(a.hi)*(1<<64)) + float64(a.lo) }

// StraightCertificate lets anyone check a [StraightBound] with integers only. The
// pieces that a line across the cloth crosses are together worth no more than Most;
// so the length times Most is at least the sum, over all pieces, of worth times height,
// in the way that makes it least. Claim is that length, rounded up to a sum of heights,
// or AreaBound where that is more.
type StraightCertificate struct {
	Claim measure.Length
	Most  int64
	Sizes []StraightSize
}

// StraightSize is a size with what it is worth as it is and turned; 0 where it cannot
// lie so, or would take more of the cloth both ways.
type StraightSize struct {
	Size
	Worth, Turned int64
}

func (l *lines) certificate(kinds []kind, lying [][]oriented, w worths, claim measure.Length) *StraightCertificate {
	c := &StraightCertificate{Claim: claim, Most: w.most}
	way := 0
	for i, k := range kinds {
		s := StraightSize{Size: Size{Across: k.across, Along: k.along, Count: k.demand, Turnable: k.turnable}}
		for _, o := range lying[i] {
			if w.way == nil {
				break
			}
			if o.width == k.across {
				s.Worth = w.way[way]
			} else {
				s.Turned = w.way[way]
			}
			way++
		}
		c.Sizes = append(c.Sizes, s)
	}
	return c
}
