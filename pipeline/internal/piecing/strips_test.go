package piecing_test

import (
	"testing"

	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
)

const (
	inch    = measure.Inch
	cm      = measure.Centimetre
	mm      = measure.Millimetre
	tick    = measure.Tick
	quarter = inch / 4 // the drafted quarter-inch seam
	roll    = inch * 5 / 2
)

// length reads a length, so that a table can be written as the trade writes.
func length(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, measure.In)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func same(n int, w measure.Length) []measure.Length {
	widths := make([]measure.Length, n)
	for i := range widths {
		widths[i] = w
	}
	return widths
}

// T = sum of the widths - 2(n-1)s, raw edge to raw edge; derived from
// geometry. A set that forgets a seam comes out 7 1/2 in, one that counts a
// seam too many 6 in: three strips of 2 1/2 in are 6 1/2 in.
func TestSetWidth(t *testing.T) {
	for _, c := range []struct {
		widths []measure.Length
		seam   measure.Length
		want   measure.Length
	}{
		{same(1, roll), quarter, roll},
		{same(2, roll), quarter, inch * 9 / 2},
		{same(3, roll), quarter, inch * 13 / 2},
		{same(4, roll), quarter, inch * 17 / 2},
		{same(3, roll), inch * 3 / 8, 6 * inch},
		{same(3, 65*mm), 75 * mm / 10, 165 * mm},
		{[]measure.Length{inch * 3 / 2, roll, inch}, quarter, 4 * inch},
		{same(2, roll), 0, 5 * inch},
	} {
		if got := setWidth(c.widths, c.seam); got != c.want {
			t.Errorf("set of %d strips, the first %v wide, seam %v: %v wide, want %v",
				len(c.widths), c.widths[0].Format(measure.In), c.seam.Format(measure.In), got.Format(measure.In), c.want.Format(measure.In))
		}
	}
}

// The identity T - 2s = n(w - 2s) holds for equal strips, whatever the seam.
func TestSetWidthIdentity(t *testing.T) {
	for n := 1; n <= 24; n++ {
		for _, s := range []measure.Length{0, quarter, 6 * mm, 7 * mm, inch * 3 / 8} {
			left := setWidth(same(n, roll), s) - 2*s
			if right := measure.Length(n) * (roll - 2*s); left != right {
				t.Errorf("n=%d s=%d: T - 2s = %d, n(w - 2s) = %d", n, s, left, right)
			}
		}
	}
}

// A segment from a strip is a floor: 16 of 2 1/2 in from 40 in exactly, and 15
// once anything is squared off the end.
func TestPerStrip(t *testing.T) {
	for _, c := range []struct {
		l, piece measure.Length
		want     int64
	}{
		{40 * inch, roll, 16},
		{40*inch - tick, roll, 15},
		{40*inch + tick, roll, 16},
		{42 * inch, roll, 16},
		{40 * inch, inch * 21 / 2, 3}, // 31 sashes of 2 1/2 x 10 1/2 in, one way
		{100 * cm, 65 * mm, 15},
		{inch, inch, 1},
		{inch - tick, inch, 0},
		{inch, 0, 0},
		{0, inch, 0},
		{-inch, inch, 0},
		{inch, -inch, 0},
	} {
		if got := piecing.PerStrip(c.l, c.piece); got != c.want {
			t.Errorf("pieces of %d from %d: %d, want %d", c.piece, c.l, got, c.want)
		}
	}
}

