package plan

import "fmt"

// Mention is a name written where a fabric or a part is meant.
type Mention struct {
	Ingredient
	By   string // who mentions it, as a message says it
	Made bool   // something is made of it: a kit only packs it
}

// Mentions are all names of fabrics and parts that a size's recipe and kit
// write, in the order of the vocabulary.
func (s *Size) Mentions() []Mention {
	var all []Mention
	add := func(by string, ingredients ...Ingredient) {
		for _, in := range ingredients {
			if in.Name.Given() {
				all = append(all, Mention{in, by, true})
			}
		}
	}
	for _, p := range s.Parts {
		add(fmt.Sprintf("%q", p.Name.Text), p.Operation.Ingredients()...)
	}
	add("the layout", s.Layout.Setting.Ingredients()...)
	for _, b := range s.Layout.Borders {
		add(fmt.Sprintf("border %q", b.Name.Text), b.Ingredients()...)
	}
	if b := s.Finish.Backing; b != nil {
		add("the backing", Ingredient{b.Fabric, true})
	}
	if b := s.Finish.Binding; b != nil {
		add("the binding", Ingredient{b.Fabric, true})
	}
	if b := s.Finish.Sleeve; b != nil {
		add("the sleeve", Ingredient{b.Fabric, true})
	}
	if b := s.Finish.Label; b != nil {
		add("the label", Ingredient{b.Fabric, true})
	}
	if s.Kit != nil {
		for _, f := range s.Kit.Fabrics {
			if f.Given() {
				all = append(all, Mention{Ingredient{f, true}, "the kit", false})
			}
		}
	}
	return all
}

// Strays are the mentions that name nothing of the kind that is meant.
func (s *Size) Strays() []Mention {
	known := map[Ingredient]bool{}
	for _, f := range s.Fabrics {
		known[Ingredient{Text{Text: f.Role.Text}, true}] = true
	}
	for _, p := range s.Parts {
		known[Ingredient{Text{Text: p.Name.Text}, false}] = true
	}
	var strays []Mention
	for _, m := range s.Mentions() {
		if !known[Ingredient{Text{Text: m.Name.Text}, m.Fabric}] {
			strays = append(strays, m)
		}
	}
	return strays
}
