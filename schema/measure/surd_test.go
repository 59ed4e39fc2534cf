package measure

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// oracleBits is the precision of the floating-point oracle. A surd whose
// coefficients are quotients of 63-bit numbers is far coarser than that.
const oracleBits = 600

// oracle returns x by another road: big.Float and its square root.
func oracle(x Surd) *big.Float {
	sum := new(big.Float).SetPrec(oracleBits)
	for i, r := range x.widen() {
		term := new(big.Float).SetPrec(oracleBits).SetRat(r)
		root := new(big.Float).SetPrec(oracleBits).SetInt64([]int64{1, 2, 3, 6}[i])
		sum.Add(sum, term.Mul(term, root.Sqrt(root)))
	}
	return sum
}

// near reports whether x is got to 300 bits after the point or of its size,
// whichever is looser.
func near(x Surd, got *big.Float) bool {
	difference := new(big.Float).Sub(oracle(x), got)
	bound := new(big.Float).Abs(got)
	bound.Add(bound, big.NewFloat(1))
	bound.SetMantExp(bound, -300)
	return difference.Abs(difference).Cmp(bound) <= 0
}

type random struct{ *rand.Rand }

func newRandom(t testing.TB) random {
	t.Helper()
	return random{rand.New(rand.NewPCG(1, 2))}
}

// surd returns a surd with some coefficients zero, of sizes from a tick to more
// than a machine word.
func (r random) surd() Surd {
	var num [4]int64
	size := uint(r.IntN(63))
	for i := range num {
		if r.IntN(2) == 0 {
			up, down := r.Int64()>>size, r.Int64()>>size
			num[i] = up - down
		}
	}
	x := reduce(num, 1+r.Int64N(1<<(1+r.IntN(20))))
	if r.IntN(8) == 0 {
		x = x.MulInt(math.MaxInt64)
	}
	return x
}

func TestFieldLaws(t *testing.T) {
	r := newRandom(t)
	one := Rational(1, 1)
	for range 1000 {
		x, y, z := r.surd(), r.surd(), r.surd()
		laws := []struct {
			name        string
			left, right Surd
		}{
			{"x+y = y+x", x.Add(y), y.Add(x)},
			{"(x+y)+z = x+(y+z)", x.Add(y).Add(z), x.Add(y.Add(z))},
			{"x-y = -(y-x)", x.Sub(y), y.Sub(x).Neg()},
			{"x-x = 0", x.Sub(x), Surd{}},
			{"xy = yx", x.Mul(y), y.Mul(x)},
			{"(xy)z = x(yz)", x.Mul(y).Mul(z), x.Mul(y.Mul(z))},
			{"x(y+z) = xy+xz", x.Mul(y.Add(z)), x.Mul(y).Add(x.Mul(z))},
			{"(x/y)y = x", x.Div(y).Mul(y), x},
			{"1/(1/y) = y", one.Div(one.Div(y)), y},
			{"x+0 = x", x.Add(Surd{}), x},
			{"1x = x", x.Mul(one), x},
			{"3x = x+x+x", x.MulInt(3), Sum(x, x, x)},
			{"(x/7)*7 = x", x.DivInt(7).MulInt(7), x},
		}
		for i, law := range laws {
			if dividing := i == 7 || i == 8; dividing && y.IsZero() {
				continue
			}
			if !law.left.Equal(law.right) {
				t.Fatalf("%s fails for %s, %s, %s", law.name, x, y, z)
			}
		}
	}
}

func TestArithmeticAgainstBigFloat(t *testing.T) {
	r := newRandom(t)
	for range 1000 {
		checkArithmetic(t, r.surd(), r.surd())
	}
}

func checkArithmetic(t *testing.T, x, y Surd) {
	t.Helper()
	fx, fy := oracle(x), oracle(y)
	next := func() *big.Float { return new(big.Float).SetPrec(oracleBits) }
	if !near(x.Add(y), next().Add(fx, fy)) {
		t.Fatalf("%s plus %s is %s", x, y, x.Add(y))
	}
	if !near(x.Mul(y), next().Mul(fx, fy)) {
		t.Fatalf("%s times %s is %s", x, y, x.Mul(y))
	}
	if got, want := x.Sign(), fx.Sign(); got != want && !x.IsZero() {
		t.Fatalf("sign of %s = %d, want %d", x, got, want)
	}
	if got, want := x.Cmp(y), fx.Cmp(fy); got != want && !x.Equal(y) {
		t.Fatalf("%s against %s = %d, want %d", x, y, got, want)
	}
	checkDivision(t, x, y)
}

