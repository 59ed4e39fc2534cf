package buyer

import (
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// shareAll cuts the strips of parts, sashes and the like that are of several
// fabrics or pieces.
func (r *reader) shareAll() {
	seen := map[plan.Text]bool{}
	for _, f := range r.size.Fabrics {
		for _, n := range f.Needs {
			if !n.Strip && !n.First && !seen[n.For] {
				seen[n.For] = true
				r.share(n.For)
			}
		}
	}
}

// share cuts strips of which the printed number does not say how many are of
// which fabric or piece. However they are shared out, the printed fabrics must
// hold so many.
func (r *reader) share(by plan.Text) {
	if r.needs(by) < 2 {
		return
	}
	said := r.strips(by.Text, 1)
	stop := Stop{Short: Cloth, Figure: said, About: derive.Quantity{Kind: derive.TopSize}, Takes: said.N}
	if p := r.size.Part(by.Text); p != nil {
		stop.About = count(p)
	}
	recipe := int64(0)
	for _, f := range r.size.Fabrics {
		room, takes, cut := r.room(f, by, said.N)
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

// room is how many strips for something the printed fabric holds at most, beside
// all other strips that are cut from it, and how many it takes of it at most, in
// any way of lying. The room is below 0 where nothing is known of it; cut tells
// whether it is cut from the fabric.
func (r *reader) room(f *derive.Fabric, by plan.Text, strips int64) (room, takes int64, cut bool) {
	narrowest := beyond
	for _, n := range f.Needs {
		if n.For != by {
			continue
		}
		own := ownStrips(f, n)
		if n.Strip || len(own) == 0 {
			return -1, 0, true
		}
		most := int64(0)
		for _, l := range own {
			most = max(most, l.Count)
			if l.Count <= strips {
				narrowest = min(narrowest, l.Along)
			}
		}
		takes, cut = takes+most, true
	}
	bought := r.bought(f)
	if !cut || !bought.Printed() || narrowest == beyond || !r.size.SureOfCloth(f) {
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
