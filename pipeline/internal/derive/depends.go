package derive

import "yardproof/schema/plan"

// Quantity names something derived, so that a finding about it can be told
// from the findings that follow from it.
type Quantity struct {
	Kind Kind
	Name string // of the part or fabric
}

// Kind is the kind of a quantity.
type Kind int

// The kinds of quantity.
const (
	None     Kind = iota
	Geometry      // the unfinished size of a part
	Count         // how many of a part come out, and its strips, sets and tubes
	TopSize       // the size of the quilt top
	Finish        // a border by its name, or "backing", "batting", "binding" or "sleeve"
	Cloth         // what a fabric must supply
)

// effects are the quantities that are worked out from q directly: sizes pass
// up from ingredient to part to top, counts pass down from part to ingredient
// to fabric.
func (s *Size) effects(q Quantity) []Quantity {
	switch q.Kind {
	case Geometry:
		return s.sizeEffects(q.Name)
	case Count:
		return s.countEffects(q.Name)
	case TopSize:
		return append(s.finishing(), s.setOf()...)
	case Finish:
		return s.joined(q.Name)
	}
	return nil
}

func (s *Size) sizeEffects(name string) []Quantity {
	out := []Quantity{{Count, name}}
	for _, user := range s.users[name] {
		out = append(out, Quantity{Geometry, user.Name.Text})
	}
	for _, b := range s.Top.Blocks {
		if b.Part.Name.Text == name {
			out = append(out, Quantity{Kind: TopSize})
		}
	}
	for _, b := range s.Of.Layout.Borders {
		if b.Part.Text == name {
			out = append(out, Quantity{Finish, b.Name.Text})
		}
	}
	return out
}

func (s *Size) countEffects(name string) []Quantity {
	var out []Quantity
	p := s.byName[name]
	if p == nil {
		return nil
	}
	for _, in := range p.Operation.Ingredients() {
		out = append(out, quantityOf(in))
	}
	return out
}

// quantityOf is how much of an ingredient there has to be.
func quantityOf(in plan.Ingredient) Quantity {
	if in.Fabric {
		return Quantity{Cloth, in.Name.Text}
	}
	return Quantity{Count, in.Name.Text}
}

// finishing is all that goes round or behind the top.
func (s *Size) finishing() []Quantity {
	out := []Quantity{{Finish, "backing"}, {Finish, "batting"}, {Finish, "binding"}, {Finish, "sleeve"}}
	for _, b := range s.Of.Layout.Borders {
		out = append(out, Quantity{Finish, b.Name.Text})
	}
	return out
}

// setOf is the cloth of the sashes and setting triangles, which are as large
// as the blocks ask for.
func (s *Size) setOf() []Quantity {
	var out []Quantity
	for _, in := range s.Of.Layout.Setting.Ingredients() {
		if in.Fabric {
			out = append(out, Quantity{Cloth, in.Name.Text})
		}
	}
	return out
}

// joined is the cloth of a border, or of the binding or backing.
func (s *Size) joined(name string) []Quantity {
	var out []Quantity
	for _, b := range s.Of.Layout.Borders {
		if b.Name.Text == name {
			for _, in := range b.Ingredients() {
				out = append(out, quantityOf(in))
			}
		}
	}
	if b := s.Of.Finish.Backing; b != nil && name == "backing" {
		out = append(out, Quantity{Cloth, b.Fabric.Text})
	}
	if b := s.Of.Finish.Binding; b != nil && name == "binding" {
		out = append(out, Quantity{Cloth, b.Fabric.Text})
	}
	if b := s.Of.Finish.Sleeve; b != nil && name == "sleeve" {
		out = append(out, Quantity{Cloth, b.Fabric.Text})
	}
	return out
}
