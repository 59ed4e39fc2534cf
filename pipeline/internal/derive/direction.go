package derive

import (
	"yardproof/pipeline/internal/piecing"
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

// turns counts the places of a part by how far it is turned in the quilt:
// eighth turns clockwise.
type turns [8]int64

func (n turns) total() (sum int64) {
	for _, k := range n {
		sum += k
	}
	return sum
}

// slanted is how many places lie at 45 degrees.
func (n turns) slanted() int64 { return n[1] + n[3] + n[5] + n[7] }

// quarter is the places that do not, by quarter turns.
func (n turns) quarter() quarters { return quarters{n[0], n[2], n[4], n[6]} }

// add counts n places whose own turns are given, each turned further.
func (n *turns) add(of turns, degrees int) {
	for i, k := range of {
		to := &n[(i+degrees/45)%8]
		*to = min(*to+k, countless)
	}
}

// turned is all places turned further.
func (n turns) turned(degrees int) (m turns) {
	m.add(n, degrees)
	return m
}

// quarters counts places by quarter turns clockwise.
type quarters [4]int64

// Directions lists the directional prints that do not lie upright everywhere.
func (s *Size) Directions() []Laid {
	d := director{s: s, turns: map[string]turns{}}
	if !s.Top.Known {
		return nil
	}
	d.layout()
	for i := len(s.Parts) - 1; i >= 0; i-- {
		if p := s.Parts[i]; p.Needed > 0 && p.Known {
			d.part(p)
		}
	}
	d.around()
	return d.laid
}

// director walks from the layout down to the fabric.
type director struct {
	s     *Size
	turns map[string]turns
	laid  []Laid
}

func (d *director) layout() {
	g := d.s.Of.Layout.Grid
	if g == nil {
		return
	}
	d.set(d.s.Of.Layout.Setting, plan.Text{Text: "layout", At: g.At}, turns{1})
	for _, b := range d.s.Top.Borders {
		d.units(b, turns{1})
	}
}

func (d *director) cell(c plan.Cell, of turns) {
	n := d.turns[c.Part.Text]
	n.add(of, c.Turn)
	d.turns[c.Part.Text] = n
}

// part passes a part's turns on to what it is made of, or lays its fabric.
func (d *director) part(p *Part) {
	n := d.turns[p.Name.Text]
	if p.Mirrored > 0 && halves(p.Operation) {
		d.untold(p) // which half of a pair a mirror image takes is not told
		return
	}
	switch op := p.Operation.(type) {
	case plan.Cut:
		d.cut(p, op, n)
	case plan.WholeStrip:
		d.place(op.Fabric, p.Name, Turned, n, quarters.turned)
	case plan.StripSet:
		if op.Angle.Given() {
			d.untold(p)
			return
		}
		for _, role := range distinctRoles(d.s.stripsOf(op)) {
			d.place(role, p.Name, Turned, n, quarters.turned)
		}
	case plan.Tube:
		d.tube(p, n)
	case plan.HalfSquares:
		d.halfSquares(p, op, n)
	case plan.TriangleSquare:
		for i, name := range op.Of {
			d.cell(plan.Cell{Part: name, Turn: i * 360 / len(op.Of)}, n)
		}
	case plan.Rows:
		for _, row := range op.Rows {
			d.row(row, n)
		}
	case plan.Trim:
		d.cell(plan.Cell{Part: op.Part}, n)
	case plan.Setting:
		d.set(op, p.Name, n)
	case plan.Bordered:
		d.cell(plan.Cell{Part: op.Part}, n)
		d.bordered(p, n)
	default:
		d.unit(p, n)
	}
}

// row lays the cells of a row. Triangles of 60 degrees point up and down in turn.
func (d *director) row(row []plan.Cell, n turns) {
	slanted := d.s.slanted(row)
	for i, c := range row {
		if slanted && i > 0 {
			c.Turn = 0
			if (i%2 == 0) != (row[1].Turn == 180) {
				c.Turn = 180
			}
		}
		d.cell(c, n)
	}
}

// tube lays the sets of a tube, whose squares are cut on the bias; how the print
// lies in one that is set on point is not told.
func (d *director) tube(p *Part, n turns) {
	for _, set := range p.Tube.Sets {
		for _, role := range distinctRoles(set.Operation.(plan.StripSet).Strips) {
			d.lay(role, p.Name, Slanted, n.total(), n.total()-n.slanted())
			d.lay(role, p.Name, Untold, n.total(), n.slanted())
		}
	}
}

// stripsOf are the strips of a set as written, or of the set that segments are
// cut from.
func (s *Size) stripsOf(op plan.StripSet) []plan.Strip {
	if of := s.byName[op.Of.Text]; op.Of.Given() && of != nil {
		op, _ = of.Operation.(plan.StripSet)
	}
	return op.Strips
}

// distinctRoles are the fabrics of a set's strips, each once.
func distinctRoles(strips []plan.Strip) []plan.Text {
	var roles []plan.Text
	seen := map[string]bool{}
	for _, s := range strips {
		if !seen[s.Fabric.Text] {
			seen[s.Fabric.Text] = true
			roles = append(roles, s.Fabric)
		}
	}
	return roles
}

// wrongly is how many of some places lie as the print may not.
type wrongly func(quarters, *Fabric) int64

// turned is where each piece is turned with what it is sewn into.
func (n quarters) turned(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return n[1] + n[3]
	}
	return n[1] + n[2] + n[3]
}