// checkDivision proves floor and ceiling from their definition.
func checkDivision(t *testing.T, x, y Surd) {
	t.Helper()
	if y.Sign() < 0 {
		y = y.Neg()
	}
	if y.IsZero() {
		return
	}
	if quotient := x.Div(y); !quotient.Mul(y).Equal(x) {
		t.Fatalf("%s / %s = %s", x, y, quotient)
	}
	floor := FloorDiv(x, y)
	if floor > math.MinInt64 && y.MulInt(floor).Cmp(x) > 0 {
		t.Fatalf("%d of %s do not fit into %s", floor, y, x)
	}
	if floor < math.MaxInt64 && y.Mul(Rational(floor, 1).Add(Rational(1, 1))).Cmp(x) <= 0 {
		t.Fatalf("one more than %d of %s fits into %s", floor, y, x)
	}
	ceil := CeilDiv(x, y)
	if exact := y.MulInt(floor).Equal(x); ceil != floor && (exact || ceil != floor+1) && ceil != math.MaxInt64 {
		t.Fatalf("%s / %s: floor %d, ceiling %d", x, y, floor, ceil)
	}
	if ceil < math.MaxInt64 && y.MulInt(ceil).Cmp(x) < 0 {
		t.Fatalf("%d of %s do not cover %s", ceil, y, x)
	}
}

// The machine-word operations and the unbounded ones must give equal results in
// equal representations.
func TestNarrowAgainstWide(t *testing.T) {
	r := newRandom(t)
	for range 1000 {
		x, y := r.surd(), r.surd()
		if sum := addWide(x.widen(), y.widen()); !sum.Equal(x.Add(y)) {
			t.Fatalf("%s plus %s", x, y)
		}
		if product := mulWide(x.widen(), y.widen()); !product.Equal(x.Mul(y)) {
			t.Fatalf("%s times %s", x, y)
		}
		if back := settle(*x.widen()); !back.Equal(x) || (back.wide == nil) != (x.wide == nil) {
			t.Fatalf("%s comes back as %s", x, back)
		}
		if got, want := x.Sign(), signExact(x); got != want {
			t.Fatalf("sign of %s = %d, want %d", x, got, want)
		}
		if x.wide == nil && y.wide == nil && y.Sign() > 0 {
			if got, want := FloorDiv(x, y), saturate(floorExact(x.Div(y))); got != want {
				t.Fatalf("floor of %s / %s = %d, want %d", x, y, got, want)
			}
		}
	}
}

// Derived (Pell's equation): p^2 - 2q^2 = 1 or -1 for the convergents p/q of
// sqrt2, the closest any fraction comes; so p - q*sqrt2 has that sign, however
// small it is.
func TestSignOfConvergents(t *testing.T) {
	p, q := int64(1), int64(1)
	want := -1
	for q < math.MaxInt64/4 {
		x := Rational(p, 1).Sub(Root2().MulInt(q))
		if got := x.Sign(); got != want {
			t.Errorf("sign of %d - %d*sqrt2 = %d, want %d", p, q, got, want)
		}
		if got := Rational(p, q).Cmp(Root2()); got != want {
			t.Errorf("%d/%d against sqrt2 = %d, want %d", p, q, got, want)
		}
		floor := p
		if want > 0 {
			floor = p - 1
		}
		if got := FloorDiv(Root2().MulInt(q), Rational(1, 1)); got != floor {
			t.Errorf("floor of %d*sqrt2 = %d, want %d", q, got, floor)
		}
		p, q, want = p+2*q, p+q, -want
	}
}

// Derived: (sqrt2-1)(sqrt3-sqrt2) is positive and a unit of the field, so its
// powers are tiny differences of huge numbers, and their inverses are known.
func TestPowersOfAUnit(t *testing.T) {
	small := Root2().Sub(Rational(1, 1)).Mul(Root3().Sub(Root2()))
	great := Root2().Add(Rational(1, 1)).Mul(Root3().Add(Root2()))
	x, y := Rational(1, 1), Rational(1, 1)
	for power := range 60 {
		x, y = x.Mul(small), y.Mul(great)
		if x.Sign() != 1 || x.Neg().Sign() != -1 {
			t.Fatalf("power %d is not positive", power)
		}
		if !Rational(1, 1).Div(x).Equal(y) || !Rational(1, 1).Div(y).Equal(x) {
			t.Fatalf("power %d: wrong inverse", power)
		}
		if got := FloorDiv(x, Rational(1, 1)); got != 0 {
			t.Fatalf("power %d: floor %d", power, got)
		}
	}
	if x.wide == nil || y.wide == nil {
		t.Error("60 powers should leave the machine words")
	}
}

