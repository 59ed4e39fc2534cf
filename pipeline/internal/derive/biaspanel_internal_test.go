package derive

import (
	"math/rand"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Panels that are found give what is wanted, fit the cloth, and with one strip
// or one panel less would not: the search leaves nothing over.
func TestBiasPanelsGiveWhatIsWanted(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	in := measure.Inch
	found := 0
	for range 120 {
		f := &Fabric{Fabric: &plan.Fabric{}, Width: measure.Length(36+r.Intn(8)) * in, line: in / 8, biasGrid: in / 2}
		bias := &OnBias{Width: measure.Length(2+r.Intn(5)) * in / 2, Seam: in / 4}
		n := Need{Count: 1, Free: true, OnBias: bias}
		if r.Intn(2) == 0 {
			n.Count, bias.Length = int64(1+r.Intn(80)), measure.Length(3+r.Intn(14))*in
		} else {
			bias.Joined = measure.Length(40 + r.Intn(400)).Surd().Mul(in.Surd())
		}
		p, ok := f.panels(n)
		if !ok {
			continue
		}
		found++
		if p.Across > f.Width || p.Across.Surd().Cmp(p.Wide()) < 0 || p.High > f.Width || !p.gives(n, p.Strips) {
			t.Fatalf("%+v from %v: %+v", n, f.Width, p)
		}
		if p.Strips > 0 && p.gives(n, p.Strips-1) {
			t.Errorf("%+v: %+v has a strip too many", n, p)
		}
		fewer := p
		if fewer.Count--; fewer.Count > 0 && fewer.gives(n, p.Strips) {
			t.Errorf("%+v: %+v is one panel too many", n, p)
		}
	}
	if found < 100 {
		t.Errorf("only %d of 120 found", found)
	}
}
