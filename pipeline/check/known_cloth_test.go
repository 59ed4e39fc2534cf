package check

import (
	"math/big"
	"slices"
	"strings"
)

// The naive reckoner of TestKnownAnswers. Lengths are whole ticks, 1/203200 in;
// every piece, strip and unit is an entry of its own, and nothing here asks the
// packages that derive. Its rules are common practice, no source, but for what
// is derived from geometry.
const (
	knownInch = int64(203200)
	knownCm   = int64(80000)
)

// knownText writes a length as a plan does: a decimal number of its unit.
func knownText(ticks, unit int64) string {
	text := big.NewRat(ticks, unit).FloatString(6)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// root2Up is n times the root of 2, rounded up to a whole number.
func root2Up(n int64) int64 {
	root := root2Down(n)
	if root*root < 2*n*n {
		root++
	}
	return root
}

// root2Down is the same, rounded down.
func root2Down(n int64) int64 {
	square := new(big.Int).Mul(big.NewInt(2*n), big.NewInt(n))
	return square.Sqrt(square).Int64()
}

// upTo is a length up to the next line of a grid.
func upTo(x, grid int64) int64 {
	for x%grid != 0 {
		x += grid - x%grid
	}
	return x
}

// knownCloth is a fabric of a generated plan, yardage or precut.
type knownCloth struct {
	role                    string
	width, squaring, grid   int64 // of yardage, before it is washed
	lossWidth, lossLength   int64 // percent
	long, short, pack       int64 // of precut pieces, as they can be used
	nominalLong, nominalLow int64
}

// strip is how long a strip of it is.
func (c *knownCloth) strip() int64 {
	if c.pack > 0 {
		return c.long
	}
	return c.width * (100 - c.lossWidth) / 100
}

// holds reports whether a piece can be cut from it.
func (c *knownCloth) holds(a, b int64) bool {
	if c.pack > 0 {
		return max(a, b) <= c.long && min(a, b) <= c.short
	}
	return min(a, b) <= c.strip()
}

func (c *knownCloth) plan(unit int64) any {
	if c.pack > 0 {
		return map[string]any{"precut": map[string]any{
			"piece":  []string{knownText(c.nominalLow, unit), knownText(c.nominalLong, unit)},
			"usable": []string{knownText(c.short, unit), knownText(c.long, unit)}, "count": c.pack,
		}}
	}
	yardage := map[string]any{"usable_width": knownText(c.width, unit), "squaring_up": knownText(c.squaring, unit), "grid": knownBuy(c.grid, unit)}
	loss := map[string]any{}
	if c.lossWidth > 0 {
		loss["width"] = big.NewInt(c.lossWidth).String() + "%"
	}
	if c.lossLength > 0 {
		loss["length"] = big.NewInt(c.lossLength).String() + "%"
	}
	if len(loss) > 0 {
		yardage["shrinkage"] = loss
	}
	return map[string]any{"yardage": yardage}
}

// knownBuy writes a length to buy: yards in an inch plan, else metres.
func knownBuy(ticks, unit int64) string {
	if unit == knownInch {
		return knownText(ticks, 36*knownInch) + " yd"
	}
	return knownText(ticks, 100*knownCm) + " m"
}

// knownPiece is one piece, knownStrip one strip used whole, and who takes it.
type (
	knownPiece struct {
		by           string
		across, down int64
		inLengths    bool // cut from strips as wide as it is high
	}
	knownStrip struct {
		by     string
		height int64
	}
)

// knownWant is all that is cut from one cloth.
type knownWant struct {
	cloth  *knownCloth
	pieces []knownPiece
	strips []knownStrip
	panels int64
}

// endToEnd cuts what is cut in lengths from strips of their height, one strip at
// a time, and from each the longest that still goes. It gives the strips by
// height.
func (w *knownWant) endToEnd() map[int64]int64 {
	lengths, strips := map[int64][]int64{}, map[int64]int64{}
	for _, p := range w.pieces {
		if p.inLengths && p.across <= w.cloth.strip() {
			lengths[p.down] = append(lengths[p.down], p.across)
		}
	}
	for height, left := range lengths {
		slices.Sort(left)
		for ; len(left) > 0; strips[height]++ {
			room := w.cloth.strip()
			for i := len(left) - 1; i >= 0; i-- {
				if left[i] <= room {
					room -= left[i]
					left = slices.Delete(left, i, i+1)
				}
			}
		}
	}
	return strips
}

// bySize sorts the other pieces by size, whichever way they lie.
func (w *knownWant) bySize() map[[2]int64][]knownPiece {
	sizes := map[[2]int64][]knownPiece{}
	for _, p := range w.pieces {
		if p.inLengths && p.across <= w.cloth.strip() {
			continue
		}
		size := [2]int64{min(p.across, p.down), max(p.across, p.down)}
		sizes[size] = append(sizes[size], p)
	}
	return sizes
}

// ownStripsOf cuts pieces of one size one by one from strips of their own: the
// way round that takes less cloth, of two alike the one of fewer strips.
func ownStripsOf(n int, size [2]int64, width int64) (strips, height int64) {
	best := int64(-1)
	for _, way := range [][2]int64{size, {size[1], size[0]}} {
		across, down := way[0], way[1]
		if across > width {
			continue
		}
		cut, left := int64(0), int64(0)
		for range n {
			if left < across {
				cut, left = cut+1, width
			}
			left -= across
		}
		if best < 0 || cut*down < best || cut*down == best && cut < strips {
			best, strips, height = cut*down, cut, down
		}
	}
	return strips, height
}

// net is the length of cloth that the plain method takes, squaring up and panels
// included.
func (w *knownWant) net() int64 {
	sum := w.panels + w.cloth.squaring
	for _, s := range w.strips {
		sum += s.height
	}
	for height, strips := range w.endToEnd() {
		sum += strips * height
	}
	for size, pieces := range w.bySize() {
		strips, height := ownStripsOf(len(pieces), size, w.cloth.strip())
		sum += strips * height
	}
	return sum
}

// buy is what is bought: unshrunk, up to the shop's grid.
func (w *knownWant) buy() int64 {
	net, share := w.net(), 100-w.cloth.lossLength
	gross := net * 100 / share
	if gross*share < net*100 {
		gross++
	}
	return upTo(gross, w.cloth.grid)
}

// used is how many precut pieces are cut into. Strips of each
// height, and each size of piece, have pieces of the pack of their own.
func (w *knownWant) used() int64 {
	used := int64(0)
	room := map[int64]int64{} // left of the piece that strips of a height are cut from
	for _, s := range w.strips {
		if room[s.height] < s.height {
			used, room[s.height] = used+1, w.cloth.short
		}
		room[s.height] -= s.height
	}
	for height, strips := range w.endToEnd() {
		s := int64(0)
		for at := height; at <= w.cloth.short; at += height {
			s++
		}
		for ; strips > 0; strips -= s {
			used++
		}
	}
	for size, pieces := range w.bySize() {
		each := max(w.laid(size[0], size[1]), w.laid(size[1], size[0]))
		for left := len(pieces); left > 0; left -= each {
			used++
		}
	}
	return used
}

// laid is how many pieces can be laid on one precut piece, one beside the other
// and row above row.
func (w *knownWant) laid(across, down int64) int {
	n := 0
	for y := down; y <= w.cloth.short; y += down {
		for x := across; x <= w.cloth.long; x += across {
			n++
		}
	}
	return n
}

// packs opens packs until there are pieces enough.
func (w *knownWant) packs() (packs, left int64) {
	for used := w.used(); left < used; packs++ {
		left += w.cloth.pack
	}
	return packs, left - w.used()
}