func TestKnownIdentities(t *testing.T) {
	root2, root3, root6, one := Root2(), Root3(), root6(), Rational(1, 1)
	tests := []struct {
		name        string
		left, right Surd
	}{
		{"sqrt2*sqrt3 = sqrt6", root2.Mul(root3), root6},
		{"sqrt2*sqrt6 = 2*sqrt3", root2.Mul(root6), root3.MulInt(2)},
		{"sqrt3*sqrt6 = 3*sqrt2", root3.Mul(root6), root2.MulInt(3)},
		{"sqrt2^2 = 2", root2.Mul(root2), Rational(2, 1)},
		{"sqrt3^2 = 3", root3.Mul(root3), Rational(3, 1)},
		{"sqrt6^2 = 6", root6.Mul(root6), Rational(6, 1)},
		{"1/sqrt2 = sqrt2/2", one.Div(root2), root2.DivInt(2)},
		{"1/(2+sqrt2) = 1-sqrt2/2", one.Div(Rational(2, 1).Add(root2)), one.Sub(root2.DivInt(2))},
		{"(sqrt2+sqrt3)^2 = 5+2*sqrt6", root2.Add(root3).Mul(root2.Add(root3)), Rational(5, 1).Add(root6.MulInt(2))},
		{"1/(sqrt3-sqrt2) = sqrt3+sqrt2", one.Div(root3.Sub(root2)), root3.Add(root2)},
		{"-6/4 = 3/-2", Rational(-6, 4), Rational(3, -2)},
	}
	for _, test := range tests {
		if !test.left.Equal(test.right) || test.left.Cmp(test.right) != 0 {
			t.Errorf("%s: %s against %s", test.name, test.left, test.right)
		}
	}
}

// Derived: a tube's far-seam square is (T-2s)*sqrt2; n of its triangles take
// (n+1)(T-2s), so that 40, 41 1/2 and 42 in are everyday boundary cases.
func TestFloorDivAtTheBoundary(t *testing.T) {
	advance := (6 * Inch).Surd()
	tests := []struct {
		length Length
		want   int64
	}{
		{42*Inch - 1, 6}, {42 * Inch, 7}, {42*Inch + 1, 7}, {Inch * 83 / 2, 6}, {36 * Inch, 6}, {36*Inch - 1, 5}, {0, 0},
	}
	for _, test := range tests {
		if got := FloorDiv(test.length.Surd(), advance); got != test.want {
			t.Errorf("%s holds %d, want %d", test.length.Format(In), got, test.want)
		}
	}
	// The same boundary with a root on both sides.
	if got := FloorDiv(Root2().Mul((42 * Inch).Surd()), Root2().Mul(advance)); got != 7 {
		t.Errorf("42*sqrt2 / 6*sqrt2 = %d", got)
	}
	// A tube square of side 6*sqrt2, on point, is exactly 12 in wide.
	if got := Root2().Mul(Root2()).Mul(advance).Cmp((12 * Inch).Surd()); got != 0 {
		t.Errorf("6*sqrt2*sqrt2 against 12: %d", got)
	}
	// 8 1/2 in is more than 6*sqrt2 by 0.0147 in.
	if got := (Inch * 17 / 2).Surd().Cmp(Root2().Mul(advance)); got != 1 {
		t.Errorf("8 1/2 against 6*sqrt2: %d", got)
	}
}

func TestDivisionByNothing(t *testing.T) {
	x, zero := Inch.Surd(), Surd{}
	for name, got := range map[string]Surd{
		"x/0": x.Div(zero), "0/0": zero.Div(zero), "x/int 0": x.DivInt(0), "1/0": Rational(1, 0),
	} {
		if !got.IsZero() {
			t.Errorf("%s = %s", name, got)
		}
	}
	for _, y := range []Surd{zero, x.Neg()} {
		if FloorDiv(x, y) != 0 || CeilDiv(x, y) != math.MaxInt64 || CeilDiv(zero, y) != 0 {
			t.Errorf("dividing by %s: %d, %d", y, FloorDiv(x, y), CeilDiv(x, y))
		}
	}
}

