package cutting

import (
	"errors"
	"slices"
	"testing"
)

// Each answer that is spoilt in one way must be found out.
func TestSpoiltPlansAreFoundOut(t *testing.T) {
	p := bolts15(11, 21)
	p.Stocks = append(p.Stocks, Stock{Name: "end", Length: 24 * eighthYard, Count: 1})
	for what, spoil := range map[string]func(*LengthResult){
		"nothing is cut":           func(r *LengthResult) { r.Stocks, r.Cost = nil, 0 },
		"a kit is forgotten":       func(r *LengthResult) { r.Stocks[0].Cuts[0].Count--; r.Stocks[0].Left += 11 * eighthYard },
		"a bolt holds too many":    func(r *LengthResult) { r.Stocks[1].Cuts[0].Count++; r.Stocks[1].Left -= 11 * eighthYard },
		"what is left":             func(r *LengthResult) { r.Stocks[0].Left++ },
		"an end is cut twice":      func(r *LengthResult) { r.Stocks[0].Repeat++ },
		"it costs nothing":         func(r *LengthResult) { r.Cost = 0 },
		"it costs less than bound": func(r *LengthResult) { r.Bound = r.Cost + 1 },
	} {
		r := lengths(t, p)
		r.Stocks = slices.Clone(r.Stocks)
		for i := range r.Stocks {
			r.Stocks[i].Cuts = slices.Clone(r.Stocks[i].Cuts)
		}
		if err := p.recount(r); err != nil {
			t.Fatalf("%s: %v before", what, err)
		}
		spoil(&r)
		if f := new(Fault); !errors.As(p.recount(r), &f) {
			t.Errorf("%s: not found out in %+v", what, r)
		}
	}
}
