package bolts

import (
	"errors"
	"slices"
	"testing"

	"yardproof/schema/measure"
)

const yard = measure.Yard

// fifteen is an article in 15-yd bolts, whose cost is their length in yards.
func fifteen(loss int64) Article {
	return Article{Offers: []Offer{{15 * yard, 15}}, Loss: loss}
}

func eighths(n int, count int) Want {
	return Want{Length: measure.Length(n) * yard / 8, Count: count, Step: yard / 8}
}

func solve(t *testing.T, a Article, wants ...Want) Plan {
	t.Helper()
	p, err := Solve(a, wants)
	if err != nil {
		t.Fatal(err)
	}
	if fault := illegal(a, wants, p); fault != "" {
		t.Errorf("%s: %+v", fault, p)
	}
	return p
}

func shorter(t *testing.T, a Article, wants []Want, plan Plan) []Saving {
	t.Helper()
	savings, err := Shorter(a, wants, plan)
	if err != nil {
		t.Fatal(err)
	}
	return savings
}

// illegal recounts a plan.
func illegal(a Article, wants []Want, p Plan) string {
	cut := make([]int, len(wants))
	order, onHand := make([]int, len(a.Offers)), make([]int, len(a.OnHand))
	for _, c := range p.Cuts {
		var whole measure.Length
		if c.Offer >= 0 {
			whole = a.Usable(c.Offer)
			order[c.Offer] += c.Repeat
		} else {
			whole = a.OnHand[c.OnHand]
			onHand[c.OnHand] += c.Repeat
		}
		var used measure.Length
		for _, q := range c.Pieces {
			cut[q.Want] += q.Count * c.Repeat
			used += measure.Length(q.Count) * wants[q.Want].Length
		}
		if used+c.Left != whole || c.Left < 0 {
			return "a bolt's lengths do not add up"
		}
	}
	for _, q := range p.Rest {
		cut[q.Want] += q.Count
	}
	for i, w := range wants {
		if cut[i] != w.Count {
			return "not every kit is cut once"
		}
	}
	if slices.ContainsFunc(onHand, func(n int) bool { return n > 1 }) {
		return "a part-bolt is cut twice"
	}
	if len(a.Offers) > 0 && !a.Gone && (!slices.Equal(order, p.Order) || a.invoiced(order) != p.Length || a.cost(order) != p.Cost) {
		return "the order is not what is cut"
	}
	if p.Bound > p.Cost || p.Proved != (p.Bound == p.Cost) {
		return "the bound does not hold"
	}
	if p.Length > 0 && !a.Gone && !a.takes(p.Length) {
		return "the supplier does not take the order"
	}
	return ""
}

// Worked by hand: 15 yd at 1 3/8 yd are ten kits and 1 1/4 yd, at 1 1/4 yd
// twelve and nothing.
func TestKitsOfABolt(t *testing.T) {
	p := solve(t, fifteen(0), eighths(11, 10))
	if p.Order[0] != 1 || p.Cuts[0].Left != 5*yard/4 || !p.Proved {
		t.Errorf("ten kits: %+v", p)
	}
	if p = solve(t, fifteen(0), eighths(11, 11)); p.Order[0] != 2 {
		t.Errorf("the eleventh kit: %+v", p)
	}
	if p = solve(t, fifteen(0), eighths(10, 12)); p.Order[0] != 1 || p.Cuts[0].Left != 0 {
		t.Errorf("twelve kits: %+v", p)
	}
	if p = solve(t, fifteen(0), eighths(10, 13)); p.Order[0] != 2 {
		t.Errorf("the thirteenth kit: %+v", p)
	}
}

// Worked by hand: what a bolt loses decides at a hundredth of a percent. Twelve
// kits of 1 1/4 yd take all of 15 yd; eleven take 13 3/4 yd, which a loss of
// 1 % leaves. Ten of 1 3/8 yd take 13 3/4 yd: 15 yd less 8.33 % are 13.7505 yd, less
// 8.34 % 13.749 yd.
func TestLossOfABolt(t *testing.T) {
	for _, c := range []struct {
		loss        int64
		kit, count  int
		bolts       int
		explanation string
	}{
		{0, 10, 12, 1, "nothing lost"},
		{1, 10, 12, 2, "a hundredth of a percent lost"},
		{100, 10, 11, 1, "eleven with 1 %"},
		{100, 10, 12, 2, "twelve with 1 %"},
		{833, 11, 10, 1, "just enough"},
		{834, 11, 10, 2, "just short"},
	} {
		if p := solve(t, fifteen(c.loss), eighths(c.kit, c.count)); p.Order[0] != c.bolts {
			t.Errorf("%s: %+v", c.explanation, p)
		}
	}
	a := Article{Offers: []Offer{{Length: 3}}, Loss: 1}
	if a.Usable(0) != 2 {
		t.Errorf("a usable length is rounded down: %d", a.Usable(0))
	}
}

