package plan

import (
	"fmt"
	"slices"
)

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

// once remembers the mentions of one size, and not of one that began as its copy.
type once struct {
	of       *Size
	mentions []Mention
}

// Once is Mentions with each name once from each who mentions it: the first time.
// A layout names one part in thousands of places.
func (s *Size) Once() []Mention {
	if s.once.of == s {
		return s.once.mentions
	}
	type said struct {
		name, by     string
		fabric, made bool
	}
	seen := map[said]bool{}
	all := s.Mentions()
	first := all[:0]
	for _, m := range all {
		if key := (said{m.Name.Text, m.By, m.Fabric, m.Made}); !seen[key] {
			seen[key] = true
			first = append(first, m)
		}
	}
	s.once = once{s, slices.Clone(first)}
	return s.once.mentions
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
	stray := func(m Mention) bool { return !known[Ingredient{Text{Text: m.Name.Text}, m.Fabric}] }
	if !slices.ContainsFunc(s.Once(), stray) {
		return nil
	}
	return slices.DeleteFunc(s.Mentions(), func(m Mention) bool { return !stray(m) })
}
