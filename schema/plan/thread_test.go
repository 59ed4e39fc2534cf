package plan_test

import (
	"strings"
	"testing"

	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// What a plan says of its thread lies over what the studio says, and that over
// 15 % waste; a cone may be longer than any other length of a plan.
func TestThreadOverProject(t *testing.T) {
	project, problems := readProject(t, sample(t, "studio.project.json"))
	if len(problems) > 0 {
		t.Fatal(lines(project.Tree, problems))
	}
	p, _ := read(t, sample(t, "everything-later.plan.json"), project)
	said := p.Sizes[0].Thread
	same(t, "waste of the size", said.Waste.BasisPoints, 1000)
	same(t, "ratio of the plan", said.Ratio("514").FloatString(1), "16.0")
	same(t, "cone, 5000 yd", said.Cone.Length, 5000*measure.Yard)
	same(t, "quilting", said.Quilting.Length, 90*measure.Metre)

	p, _ = read(t, sample(t, "lattice-walk.plan.json"), project)
	said = p.Sizes[0].Thread
	same(t, "waste of the project", said.Waste.BasisPoints, 2000)
	same(t, "ratio of the project", said.Ratio("514").FloatString(1), "16.5")
	same(t, "spool of the project", said.Spool.Length, 400*measure.Metre)
	same(t, "no class", said.Ratio("999") == nil, true)

	for name, none := range map[string]*plan.Project{"nil": nil, "empty": {}} {
		p, _ = read(t, sample(t, "lattice-walk.plan.json"), none)
		same(t, name+" project, waste", p.Sizes[0].Thread.Waste.BasisPoints, 1500)
	}
}

func TestThreadLengths(t *testing.T) {
	for text, right := range map[string]bool{
		"500 m": true, "500m": true, "1000 yd": true, "62.5 m": true, "60 1/2 yd": true,
		"500": false, "500 cm": false, "5 mm": false, "0 m": false, "m": false, "ten m": false, "500 in": false, "-5 m": false,
	} {
		_, problems := read(t, strings.Replace(sample(t, "everything-later.plan.json"), `"bobbin": "60 m"`, `"bobbin": "`+text+`"`, 1), nil)
		found := false
		for _, pr := range problems {
			found = found || pr.Code == plan.BadLength && strings.Contains(pr.Message, "no length of thread")
		}
		same(t, text, !found, right)
	}
}

// The finish is read with its kinds and what the plan leaves to be usual.
func TestFinishKinds(t *testing.T) {
	p, _ := read(t, sample(t, "everything-later.plan.json"), nil)
	f := p.Sizes[0].Finish
	same(t, "kind", f.Binding.Kind, plan.ContinuousBias)
	same(t, "single", f.Binding.Single, true)
	same(t, "curved", f.Binding.Curved, true)
	same(t, "finished", f.Binding.Finished.Length, measure.Centimetre)
	same(t, "square", f.Binding.Square.Length, 60*measure.Centimetre)
	same(t, "sleeve, shorter", f.Sleeve.Shorter.Length, 3*measure.Centimetre)
	same(t, "sleeve, widest", f.Sleeve.Widest.Length, 230*measure.Centimetre)
	same(t, "label", f.Label.Width.Length, 10*measure.Centimetre)
	same(t, "roll", f.Batting.Roll.Length, 240*measure.Centimetre)
	same(t, "step of the roll", f.Batting.Grid, 50*measure.Centimetre)
	b := p.Sizes[0].Bed
	same(t, "tuck taken away", b.Tuck.Given(), false)
	same(t, "drop", b.Drop.Length, 30*measure.Centimetre)

	bare := strings.Replace(sample(t, "everything-later.plan.json"), `"finished": "1", `, "", 1)
	bare = strings.Replace(bare, `, "shorter": "3", "hem": "1", "widest": "230"`, "", 1)
	p, _ = read(t, bare, nil)
	f = p.Sizes[0].Finish
	same(t, "finished as the seam", f.Binding.Finished.Length, p.Sizes[0].Seam.Allowance.Length)
	same(t, "usually shorter", f.Sleeve.Shorter.Length, measure.Centimetre*5/2)
}