// Worked by hand: 20 kits of 1 3/8, 7/8 and 1/2 yd from 15-yd bolts at 6.00,
// 6.00 and 5.50 a yard: 30, 30 and 15 yd, 442.50 in all.
func TestThreeFabrics(t *testing.T) {
	var total int64
	for _, f := range []struct {
		cents  int64 // a bolt
		kit    int
		length measure.Length
	}{{9000, 11, 30 * yard}, {9000, 7, 30 * yard}, {8250, 4, 15 * yard}} {
		p := solve(t, Article{Offers: []Offer{{15 * yard, f.cents}}}, eighths(f.kit, 20))
		if p.Length != f.length || !p.Proved {
			t.Errorf("%+v", p)
		}
		total += p.Cost
	}
	if total != 44250 {
		t.Errorf("the run costs %d", total)
	}
}

// Worked by hand: remnants do not add up. Two bolts each leave 1 1/4 yd, together
// enough for a kit of 1 3/8 yd, and the kit still takes a third.
func TestRemnantsDoNotAddUp(t *testing.T) {
	if p := solve(t, fifteen(0), eighths(11, 21)); p.Order[0] != 3 {
		t.Errorf("%+v", p)
	}
	// A second plan's 5/8 yd comes out of them: two from each.
	if p := solve(t, fifteen(0), eighths(11, 20), eighths(5, 4)); p.Order[0] != 2 {
		t.Errorf("%+v", p)
	}
	if p := solve(t, fifteen(0), eighths(11, 20), eighths(5, 5)); p.Order[0] != 3 {
		t.Errorf("%+v", p)
	}
}

func TestWhatIsOnHandComesFirst(t *testing.T) {
	a := fifteen(100)
	a.OnHand = []measure.Length{11 * yard / 4, 11*yard/8 - 1}
	p := solve(t, a, eighths(11, 12)) // two kits from the first, none from the second, which is a tick short
	if p.Order[0] != 1 || p.Cuts[0].OnHand != 0 || p.Cuts[0].Pieces[0].Count != 2 {
		t.Errorf("%+v", p)
	}
	if p = solve(t, a, eighths(11, 2)); p.Cost != 0 || p.Length != 0 || !p.Proved {
		t.Errorf("nothing is ordered: %+v", p)
	}
	a.Least = 60 * yard
	if p = solve(t, a, eighths(11, 2)); p.Length != 0 {
		t.Errorf("a smallest order is for those who order: %+v", p)
	}
}

// Worked by hand: what a supplier takes, on both sides of each limit.
func TestSmallestOrderAndMultiple(t *testing.T) {
	a := fifteen(0)
	a.Least = 30 * yard
	if p := solve(t, a, eighths(11, 10)); p.Order[0] != 2 || !p.Proved {
		t.Errorf("two bolts at least: %+v", p)
	}
	a.Least = 15 * yard
	if p := solve(t, a, eighths(11, 10)); p.Order[0] != 1 {
		t.Errorf("one is enough: %+v", p)
	}
	a.Least++
	if p := solve(t, a, eighths(11, 10)); p.Order[0] != 2 {
		t.Errorf("one is a tick short: %+v", p)
	}
	a.Least, a.Multiple = 0, 45*yard
	if p := solve(t, a, eighths(11, 10)); p.Order[0] != 3 {
		t.Errorf("in threes: %+v", p)
	}
	if p := solve(t, a, eighths(11, 31)); p.Order[0] != 6 {
		t.Errorf("in threes again: %+v", p)
	}
	// 8-yd bolts at 5.00 and 15-yd bolts at 9.00, 30 yd at least: four of 8 yd for
	// 20.00 or two of 15 yd for 18.00, and not one of each, which the kits need.
	b := Article{Offers: []Offer{{8 * yard, 500}, {15 * yard, 900}}, Least: 30 * yard}
	if p := solve(t, b, eighths(16, 11)); !slices.Equal(p.Order, []int{0, 2}) || p.Cost != 1800 || !p.Proved {
		t.Errorf("the cheapest order: %+v", p)
	}
	// 12 kits of 1 7/8 yd: bolts of 8 and 15 yd hold four and eight, but 23 yd are
	// no multiple of 6 yd; two of 12 yd hold six each.
	c := Article{Offers: []Offer{{8 * yard, 8}, {12 * yard, 12}, {15 * yard, 15}}, Multiple: 6 * yard}
	if p := solve(t, c, eighths(15, 12)); p.Length != 24*yard || !p.Proved {
		t.Errorf("multiples of 6 yd: %+v", p)
	}
	a.Multiple = 7*yard + 1
	_, err := Solve(a, []Want{eighths(11, 1)})
	if e := new(Unorderable); !errors.As(err, &e) {
		t.Errorf("no number of bolts is a multiple: %v", err)
	}
}

