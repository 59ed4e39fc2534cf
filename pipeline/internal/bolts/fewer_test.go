package bolts

import (
	"slices"
	"testing"
)

// Worked by hand: sixteen kits of 1 1/4 yd take 20 yd, which are two bolts of 10 yd
// or one of 20. Ten and a half yards each leave no choice: nothing of 20 yd holds two,
// and the kits take two bolts of 15.
func TestFewerBoltsAtTheSameCost(t *testing.T) {
	a := Article{Offers: []Offer{{5 * yard, 5}, {10 * yard, 10}, {15 * yard, 15}, {20 * yard, 20}}}
	if p := solve(t, a, eighths(10, 16)); !slices.Equal(p.Order, []int{0, 0, 0, 1}) || !p.Proved {
		t.Errorf("twenty yards: %+v", p)
	}
	if p := solve(t, a, eighths(84, 2)); !slices.Equal(p.Order, []int{0, 0, 2, 0}) || !p.Proved {
		t.Errorf("two of 10 1/2 yd: %+v", p)
	}
	a.Offers[3].Cost = 21
	if p := solve(t, a, eighths(10, 16)); bolts(p.Order) != 2 || p.Cost != 20 {
		t.Errorf("the long bolt is dearer: %+v", p)
	}
	a.Offers[3].Cost, a.Multiple = 20, 20*yard
	if p := solve(t, a, eighths(10, 17)); !slices.Equal(p.Order, []int{0, 0, 0, 2}) || p.Cost != 40 {
		t.Errorf("by twenties: %+v", p)
	}
}

// A run of which the search alone leaves the order open, at 401.25 and no less than
// 386.25: cbc, an open-source integer program, proves that 386.25 is the least. The
// orders between the two are tried one by one.
func TestWhatTheSearchLeavesOpen(t *testing.T) {
	a := Article{Offers: []Offer{{20 * yard, 11850}, {15 * yard, 8925}, {8 * yard, 4575}}}
	if p := solve(t, a, eighths(8, 11), eighths(10, 5), eighths(4, 13), eighths(3, 14), eighths(11, 26)); p.Cost != 38625 || !p.Proved {
		t.Errorf("%+v", p)
	}
}
