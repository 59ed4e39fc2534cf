package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/caution"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

var publishChecks = []Check{
	{
		Rule: "publish/bedding", Level: diag.Error, Since: "0.1.0", Scope: Size,
		Summary: "a cot quilt is printed without the bare-cot caution",
		Why:     "The safest sleep for an infant is a bare cot, without quilts (US Consumer Product Safety Commission). A pattern for a 36 x 45 in cot quilt that does not say so sends a soft cover to where none belongs.",
		Fix:     "add bare-cot to the cautions, or give the size another use",
		Run:     bedding,
	},
	{
		Rule: "publish/cautions", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "a technique is used and the caution for it is not printed",
		Why:     "The maker learns from the pattern. A pin left in a tube that runs through an overlock breaks the knife and throws the pieces; a class of 8 has 8 rotary cutters on the table. A note while the plan is a draft, a warning while it is tested, an error once it is published.",
		Fix:     "add the missing keys to the cautions; the sheets then print their sentences",
		Run:     cautionsMissing,
	},
	{
		Rule: "publish/nothing-printed", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "for a size the plan neither gives the printed figures nor says that it is not printed",
		Why:     "What is not in the plan is not proved. A pattern in three sizes of which two have their figures here goes to print with the third as somebody typed it: 3 yd where 4 are needed. A note while the plan is a draft, a warning while it is tested, an error once it is published.",
		Fix:     "give what the pattern prints for the size, or write \"not printed\"",
		Run:     nothingPrinted,
	},
	{
		Rule: "publish/skill", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Plan,
		Summary: "the plan has no skill level",
		Why:     "It is on the cover and in every shop's list. A beginner who buys a quilt with 30 bias-edged squares for want of it asks for her money back. A note while the plan is a draft, a warning while it is tested, an error once it is published.",
		Fix:     "give the plan a skill level",
		Run:     skillMissing,
	},
}

// rootKey is the place of a key of the plan, or of the plan's opening bracket
// when it is not there.
func (p *Pass) rootKey(key string) source.Range {
	if p.Plan.Tree == nil {
		return p.Plan.At
	}
	if n := p.Plan.Tree.Get(key); n != nil {
		return n.Range
	}
	return p.Plan.Tree.Open()
}

func skillMissing(p *Pass) {
	if p.Plan.Skill.Given() {
		return
	}
	p.Report(p.rootKey("skill"), Finding{
		Level:   p.Ripe(),
		Message: fmt.Sprintf("this %s plan has no skill level", p.Plan.Status),
		Ways:    p.skills(),
	})
}

func bedding(p *Pass) {
	s := p.Size.Of
	if s.Use.Text != "cot" || hasText(s.Cautions, "bare-cot") {
		return
	}
	p.Report(s.Use.At, Finding{
		Message: fmt.Sprintf("size %q is for a cot and the caution bare-cot is not printed", s.Name.Text),
		Ways:    ways(p.addCautions("bare-cot")),
	})
}

func hasText(list []plan.Text, word string) bool {
	return slices.ContainsFunc(list, func(t plan.Text) bool { return t.Text == word })
}

func nothingPrinted(p *Pass) {
	s := p.Size.Of
	if s.Printed != nil || s.NotPrinted != (source.Range{}) {
		return
	}
	p.Report(s.Name.At, Finding{
		Level:   p.Ripe(),
		Message: fmt.Sprintf("size %q has no printed figures and does not say that it is not printed", s.Name.Text),
		Ways:    ways(advise(fmt.Sprintf("add %q to \"printed\" with its figures", s.Name.Text)), p.notPrinted(s.Name.Text)),
	})
}

// cautionsMissing lists what a size lacks in one finding, in the order in
// which cautions are printed. A cot's has a rule of its own.
func cautionsMissing(p *Pass) {
	s := p.Size.Of
	needed := p.Size.Cautions()
	var keys, reasons []string
	for _, key := range caution.Keys() {
		if key == "bare-cot" || !slices.Contains(needed, key) || hasText(s.Cautions, key) {
			continue
		}
		keys = append(keys, key)
		reasons = append(reasons, fmt.Sprintf("%s (%s)", key, technique(key)))
	}
	if len(keys) == 0 {
		return
	}
	p.Report(cautionsAt(s), Finding{
		Level:   p.Ripe(),
		Message: "not all cautions of the techniques used are printed: " + strings.Join(reasons, ", "),
		Ways:    ways(p.addCautions(keys...)),
	})
}

func cautionsAt(s *plan.Size) source.Range {
	if n := s.Tree.Get("cautions"); n != nil {
		return n.Range
	}
	return s.Tree.Open()
}

// technique says for what a caution is called for.
func technique(caution string) string {
	switch caution {
	case "rotary-cutter":
		return "fabric is cut"
	case "iron":
		return "seams are pressed"
	case "overlock", "pins":
		return "seams are overlocked"
	case "bias-edges":
		return "units have bias edges"
	case "unpick-tip":
		return "stitches cross the tips of tube squares"
	}
	return "the recipe calls for it"
}