func TestSoldByTheLength(t *testing.T) {
	a := Article{OnHand: []measure.Length{3 * yard}}
	p := solve(t, a, eighths(11, 5)) // two from the part-bolt
	if p.Length != 33*yard/8 || len(p.Rest) != 1 || p.Rest[0].Count != 3 || !p.Proved {
		t.Errorf("%+v", p)
	}
	a.Multiple, a.Least = yard, 2*yard
	if p = solve(t, a, eighths(11, 5)); p.Length != 5*yard {
		t.Errorf("by the yard: %+v", p)
	}
	if p = solve(t, a, eighths(11, 3)); p.Length != 2*yard {
		t.Errorf("two yards at least: %+v", p)
	}
	if shorter(t, a, []Want{eighths(11, 5)}, p) != nil {
		t.Error("less of what is sold by the length always saves")
	}
}

func TestWhatIsGone(t *testing.T) {
	a := fifteen(0)
	a.Gone, a.OnHand = true, []measure.Length{3 * yard}
	if p := solve(t, a, eighths(12, 2)); len(p.Rest) != 0 {
		t.Errorf("two kits are there: %+v", p)
	}
	if p := solve(t, a, eighths(12, 3)); len(p.Rest) != 1 || p.Rest[0].Count != 1 || !p.Proved {
		t.Errorf("the third is missing: %+v", p)
	}
	// Of 1 3/8 and 1 1/2 yd a pair comes out of the part-bolt; no order helps.
	if p := solve(t, a, eighths(12, 1), eighths(11, 2)); len(p.Rest) != 1 || p.Rest[0] != (Pieces{1, 1}) {
		t.Errorf("the shortest is missing: %+v", p)
	}
}

func TestTooLong(t *testing.T) {
	a := fifteen(100)
	_, err := Solve(a, []Want{eighths(4, 1), {Length: a.Usable(0) + 1, Count: 1}})
	if e := new(TooLong); !errors.As(err, &e) || e.Want != 1 || e.Longest != a.Usable(0) {
		t.Errorf("%v", err)
	}
	if p := solve(t, a, Want{Length: a.Usable(0), Count: 1}); p.Order[0] != 1 {
		t.Errorf("all that a bolt holds: %+v", p)
	}
}

// Worked by hand: twelve kits of 1 3/8 yd take two bolts, of 1 1/4 yd one; with
// thirteen kits, or with 1 % lost, the eighth saves nothing.
func TestAnEighthLess(t *testing.T) {
	for _, c := range []struct {
		loss  int64
		count int
		want  int
	}{{0, 12, 1}, {0, 13, 0}, {100, 12, 0}, {100, 11, 1}, {0, 10, 0}} {
		a, wants := fifteen(c.loss), []Want{eighths(11, c.count), eighths(1, 0)}
		got := shorter(t, a, wants, solve(t, a, wants...))
		if len(got) != c.want {
			t.Errorf("%+v: %+v", c, got)
		}
		if len(got) == 1 && (got[0].Want != 0 || got[0].Cost != 15 || got[0].Plan.Order[0] != 1) {
			t.Errorf("%+v: %+v", c, got)
		}
	}
	// Eleven kits of 1 3/8 yd take a bolt of 15 and one of 2 yd, eleven of 1 1/4 yd one
	// of 15 yd: a bolt saved. Six of 1 3/8 yd take a bolt of 15 yd, of 1 1/4 yd one of
	// 8 yd: a shorter bolt, and none saved.
	b, kits := Article{Offers: []Offer{{15 * yard, 15}, {2 * yard, 2}}}, []Want{eighths(11, 11)}
	if got := shorter(t, b, kits, solve(t, b, kits...)); len(got) != 1 || got[0].Cost != 2 {
		t.Errorf("the short bolt: %+v", got)
	}
	b, kits = Article{Offers: []Offer{{15 * yard, 15}, {8 * yard, 8}}}, []Want{eighths(11, 6)}
	if p, less := solve(t, b, kits...), solve(t, b, eighths(10, 6)); p.Length != 15*yard || less.Length != 8*yard {
		t.Errorf("six kits: %+v, %+v", p, less)
	}
	if got := shorter(t, b, kits, solve(t, b, kits...)); got != nil {
		t.Errorf("a shorter bolt: %+v", got)
	}
	a, wants := fifteen(0), []Want{{Length: 11 * yard / 8, Count: 12}}
	if got := shorter(t, a, wants, solve(t, a, wants...)); got != nil {
		t.Errorf("without a grid: %+v", got)
	}
}

func TestPacks(t *testing.T) {
	for _, c := range [][5]int64{
		{20, 0, 0, 0, 20}, {20, 20, 12, 6, 0}, {20, 19, 0, 0, 1}, {20, 19, 12, 0, 12}, {20, 8, 12, 0, 12}, {20, 7, 12, 0, 13}, {20, 7, 12, 12, 24}, {24, 0, 0, 12, 24},
	} {
		if got := Packs(c[0], c[1], c[2], c[3]); got != c[4] {
			t.Errorf("%v: %d", c, got)
		}
	}
}
