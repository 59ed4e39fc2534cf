package cutting

import (
	"math"
	"math/bits"
)

// box bounds the cumulative strip counts: Z_k is the number of strips of class
// k or taller.
type box struct{ lo, up []int64 }

func (b box) clone() box {
	return box{append([]int64(nil), b.lo...), append([]int64(nil), b.up...)}
}

// rootBox holds every plan no longer than goal.
func (in *instance) rootBox(goal int64) box {
	b := box{make([]int64, len(in.heights)), make([]int64, len(in.heights))}
	for k := range in.heights {
		b.up[k] = in.most(k, goal)
	}
	return b
}

// tighten shrinks a box to what plans no longer than goal can have, and reports
// whether any is left.
func (in *instance) tighten(b box, goal int64) bool {
	if in.stock != nil {
		return b.afford(in.heights, goal)
	}
	return b.tighten(in.heights, goal)
}

// afford uses that the length is sum h_k Z_k, each class counted alone.
func (b box) afford(heights []int64, goal int64) bool {
	left := goal
	for k, h := range heights {
		left -= h * b.lo[k]
	}
	if left < 0 {
		return false
	}
	for k, h := range heights {
		if h > 0 {
			b.up[k] = min(b.up[k], b.lo[k]+left/h)
		}
		if b.up[k] < b.lo[k] {
			return false
		}
	}
	return true
}

// prices are what a strip of each class costs after the prices of Z.
func (in *instance) prices(d duals, scale int64) []int64 {
	price := make([]int64, len(d.class))
	sum := int64(0)
	for k, v := range d.class {
		if in.stock != nil {
			sum = 0
		}
		sum += v
		price[k] = scale*in.heights[k] - sum
	}
	return price
}

// tighten uses that Z falls from class to class and that the length, which is
// sum (h_k - h_(k-1)) Z_k, is at most goal. It reports whether any plan is left.
func (b box) tighten(heights []int64, goal int64) bool {
	last := len(heights) - 1
	for k := last - 1; k >= 0; k-- {
		b.lo[k] = max(b.lo[k], b.lo[k+1])
	}
	least := int64(0) // length forced by the lower bounds
	for k := range heights {
		least += step(heights, k) * b.lo[k]
	}
	if least > goal {
		return false
	}
	for k := range heights {
		// Z_k = z forces Z_j >= z for every lower class j.
		for b.up[k] >= b.lo[k] && b.lengthWith(heights, k, b.up[k]) > goal {
			b.up[k] = b.largest(heights, k, goal)
		}
		if k > 0 {
			b.up[k] = min(b.up[k], b.up[k-1])
		}
		if b.up[k] < b.lo[k] {
			return false
		}
	}
	return true
}

func step(heights []int64, k int) int64 {
	if k == 0 {
		return heights[0]
	}
	return heights[k] - heights[k-1]
}

// lengthWith is the least length when Z_k is z.
func (b box) lengthWith(heights []int64, k int, z int64) int64 {
	sum := int64(0)
	for j := range heights {
		lo := b.lo[j]
		if j <= k {
			lo = max(lo, z)
		}
		sum += step(heights, j) * lo
	}
	return sum
}

// largest is the largest value of Z_k that a length of goal allows.
func (b box) largest(heights []int64, k int, goal int64) int64 {
	lo, up := b.lo[k]-1, b.up[k]
	for lo < up {
		mid := (lo + up + 1) / 2
		if b.lengthWith(heights, k, mid) <= goal {
			lo = mid
		} else {
			up = mid - 1
		}
	}
	return lo
}

// duals are integer multipliers, scaled by some power of two: Item[i] >= 0 is
// the worth of one piece of kind i and Class[k], of either sign, the price of
// a unit of Z_k.
type duals struct {
	item  []int64
	class []int64
}

// scaling chooses the power of two by which duals are scaled so that no sum of
// the bound leaves an int64, whatever the duals: they are clamped to ceiling.
type scaling struct {
	scale   int64
	ceiling int64
}

// newScaling serves lengths up to goal, with at most count pieces or strips in
// a sum and so many classes. A dual is worth at most some multiple of the
// goal; beyond that it is clamped.
func newScaling(goal, count int64, classes int) scaling {
	const most = 24
	ceiling := int64(1) << 60 / max(1, count) / int64(64+classes)
	width := bits.Len64(uint64(ceiling)) - bits.Len64(uint64(max(1, goal))) - 3
	return scaling{scale: 1 << max(0, min(most, width)), ceiling: ceiling}
}

// round takes a simplex method's duals to integers: down, which can only
// weaken the bound.
func (s scaling) round(y []float64, kinds int) duals {
	d := duals{make([]int64, kinds), make([]int64, len(y)-kinds)}
	for i, v := range y {
		v = math.Floor(float64(v * float64(s.scale)))
		v = max(-float64(s.ceiling), min(float64(s.ceiling), v))
		if i < kinds {
			d.item[i] = int64(max(0, v))
		} else {
			d.class[i-kinds] = int64(v)
		}
	}
	return d
}

// repair moves the class prices so that no strip is worth more than it costs:
// best[k] is the most that a strip of class k is worth.
func (in *instance) repair(d duals, best []int64, scale int64) {
	if in.stock != nil {
		for k, h := range in.heights {
			d.class[k] = min(d.class[k], scale*h-best[k])
		}
		return
	}
	carry, sum := int64(0), int64(0)
	for k := range in.heights {
		d.class[k] += carry
		sum += d.class[k]
		carry = max(0, best[k]-(scale*in.heights[k]-sum))
		d.class[k] -= carry
		sum -= carry
	}
}

// bound is the scaled lower bound on length that duals prove within a box, for
// strips none of which is worth more than it costs.
func (d duals) bound(demand []int, b box) int64 {
	sum := int64(0)
	for i, y := range d.item {
		sum += int64(demand[i]) * y
	}
	for k, p := range d.class {
		sum += pick(p, b.lo[k], b.up[k])
	}
	return sum
}

// squeeze tightens a box by reduced costs: a strip count whose unit price is p
// moves away from its cheap bound at the cost p a step, and slack is all that a
// plan within the goal may cost beyond the bound.
func (d duals) squeeze(b box, slack int64) {
	for k, p := range d.class {
		if p > 0 {
			b.up[k] = min(b.up[k], b.lo[k]+slack/p)
		} else if p < 0 {
			b.lo[k] = max(b.lo[k], b.up[k]-slack/-p)
		}
	}
}

// pick is the least of c*x over lo <= x <= up.
func pick(c, lo, up int64) int64 {
	if c < 0 {
		return c * up
	}
	return c * lo
}
