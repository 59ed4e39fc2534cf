package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/piecing"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

var threadChecks = []Check{
	{
		Rule: "printed/no-stitch-class", Level: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "thread is planned or printed, and the plan's seam has no stitch class",
		Why:     "How much thread a seam takes depends on the stitch: 1,000 in of it take 64 m in lockstitch (ISO 4915 class 301) and some 430 m on a four-thread overlock (514). Without the class nothing can be derived or compared.",
		Fix:     "give the seam its stitch class",
		Run:     noStitchClass,
	},
	{
		Rule: "printed/thread", Level: diag.Error, Lesser: diag.Note, Since: "0.1.0", Scope: Size,
		Summary: "the printed thread is less than the seams take, or far more",
		Why:     "A lockstitch figure in an overlock plan is seven times short: 2,020 in of seam take about 148 m in class 301 and about 1,003 m in class 514, waste included. So do yards printed as metres leave the last seams without thread. More than a spool too much (the plan's own, or 100 m) is a note, and a warning where it is more than twice the need.",
		Fix:     "print what the seams take, with waste, for the stitch class that sews them",
		Run:     printedThread,
	},
}

func noStitchClass(p *Pass) {
	s := p.Size.Of
	if s.Seam.Stitch.Given() {
		return
	}
	at := s.Thread.At
	if at.Empty() && s.Printed != nil && len(s.Printed.Thread) > 0 {
		at = s.Printed.Thread[0].Of.At
	}
	if at.Empty() {
		return
	}
	p.Report(at, Finding{
		Message: "thread is given here, and the plan's seam has no stitch class",
		Ways: ways(
			choice(of(p.add(s.Seam.At, "stitch", `"301"`), "for lockstitch")),
			choice(of(p.add(s.Seam.At, "stitch", `"514"`), "for a four-thread overlock"))),
		Related: []Related{{s.Seam.At, "the plan's seam"}},
	})
}

func printedThread(p *Pass) {
	said := p.Size.Of.Printed
	if said == nil || len(said.Thread) == 0 || !p.Size.Top.Known || !p.Size.Of.Seam.Stitch.Given() {
		return
	}
	thread := p.Size.Thread
	for _, l := range said.Thread {
		if _, ok := piecing.StitchClassOf(l.Of.Text); !ok {
			continue // reference/unknown-printed
		}
		p.threadSaid(thread, l)
	}
}

// smallSpool is what a small spool holds, where the plan does not say what its
// thread is bought on. Common practice, no source.
const smallSpool = 100 * measure.Metre

// threadSaid compares a printed length of thread. Thread is bought by the
// spool, so that one more than is needed is no surplus.
func (p *Pass) threadSaid(t *derive.Thread, said plan.PrintedLength) {
	var need, seam measure.Surd
	figures, spool := "", measure.Length(0)
	for _, use := range t.Uses {
		if use.Class != said.Of.Text {
			continue
		}
		need, seam = need.Add(use.Total), seam.Add(use.Seam)
		figures = fmt.Sprintf("%s times the seam", use.Ratio.Number(2))
		if use.RatioFrom == piecing.Estimate && !use.Own {
			figures += " (an estimate)"
		}
		for _, n := range use.Needs {
			spool = max(spool, n.Holds)
		}
	}
	if spool == 0 {
		spool = smallSpool
	}
	enough := need.CeilTo(measure.Tick)
	level := diag.Error
	if over := said.Length.Length - enough; over > spool {
		level = surplus(said.Length.Length, enough, spool)
	} else if over >= 0 {
		return
	}
	p.Report(said.At, Finding{
		Level: level,
		Message: fmt.Sprintf("the pattern prints %s of thread for stitch class %s; %s of seam take %s, at %s and with waste", p.threadAsPrinted(said),
			said.Of.Text, seam.AsCut(p.Plan.Units), metresOf(need), figures),
		Ways: ways(p.printThread(said, need)),
	})
}

func (p *Pass) printThread(said plan.PrintedLength, need measure.Surd) diag.Way {
	if need.IsZero() {
		return mend(p.remove(said.At))
	}
	return noted(mend(p.putText("print", said.At, wholeMetres(need))), "or more, by position")
}

// wholeMetres is thread as it is bought, rounded up to whole metres, as a plan
// writes it.
func wholeMetres(x measure.Surd) string {
	return x.CeilTo(measure.Metre).Surd().Div(measure.Metre.Surd()).Number(0) + " m"
}

// threadAsPrinted is the length as the plan writes it, with metres beside
// yards.
func (p *Pass) threadAsPrinted(said plan.PrintedLength) string {
	n := p.Plan.Tree.At(p.Plan.Tree.PointerAt(said.At.Start))
	if n == nil || strings.HasSuffix(n.Text, "m") {
		return metresOf(said.Surd())
	}
	return fmt.Sprintf("%s (%s)", n.Text, metresOf(said.Surd()))
}

// metresOf prints a length of thread in metres, rounded up to a centimetre.
func metresOf(x measure.Surd) string {
	l := x.CeilTo(measure.Centimetre)
	text := fmt.Sprintf("%d.%02d", l/measure.Metre, l%measure.Metre/measure.Centimetre)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".") + " m"
}
