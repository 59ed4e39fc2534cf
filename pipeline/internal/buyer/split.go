package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// share cuts the strips of a part of several fabrics, or of several pieces,
// whose printed number does not say how many are of which. However they are
// shared out, the printed fabrics must hold so many.
func (r *reader) share(p *derive.Part) {
	if r.needs(p.Name) < 2 {
		return
	}
	said := r.strips(p.Name.Text, 1)
	stop := Stop{Short: Cloth, Figure: said, Part: p, About: count(p), Takes: said.N}
	recipe := int64(0)
	for _, f := range r.size.Fabrics {
		room, takes, cut := r.room(f, p, said.N)
		switch {
		case !cut:
			continue
		case room < 0:
			return
		case stop.Fabric == nil:
			stop.Fabric, stop.Limit = f, r.bought(f)
		default:
			stop.With = append(stop.With, r.bought(f))
		}
		stop.Has += room
		recipe += takes
	}
	if stop.Enough = recipe; said.N > recipe && stop.Has < said.N && stop.Fabric != nil {
		r.stop(stop)
	}
}

// room is how many strips for a part the printed fabric holds at most, beside
// all other strips that are cut from it, and how many the part takes of it at
// most, in any way of lying. The room is below 0 where nothing is known of it;
// cut tells whether the part is cut from the fabric.
func (r *reader) room(f *derive.Fabric, p *derive.Part, strips int64) (room, takes int64, cut bool) {
	narrowest := beyond
	for _, n := range f.Needs {
		if n.For != p.Name {
			continue
		}
		strip, most := ownStrip(f, n, strips)
		if n.Strip || strip.Count == 0 {
			return -1, 0, true
		}
		narrowest, takes, cut = min(narrowest, strip.Along), takes+most, true
	}
	bought := r.bought(f)
	if !cut || !bought.Printed() || !r.size.SureOfCloth(f) {
		return -1, takes, cut
	}
	s := supply{r: r, f: f, bought: bought, steps: r.steps(f), panels: r.panels(f)}
	if f.Form == plan.Precut {
		return bought.N * int64(f.Pack.N) * int64(f.StripWidth().Length/narrowest), takes, true
	}
	if f.Zone(bought.Width) < derive.Tight {
		return -1, takes, true
	}
	s.cleverly(f.Zone(bought.Width) == derive.Tight)
	left := f.ToCut(bought.Width).Surd().Sub(s.wholeStrips())
	if f.Repeat.Length > 0 {
		narrowest = measure.CeilTo(narrowest, f.Repeat.Length)
	}
	return max(0, measure.FloorDiv(left, narrowest.Surd())), takes, true
}
