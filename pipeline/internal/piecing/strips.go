package piecing

import "yardproof/schema/measure"

// PerStrip is how many pieces of a length come from one strip or strip set
// of length L, rounded down; none from a piece of no length.
func PerStrip(l, piece measure.Length) int64 {
	if piece <= 0 || l < 0 {
		return 0
	}
	return int64(l / piece)
}

// JoinedStrips is how many strips of length L, joined end to end, give at
// least need: the smallest k with k*L - (k-1)*loss >= need, where each join
// costs loss of length. A diagonal join costs the strip's cut width, a
// straight one two seam allowances (derived from geometry). It is 0 for no
// need, and ok is false when a strip is no longer than what a join costs and
// one is not enough.
func JoinedStrips(need measure.Surd, l, loss measure.Length) (k int64, ok bool) {
	if need.Sign() <= 0 {
		return 0, true
	}
	if need.Cmp(l.Surd()) <= 0 {
		return 1, true
	}
	if l <= loss {
		return 0, false
	}
	return measure.CeilDiv(need.Sub(loss.Surd()), (l - loss).Surd()), true
}

// JoinedLength is the length of k strips of length L joined end to end, each
// join costing loss.
func JoinedLength(k int64, l, loss measure.Length) measure.Length {
	if k <= 0 {
		return 0
	}
	return measure.Length(k)*l - measure.Length(k-1)*loss
}

// JoinedFrom is the shortest strip of which k, joined end to end, give a length,
// each join costing loss: (length + (k-1)*loss) / k, rounded up to a tick.
// Derived from geometry.
func JoinedFrom(length measure.Length, k int64, loss measure.Length) measure.Length {
	if k <= 1 {
		return length
	}
	all := length + measure.Length(k-1)*loss
	return (all + measure.Length(k) - 1) / measure.Length(k)
}

// Groups is how many whole groups of a size n make, rounded down, and what
// is left over: 40 strips in threes are 13 and 1.
func Groups(n, size int64) (groups, left int64) {
	if size <= 0 {
		return 0, n
	}
	return n / size, n % size
}

// Batches is how many batches of size n make at least need, rounded up.
func Batches(need, size int64) int64 {
	if size <= 0 || need <= 0 {
		return 0
	}
	return (need-1)/size + 1
}