func (d *director) cut(p *Part, op plan.Cut, n turns) {
	if op.Each() < op.Halving.Triangles() {
		d.place(op.Fabric, p.Name, Halves, n, chosen(op))
		return
	}
	switch op.Halving {
	case plan.CutOnce:
		d.place(op.Fabric, p.Name, Halves, n, quarters.opposite)
	case plan.CutTwice:
		d.place(op.Fabric, p.Name, Halves, n, quarters.around)
	default:
		d.place(op.Fabric, p.Name, Turned, n, quarters.turned)
	}
}

// chosen is where so many triangles of each square are used, and may be any of
// them: a square gives one for each way that it points, once as good as two
// where the print is two-way. As many as there are squares can point one way;
// the others stand wrong. Of one triangle a square none does, as the square
// is cut for it. Derived from geometry.
func chosen(op plan.Cut) wrongly {
	return func(n quarters, f *Fabric) (wrong int64) {
		squares := piecing.Batches(n[0]+n[1]+n[2]+n[3], op.Each())
		if f.Print == plan.TwoWay {
			return max(0, n[0]+n[2]-2*squares) + max(0, n[1]+n[3]-2*squares)
		}
		for _, k := range n {
			wrong += max(0, k-squares)
		}
		return wrong
	}
}

// opposite is where pieces come in pairs half a turn apart, each quarter turn cut
// separately: the two of a pair serve places half a turn apart, and what is over
// of one kind stands on its head.
func (n quarters) opposite(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return 0
	}
	return gap(n[0], n[2])/2 + gap(n[1], n[3])/2
}

// around is where four come together, a quarter turn apart each.
func (n quarters) around(f *Fabric) int64 {
	if f.Print == plan.TwoWay {
		return n.crossed(f)
	}
	each := (n[0] + n[1] + n[2] + n[3] + 3) / 4
	wrong := int64(0)
	for _, k := range n {
		wrong += max(0, k-each)
	}
	return wrong
}

// crossed is where two come together a quarter turn apart, each as good upside
// down.
func (n quarters) crossed(*Fabric) int64 { return gap(n[0]+n[2], n[1]+n[3]) / 2 }

func gap(a, b int64) int64 { return max(a-b, b-a) }

// halfSquares: the first fabric's square lies upright. Two at a time, one unit
// keeps its upper left half and one its lower right; the second fabric opens
// over the diagonal, so its square lies sideways to come out upright, and does
// in both. Eight at a time, both diagonals are sewn: where it opens upwards
// over one it opens downwards over the other. Four at a time, the units' edges
// are on the bias. Derived from geometry.
func (d *director) halfSquares(p *Part, op plan.HalfSquares, n turns) {
	for i, role := range op.Fabrics {
		f := d.s.byFabric[role.Text]
		if f == nil {
			continue
		}
		switch {
		case op.AtATime == 4:
			d.place(role, p.Name, Paired, n.turned(45), quarters.around)
		case op.AtATime == 8 && i == 1 && f.Print == plan.OneWay:
			d.place(role, p.Name, Opened, n, func(q quarters, _ *Fabric) int64 { return (q[0] + q[1] + q[2] + q[3]) / 2 })
		case op.AtATime == 8:
			d.place(role, p.Name, Paired, n, quarters.around)
		default:
			d.place(role, p.Name, Paired, n, quarters.opposite)
		}
	}
}

// place lists a directional fabric where some places are wrong: those at 45
// degrees, and of the others those that wrong tells.
func (d *director) place(role, of plan.Text, way Way, n turns, wrong wrongly) {
	f := d.s.byFabric[role.Text]
	if f == nil {
		return
	}
	d.lay(role, of, Slanted, n.total(), n.slanted())
	d.lay(role, of, way, n.total(), wrong(n.quarter(), f))
}

// lay lists a directional fabric where some places are wrong.
func (d *director) lay(role, of plan.Text, way Way, places, wrong int64) {
	f := d.s.byFabric[role.Text]
	if f == nil || !f.Directional() || wrong == 0 {
		return
	}
	at := role.At
	if way == Slanted || way == Untold {
		at = of.At
	}
	for _, l := range d.laid {
		if l.Fabric == f && l.Of == of && l.Way == way {
			return // both sets of a tube, or both squares of a pair
		}
	}
	d.laid = append(d.laid, Laid{Fabric: f, Of: of, At: at, Way: way, Places: places, Wrong: wrong})
}

// untold lists all directional fabrics of a part whose making is not known
// here.
func (d *director) untold(p *Part) {
	seen := map[string]bool{}
	var visit func(p *Part)
	visit = func(q *Part) {
		for _, in := range q.Operation.Ingredients() {
			if in.Fabric {
				d.lay(in.Name, p.Name, Untold, p.Needed, p.Needed)
				continue
			}
			if next := d.s.byName[in.Name.Text]; next != nil && !seen[in.Name.Text] {
				seen[in.Name.Text] = true
				visit(next)
			}
		}
	}
	visit(p)
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
func (d *director) around() {
	for _, b := range d.s.Top.Borders {
		if b.Units != nil {
			continue
		}
		strips, sideways := b.lying()
		d.lay(b.Said.Fabric, b.Said.Name, b.way(), strips, sideways)
	}
	if b := d.s.Backing; b != nil && b.Known && !b.Lengthwise {
		d.lay(b.Said.Fabric, plan.Text{Text: "backing", At: b.Said.At}, Sideways, b.Panels, b.Panels)
	}
}
