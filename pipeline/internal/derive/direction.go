package derive

import (
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// Laid is how a directional print comes to lie in the quilt, in all places of
// one part, border or the backing. Pieces whose print stands upright are not
// listed.
type Laid struct {
	Fabric *Fabric
	Of     plan.Text // the part or border, or "backing"
	At     source.Range
	Way    Way
	Places int64 // pieces or units in the quilt
	Wrong  int64 // of them that lie as the print may not
}

// Way is why a print lies as it does.
type Way int

// The ways.
const (
	Turned   Way = iota // the layout turns the piece
	Paired              // two units of a pair of squares come out half a turn apart, eight a quarter
	Opened              // of eight units from a pair, the second fabric opens downwards in half
	Halves              // the triangles of a square lie in different corners
	Slanted             // the print lies at 45 degrees
	Crossed             // the two hourglass units of a batch are a quarter turn apart
	Around              // the four geese of a batch are a quarter turn apart each
	Beside              // the logs right and left of a centre lie along a pack's strips
	Folded              // a chain that is folded shows every other row upside down
	Sideways            // strips across the fabric run along the quilt's sides
	Endways             // strips along the fabric run along the quilt's top and bottom
	Untold              // how the print lies cannot be told
)

// Directions lists the directional prints that do not lie upright everywhere.
func (s *Size) Directions() []Laid {
	l := Laying{s: s, turns: map[string]Turns{}}
	if !s.Top.Known {
		return nil
	}
	l.layout()
	for i := len(s.Parts) - 1; i >= 0; i-- {
		if p := s.Parts[i]; p.Needed > 0 && p.Known {
			p.Room.Lay(&l, l.turns[p.Name.Text])
		}
	}
	l.around()
	return l.laid
}

func (l *Laying) layout() {
	g := l.s.Of.Layout.Grid
	if g == nil {
		return
	}
	l.set(l.s.Of.Layout.Setting, plan.Text{Text: "layout", At: g.At}, Turns{1})
	for _, b := range l.s.Top.Borders {
		l.units(b, Turns{1})
	}
}

// way is how the print lies in the strips of a border: cut across the fabric they
// carry it sideways up the sides of what is inside, cut along it sideways along
// top and bottom.
func (b *Border) way() Way {
	if b.Said.Lengthwise {
		return Endways
	}
	return Sideways
}

// around is borders and backing: the strips of a border carry the print sideways
// along two sides of the quilt, and panels across the quilt carry it sideways
// everywhere.
func (l *Laying) around() {
	for _, b := range l.s.Top.Borders {
		if b.Units != nil {
			continue
		}
		strips, sideways := b.lying()
		l.list(b.Said.Fabric, b.Said.Name, b.way(), strips, sideways)
	}
	if b := l.s.Backing; b != nil && b.Known && !b.Lengthwise {
		l.list(b.Said.Fabric, plan.Text{Text: "backing", At: b.Said.At}, Sideways, b.Panels, b.Panels)
	}
}