// k strips joined give k*U - (k-1)*w on the diagonal and k*U - 2(k-1)s
// straight; derived from geometry. The usual ceil(need / U) is one short at
// 198 in of binding: five strips of 40 in give 190.
func TestJoinedStrips(t *testing.T) {
	u := 40 * inch
	straight := 2 * quarter
	for _, c := range []struct {
		what       string
		need, loss measure.Length
		want       int64
		gives      measure.Length
	}{
		{"binding of 192 + 10 in", 202 * inch, roll, 6, inch * 455 / 2},
		{"binding of 198 in", 198 * inch, roll, 6, inch * 455 / 2},
		{"what five strips of binding give", 190 * inch, roll, 5, 190 * inch},
		{"a tick more", 190*inch + tick, roll, 6, inch * 455 / 2},
		{"border cut 5 1/2 in, diagonal", 198 * inch, inch * 11 / 2, 6, inch * 425 / 2},
		{"border, straight: five exactly", 198 * inch, straight, 5, 198 * inch},
		{"border, straight, a tick more", 198*inch + tick, straight, 6, inch * 475 / 2},
		{"one strip exactly", u, roll, 1, u},
		{"one strip and a tick", u + tick, roll, 2, 2*u - roll},
		{"hardly any", tick, roll, 1, u},
		{"nothing", 0, roll, 0, 0},
		{"less than nothing", -inch, roll, 0, 0},
	} {
		k, ok := piecing.JoinedStrips(c.need.Surd(), u, c.loss)
		if !ok || k != c.want {
			t.Errorf("%s: %d strips, %v, want %d", c.what, k, ok, c.want)
		}
		if got := piecing.JoinedLength(k, u, c.loss); got != c.gives {
			t.Errorf("%s: %d strips give %v, want %v", c.what, k, got.Format(measure.In), c.gives.Format(measure.In))
		}
	}
}

// A length with a root in it is compared exactly: 40*sqrt2 is a little under
// 56 5/8 in.
func TestJoinedStripsOfDerivedLength(t *testing.T) {
	need := (40 * inch).Surd().Mul(measure.Root2())
	for _, c := range []struct {
		each measure.Length
		want int64
	}{
		{need.CeilTo(tick), 1},
		{need.FloorTo(tick), 2},
	} {
		if k, ok := piecing.JoinedStrips(need, c.each, roll); !ok || k != c.want {
			t.Errorf("strips of %d: %d, %v, want %d", c.each, k, ok, c.want)
		}
	}
}

// Strips no longer than a join costs never get anywhere, except where one is
// enough already.
func TestJoinedStripsTooShort(t *testing.T) {
	if k, ok := piecing.JoinedStrips((3 * inch).Surd(), roll, roll); ok || k != 0 {
		t.Errorf("strips as long as their joins: %d, %v", k, ok)
	}
	if k, ok := piecing.JoinedStrips((2 * inch).Surd(), roll, roll); !ok || k != 1 {
		t.Errorf("one strip is enough: %d, %v", k, ok)
	}
}

// The count is the smallest that reaches, for whatever length is wanted.
func TestJoinedStripsAreFewest(t *testing.T) {
	for _, loss := range []measure.Length{2 * quarter, roll, inch * 11 / 2} {
		for need := inch; need < 400*inch; need += inch * 7 / 16 {
			k, ok := piecing.JoinedStrips(need.Surd(), 40*inch, loss)
			if !ok || piecing.JoinedLength(k, 40*inch, loss) < need || piecing.JoinedLength(k-1, 40*inch, loss) >= need {
				t.Fatalf("need %v, loss %v: %d strips, %v", need.Format(measure.In), loss.Format(measure.In), k, ok)
			}
		}
	}
}

// A roll of 40 strips sewn in threes, and the sets in pairs: 13 sets and a
// strip over, 6 tubes and a set over. Seven tubes from 13 sets is a mistake of
// the trade.
func TestGroups(t *testing.T) {
	for _, c := range []struct{ n, size, groups, left int64 }{
		{40, 3, 13, 1}, {13, 2, 6, 1}, {36, 3, 12, 0}, {2, 3, 0, 2}, {0, 3, 0, 0}, {5, 0, 0, 5},
	} {
		if groups, left := piecing.Groups(c.n, c.size); groups != c.groups || left != c.left {
			t.Errorf("%d in groups of %d: %d and %d left, want %d and %d", c.n, c.size, groups, left, c.groups, c.left)
		}
	}
}

func TestBatches(t *testing.T) {
	for _, c := range []struct{ need, size, want int64 }{
		{36, 6, 6}, {37, 6, 7}, {35, 6, 6}, {1, 6, 1}, {0, 6, 0}, {-1, 6, 0}, {3, 0, 0}, {7, 2, 4}, {80, 16, 5}, {81, 16, 6},
	} {
		if got := piecing.Batches(c.need, c.size); got != c.want {
			t.Errorf("%d in batches of %d: %d, want %d", c.need, c.size, got, c.want)
		}
	}
}
