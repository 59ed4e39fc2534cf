package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/say"
	"yardproof/schema/plan"
)

var directionChecks = []Check{
	{
		Rule: "fabric/direction", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "a one-way or two-way print cannot stand upright everywhere in the quilt",
		Why:     "Two half-square units from one pair of squares lie half a turn apart. Of a print of standing birds, six pairs for twelve units that all keep the same corner give six units of birds on their heads. Tubes lay every print at 45 degrees, and a block turned a quarter lays it on its side. A warning for borders, where many makers let the print run round, and for logs cut along the strips of a pack; of yardage those right and left of the centre are counted with their length along the fabric, where the print stands upright. A printed length that is enough only with all of them along the strips is a warning, too.",
		Fix:     "take a plain fabric there, take the turns out, or make the turned pieces a part of their own",
		Run:     direction,
	},
}

func direction(p *Pass) {
	for _, l := range p.Size.Directions() {
		message, hint := laidWords(l)
		f := Finding{
			Message: message, Ways: ways(advise(hint)),
			Related: []Related{{l.Fabric.Role.At, "the fabric"}},
		}
		if mayLieSo(l) {
			f.Level = diag.Warning
		}
		p.Report(l.At, f)
	}
	eachPrintedCloth(printedOnItsSide)(p)
}

// printedOnItsSide tells of a length that is enough only with logs in which the
// print lies on its side.
func printedOnItsSide(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	if !p.Size.SureOfCloth(f) || !enoughOnItsSide(f, said) {
		return
	}
	across := f.LogsAcross()
	takes := across.Gross
	how := "all logs cut along the strips"
	if takes > said.Length.Length {
		takes, how = across.Packed().Gross, how+" and a packed layout"
	}
	p.Report(said.At, Finding{
		Level: diag.Warning,
		Message: fmt.Sprintf("%s; %s takes %s where the %s print stands upright everywhere, and with %s %s is enough: it then lies on its side right and left of the centre",
			p.printedCloth(f, said), method(f), p.needs(f.Gross), f.Print, how, p.needs(takes)),
		Ways:    ways(p.printCloth(said, f), advise("accept this")),
		About:   cloth(f),
		Related: []Related{{f.Role.At, "the fabric"}},
	})
}

// enoughOnItsSide reports whether a length that is too short for logs in which a
// directional print stands upright is enough with all of them cut along the strips.
func enoughOnItsSide(f *derive.Fabric, said plan.PrintedLength) bool {
	if f.Err != nil || said.Length.Length >= f.Gross {
		return false
	}
	across := f.LogsAcross()
	return across != nil && across.CanBeCut(said.Length.Length)
}

// mayLieSo reports whether a print is only said to lie so by common practice, or
// is often let lie so: logs of a pack's strips cannot lie otherwise, and borders let a
// print run round.
func mayLieSo(l derive.Laid) bool {
	switch l.Way {
	case derive.Untold, derive.Beside, derive.Endways:
		return true
	}
	return l.Way == derive.Sideways && l.Of.Text != "backing"
}

// laidWords says how a print lies and the nearest way out.
func laidWords(l derive.Laid) (message, hint string) {
	print := fmt.Sprintf("the %s print %q", l.Fabric.Print, l.Fabric.Role.Text)
	switch l.Way {
	case derive.Turned:
		return fmt.Sprintf("%s of %q %s turned in the layout so that %s does not stand upright", someOf(l, "piece"), l.Of.Text, is(l.Wrong), print),
			"take the turns out, or make the turned ones a part of their own, cut with its sides exchanged"
	case derive.Paired:
		return fmt.Sprintf("%s of %q %s not show %s upright: the units of a pair of squares come out turned against one another", someOf(l, "unit"), l.Of.Text, say.Goes(l.Wrong, "does", "do"), print),
			"turn half of them by 180 degrees in the layout, or take a plain fabric"
	case derive.Opened:
		return fmt.Sprintf("%s of %q %s %s upside down: the second square opens upwards over one diagonal and downwards over the other", someOf(l, "unit"), l.Of.Text, say.Goes(l.Wrong, "shows", "show"), print),
			"sew the units two at a time, or take a plain fabric"
	case derive.Halves:
		return fmt.Sprintf("%s of %q %s not show %s upright: the triangles of a square lie in different corners", someOf(l, "triangle"), l.Of.Text, say.Goes(l.Wrong, "does", "do"), print),
			`use the corners evenly, use one triangle of each square ("used": 1), or take a plain fabric`
	case derive.Slanted:
		return fmt.Sprintf("%s of %q %s %s at 45 degrees", allOf(l, "piece"), l.Of.Text, say.Goes(l.Wrong, "shows", "show"), print),
			"take a plain fabric, or call it plain if the print may lie any way"
	case derive.Crossed:
		return fmt.Sprintf("%s of %q %s not show %s upright: the two hourglass units of a batch come out a quarter turn apart", allOf(l, "unit"), l.Of.Text, say.Goes(l.Wrong, "does", "do"), print),
			"turn half of them by 90 degrees in the layout, or take a plain fabric"
	case derive.Around:
		return fmt.Sprintf("%s of %q %s not show %s upright: the four geese of a batch come out a quarter turn apart each", allOf(l, "unit"), l.Of.Text, say.Goes(l.Wrong, "does", "do"), print),
			"make them one at a time, or take a plain fabric"
	case derive.Beside:
		return fmt.Sprintf("%s of %q %s %s on its side in the logs right or left of the centre, which are cut along the strips of the pack", allOf(l, "block"), l.Of.Text, say.Goes(l.Wrong, "shows", "show"), print),
			"take yardage or a plain fabric on these sides, or accept this"
	case derive.Folded:
		return fmt.Sprintf("%s of %q %s %s upside down: every fold turns half of the chain", allOf(l, "row"), l.Of.Text, say.Goes(l.Wrong, "shows", "show"), print),
			"take a plain fabric, or one printed both ways"
	case derive.Sideways:
		return sidewaysWords(l, print)
	case derive.Endways:
		return fmt.Sprintf("the strips of border %q are cut along the fabric, so that %s lies on its side along top and bottom of the quilt", l.Of.Text, print),
			"let it run round and accept this, or take a plain fabric"
	}
	return fmt.Sprintf("how %s lies in %q is not derived: whether it stands upright is not proved", print, l.Of.Text),
		"try it on paper, and accept this if it does"
}

// allOf is "3 of 8 units" or "all 8 units".
func allOf(l derive.Laid, what string) string {
	switch {
	case l.Wrong < l.Places:
		return someOf(l, what)
	case l.Places == 1:
		return "the one " + what
	}
	return "all " + count(int(l.Places), what)
}

// someOf is "3 of 8 units".
func someOf(l derive.Laid, what string) string {
	return fmt.Sprintf("%d of %s", l.Wrong, count(int(l.Places), what))
}

func sidewaysWords(l derive.Laid, print string) (message, hint string) {
	if l.Of.Text == "backing" {
		return fmt.Sprintf("the panels of the backing run across the quilt, so that %s lies on its side", print),
			`make the panels "lengthwise"`
	}
	return fmt.Sprintf("the strips of border %q are cut across the fabric, so that %s lies on its side along both sides of the quilt", l.Of.Text, print),
		"let it run round and accept this, or take a plain fabric"
}
