package derive

import "yardproof/schema/plan"

// Laying is the walk from the layout down to the fabric: how each part is turned,
// and what was laid.
type Laying struct {
	s     *Size
	turns map[string]Turns
	laid  []Laid
}

// Cell passes turns on to the part in a cell, which the cell turns further.
func (l *Laying) Cell(c plan.Cell, of Turns) {
	n := l.turns[c.Part.Text]
	n.add(of, c.Turn)
	l.turns[c.Part.Text] = n
}

// row lays the cells of a row. Triangles of 60 degrees point up and down in turn.
func (l *Laying) row(row []plan.Cell, n Turns) {
	slanted := l.s.slanted(row)
	for i, c := range row {
		if slanted && i > 0 {
			c.Turn = 0
			if (i%2 == 0) != (row[1].Turn == 180) {
				c.Turn = 180
			}
		}
		l.Cell(c, n)
	}
}

// roles are the fabrics of a set's strips where the plan names them, each once.
func (set *Set) roles() []plan.Text {
	var roles []plan.Text
	seen := map[*Fabric]bool{}
	for _, s := range set.Strips {
		if !seen[s.Fabric] {
			seen[s.Fabric] = true
			roles = append(roles, s.At)
		}
	}
	return roles
}

// Place lists a directional fabric where some places are wrong: those at 45
// degrees, and of the others those that wrong tells.
func (l *Laying) Place(role, of plan.Text, way Way, n Turns, wrong Wrongly) {
	f := l.s.byFabric[role.Text]
	if f == nil {
		return
	}
	l.list(role, of, Slanted, n.total(), n.slanted())
	l.list(role, of, way, n.total(), wrong(n.quarter(), f))
}

// list lists a directional fabric where some places are wrong.
func (l *Laying) list(role, of plan.Text, way Way, places, wrong int64) {
	f := l.s.byFabric[role.Text]
	if f == nil || !f.Directional() || wrong == 0 {
		return
	}
	at := role.At
	if way == Slanted || way == Untold {
		at = of.At
	}
	for _, other := range l.laid {
		if other.Fabric == f && other.Of == of && other.Way == way {
			return // both sets of a tube, or both squares of a pair
		}
	}
	l.laid = append(l.laid, Laid{Fabric: f, Of: of, At: at, Way: way, Places: places, Wrong: wrong})
}

// Untold lists all directional fabrics of a part whose making is not known
// here.
func (l *Laying) Untold(p *Part) {
	seen := map[string]bool{}
	var visit func(p *Part)
	visit = func(q *Part) {
		for _, in := range q.Operation.Ingredients() {
			if in.Fabric {
				l.list(in.Name, p.Name, Untold, p.Needed, p.Needed)
				continue
			}
			if next := l.s.byName[in.Name.Text]; next != nil && !seen[in.Name.Text] {
				seen[in.Name.Text] = true
				visit(next)
			}
		}
	}
	visit(p)
}