func TestSaturation(t *testing.T) {
	one := Rational(1, 1)
	huge := Rational(math.MaxInt64, 1).MulInt(2).Add(Root2())
	if FloorDiv(huge, one) != math.MaxInt64 || CeilDiv(huge, one) != math.MaxInt64 {
		t.Error("no saturation upwards")
	}
	if FloorDiv(huge.Neg(), one) != math.MinInt64 || CeilDiv(huge.Neg(), one) > -math.MaxInt64 {
		t.Error("no saturation downwards")
	}
	if got := FloorDiv(Rational(math.MaxInt64, 1), one); got != math.MaxInt64 {
		t.Errorf("greatest int64 = %d", got)
	}
	if got := FloorDiv(Rational(math.MinInt64, 1), one); got != math.MinInt64 {
		t.Errorf("least int64 = %d", got)
	}
}

func TestConversions(t *testing.T) {
	if l, ok := Inch.Surd().Length(); !ok || l != Inch {
		t.Errorf("1 in = %d, %t", l, ok)
	}
	for _, x := range []Surd{Rational(1, 2), Root2(), Rational(math.MinInt64, 1)} {
		if l, ok := x.Length(); ok {
			t.Errorf("%s is %d ticks", x, l)
		}
	}
	if num, den, ok := Rational(6, -4).Rational(); !ok || num.Int64() != -3 || den.Int64() != 2 {
		t.Errorf("6/-4 = %v/%v, %t", num, den, ok)
	}
	if num, den, ok := Rational(math.MinInt64, 1).Rational(); !ok || num.Int64() != math.MinInt64 || den.Int64() != 1 {
		t.Errorf("least int64 = %v/%v, %t", num, den, ok)
	}
	if _, _, ok := Root3().Rational(); ok {
		t.Error("sqrt3 is a fraction")
	}
	x, y := Rational(7, 5), Root2() // 1.4 < 1.4142
	if !Min(x, y).Equal(x) || !Min(y, x).Equal(x) || !Max(x, y).Equal(y) || !Max(y, x).Equal(y) {
		t.Error("Min or Max of 7/5 and sqrt2")
	}
}

// A caller may write to what it gave or was given; a surd must not change.
func TestImmutable(t *testing.T) {
	r := new(big.Rat).SetFrac(new(big.Int).Lsh(big.NewInt(1), 100), big.NewInt(3))
	x := FromRat(r)
	before := x.String()
	r.SetInt64(0)
	num, den, _ := x.Rational()
	num.SetInt64(5)
	den.SetInt64(5)
	if x.String() != before {
		t.Errorf("%s became %s", before, x)
	}
}

// Plan-sized values must stay in machine words.
func TestNoAllocations(t *testing.T) {
	x, y := Root2().Mul((6 * Inch).Surd()), (Inch * 83 / 8).Surd().DivInt(3)
	allocations := testing.AllocsPerRun(10, func() {
		if x.Add(y).Mul(y).Sub(x).Cmp(y) == 0 || FloorDiv(x, y) > 10 || x.CeilTo(Inch/8) == 0 || x.Div(y).IsZero() {
			t.Error("unexpected value")
		}
	})
	if allocations != 0 {
		t.Errorf("%v allocations", allocations)
	}
}

func FuzzSurd(f *testing.F) {
	f.Add(int64(1), int64(2), int64(3), int64(4), int64(5), int64(6), int64(7), int64(8), int64(9), int64(10))
	f.Add(int64(math.MaxInt64), int64(math.MinInt64), int64(0), int64(-1), int64(3), int64(42*Inch), int64(0), int64(0), int64(0), int64(7))
	f.Add(int64(0), int64(6*Inch), int64(0), int64(0), int64(1), int64(Inch/4), int64(Inch/8), int64(0), int64(0), int64(1))
	f.Fuzz(func(t *testing.T, a, b, c, d, over, e, f, g, h, under int64) {
		build := func(a, b, c, d, den int64) Surd {
			return Sum(Rational(a, 1), Root2().MulInt(b), Root3().MulInt(c), root6().MulInt(d)).DivInt(den)
		}
		checkArithmetic(t, build(a, b, c, d, over), build(e, f, g, h, under))
	})
}

func root6() Surd { return Root2().Mul(Root3()) }
