package check

import (
	"fmt"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// Rules about yardage that is less than its instructions take.
var shortChecks = []Check{
	{
		Rule: "fabric/plain-short", Level: diag.Error, Lesser: diag.Warning, Since: "0.1.0", Scope: Size,
		Summary: "the printed length is less than the plain method takes, and the plain method is what the pattern prints",
		Why:     "A plan that says \"cutting\": \"plain\" prints no layout. Its customer cuts each size from strips of its own: where those take 39 in and 1 yd is printed, she is 3 in short, though a clever layout of the same pieces fits 34 1/2 in. Where only some of what straightening the ends takes is lacking, and 1/2 in (1 cm) of it is left, it is a warning.",
		Fix:     "print the length that the plain method takes, or say \"cutting\": \"packed\" and print the layout",
		Run:     inZone(derive.PlainShort, plainShort),
	},
}

func plainShort(p *Pass, f *derive.Fabric, said plan.PrintedLength) {
	message := fmt.Sprintf("%s; the plain method, which the plan says it prints, takes %s", p.printedShort(f, said), p.atLeast(f)+p.breakdown(f))
	out := ways(p.printCloth(said, f))
	level := diag.Error
	switch packed, left := f.Packed(), f.Straightens(said.Length.Length); {
	case left >= 0:
		level = p.unstraight(left)
		message += fmt.Sprintf(": that leaves %s of the %s for squaring up", p.only(left.Surd()), p.needs(f.SquaringUp.Length))
	case said.Length.Length >= packed.Gross:
		out = append(out, p.cutAs(f, "packed", "and print the cut list"))
		message += fmt.Sprintf("; a packed layout would take %s", p.needs(packed.Gross))
	}
	p.Report(said.At, Finding{Level: level, Message: message, Ways: out, About: cloth(f)})
}
