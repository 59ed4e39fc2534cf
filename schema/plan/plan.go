package plan

import (
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// Plan is one quilt plan: its identity and the recipe of every size.
type Plan struct {
	File *source.File
	Tree *jsontree.Node // the file as written, to work pointers out from places

	ID          Text
	Title       Text
	Description Text
	Revision    Text
	Status      Status
	StatusAt    source.Range
	Skill       Text // empty when the plan does not say
	Units       measure.Unit
	Cautions    []Text // keys of the cautions that the pattern prints
	At          source.Range

	Defaults   Defaults // what the plan need not say, with the project's own laid over
	Sizes      []Size   // in the order written; never empty
	Colourways []Colourway
}

// Colourway is a set of fabrics that the pattern is sold in besides the
// recipe's own.
type Colourway struct {
	Name  Text
	Title Text   // on the label; empty when the plan gives none
	Roles []Text // of the fabrics that it changes
}

// Colourway finds a colourway by name, nil when there is none.
func (p *Plan) Colourway(name string) *Colourway {
	for i := range p.Colourways {
		if p.Colourways[i].Name.Text == name {
			return &p.Colourways[i]
		}
	}
	return nil
}

// Text is a string of the plan and its place; empty when absent.
type Text struct {
	Text string
	At   source.Range
}

// Given reports whether the plan says anything here.
func (t Text) Given() bool { return t.Text != "" }

// Length is a length of the plan and its place.
type Length struct {
	measure.Length
	At source.Range
}

// Given reports whether the length comes from the plan or project rather than
// being absent. A default has the place of what it is a default for.
func (l Length) Given() bool { return l.Length != 0 || l.At != source.Range{} }

// Count is a whole number of the plan and its place.
type Count struct {
	N  int
	At source.Range
}

// Given reports whether the plan says this number.
func (c Count) Given() bool { return c.At != source.Range{} }

// Percent is an exact share in hundredths of a percent.
type Percent struct {
	BasisPoints int64
	At          source.Range
}

// Given reports whether the plan or project says this share: 0% is one, too.
func (p Percent) Given() bool { return p.At != source.Range{} }

// Status is how near a plan is to print; completeness rules bite harder as
// it nears.
type Status int

// The states of a plan, in order.
const (
	Draft Status = iota
	Testing
	Published
)

// String is the word the plan uses.
func (s Status) String() string { return [...]string{"draft", "testing", "published"}[s] }

// Size is one named size: the whole recipe after the size's patch.
type Size struct {
	Name Text           // the size's key
	Way  Text           // the colourway's key; empty for the recipe's own fabrics
	Tree *jsontree.Node // the merged recipe
	Ways []Size         // this size in every colourway
	once once

	Description Text
	Cautions    []Text // keys of the cautions that the pattern prints for this size

	Use     Text // bed, throw, wall, cot, play ...
	Seam    Seam
	Fabrics []Fabric
	Tools   Tools
	Parts   []Part
	Layout  Layout
	Finish  Finish
	Bed     *Bed // nil when the quilt is for none
	Thread  Thread
	Kit     *Kit     // nil when the plan has none
	Class   *Class   // nil when the pattern is not taught
	Printed *Printed // nil when nothing is printed for this size
	// NotPrinted is where the plan says that the size is not printed; empty
	// when it says nothing about the size at all.
	NotPrinted source.Range
}

// Fabric finds a fabric by role, nil when there is none.
func (s *Size) Fabric(role string) *Fabric {
	for i := range s.Fabrics {
		if s.Fabrics[i].Role.Text == role {
			return &s.Fabrics[i]
		}
	}
	return nil
}

// Part finds a part by name, nil when there is none.
func (s *Size) Part(name string) *Part {
	for i := range s.Parts {
		if s.Parts[i].Name.Text == name {
			return &s.Parts[i]
		}
	}
	return nil
}

// Seam is how two parts are joined.
type Seam struct {
	Allowance Length
	Stitch    Text // ISO 4915 stitch class: 301, 401, 504, 514 ...
	Pressing  Text
	Why       Text // where a join differs: the reason
	At        source.Range
}

// Overlocked reports whether the stitch class is an overedge one (ISO 4915
// class 500), which an overlock machine sews.
func (s Seam) Overlocked() bool { return len(s.Stitch.Text) == 3 && s.Stitch.Text[0] == '5' }
