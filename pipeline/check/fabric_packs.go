package check

import (
	"fmt"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// eachPrintedPack runs a rule over the precuts that have both a printed and a
// derived number of packs.
func eachPrintedPack(rule func(*Pass, *derive.Fabric, plan.PrintedCount)) func(*Pass) {
	return func(p *Pass) {
		if p.Size.Of.Printed == nil {
			return
		}
		for _, said := range p.Size.Of.Printed.Precuts {
			if f := p.Size.Fabric(said.Of.Text); f != nil && f.Form == plan.Precut && f.Err == nil {
				rule(p, f, said)
			}
		}
	}
}

func packShort(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	least, how := int64(0), ""
	switch f.PackZone(int64(said.N)) {
	case derive.Impossible:
		least, how = f.LeastPieces(), "by the area alone of what is cut"
	case derive.OutOfStrips:
		least, how = f.FloorPieces(), "however they are cut into strips and pieces"
	case derive.PlainShort:
	default:
		return
	}
	needed := fmt.Sprintf("%s%d %s needed", p.atLeast(f), f.Sheets.Count, is(int64(f.Sheets.Count)))
	switch {
	case least == 0 && f.FloorPieces() < int64(f.Sheets.Count):
		needed = fmt.Sprintf("the plain method, which the plan says it prints, cuts into %s%d", p.atLeast(f), f.Sheets.Count)
	case least > 0 && least < int64(f.Sheets.Count):
		needed = fmt.Sprintf("%s cuts into %s%d, and at least %d %s needed %s", method(f), p.atLeast(f), f.Sheets.Count, least, is(least), how)
	}
	p.wrongPacks(f, f, said, Finding{Message: fmt.Sprintf("%s; %s", p.printedPacks(f, said), needed)})
}

// printedPacks begins the message of a rule about printed packs.
func (p *Pass) printedPacks(f *derive.Fabric, said plan.PrintedCount) string {
	return fmt.Sprintf("the pattern prints %s of %q with %s", count(said.N, "pack"), f.Role.Text, count(said.N*f.Pack.N, "piece"))
}

// unsettledPacks: no layout fits, and none is proved impossible.
func unsettledPacks(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	if !p.Size.SureOfCloth(f) || f.PackZone(int64(said.N)) != derive.Unsettled {
		return
	}
	none := ""
	if floor := f.FloorPieces(); floor > 0 {
		none = fmt.Sprintf(", and none into fewer than %d is possible", floor)
	}
	p.wrongPacks(f, f, said, Finding{
		Message: fmt.Sprintf("%s; the best layout found cuts into %d%s%s: whether the printed packs are enough is not settled%s",
			p.printedPacks(f, said), f.PackedSheets().Layout.Count, p.asBoxes(f), none, within(f.PackedSheets().Spent)),
	})
}

// wrongPacks reports packs that are printed wrongly, with as many as some figures
// take of the fabric, and what is then left where that is printed, too, and is
// another number.
func (p *Pass) wrongPacks(f, takes *derive.Fabric, said plan.PrintedCount, finding Finding) {
	edits := []diag.Edit{of(p.putCount(strings.TrimSpace("print "+p.atLeast(f)), said.At, takes.Packs), things(takes.Packs, "pack"))}
	left := takes.Packs*int64(f.Pack.N) - int64(f.Sheets.Count)
	if printed, ok := printedFor(p.Size.Of.Printed.Left, f.Role.Text); ok && int64(printed.N) != left && p.Size.SureOfCloth(f) {
		edits = append(edits, of(p.putCount("print", printed.At, left), "left over"))
		finding.Related = append(finding.Related, Related{printed.At, "what is printed as left over"})
	}
	finding.Ways, finding.About = ways(mend(edits...)), cloth(f)
	p.Report(said.At, finding)
}

func packTight(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	if !p.Size.SureOfCloth(f) || f.PackZone(int64(said.N)) != derive.Tight {
		return
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; the plain method cuts into %d, and only the packed layout printed on sheet %q does with %d",
			p.printedPacks(f, said), f.Sheets.Count, p.Size.CutList(), f.PackedSheets().Layout.Count),
		Ways:  ways(p.printMany(said.At, f.Packs, "pack"), p.cutAs(f, "packed", "and print its cut list")),
		About: cloth(f),
	})
}

// packsAsked is the fabric as the printed packs may ask most of it.
func (p *Pass) packsAsked(f *derive.Fabric, said plan.PrintedCount) *derive.Fabric {
	if int64(said.N) > f.Packs {
		return p.mostPacks(f)
	}
	return f
}

// tooManyPacks reports whether more packs are printed than anything asks for.
func (p *Pass) tooManyPacks(f *derive.Fabric, said plan.PrintedCount) bool {
	return int64(said.N) > p.packsAsked(f, said).Packs && p.Size.SureOfCloth(f)
}

func packsOver(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	if !p.tooManyPacks(f, said) {
		return
	}
	most := p.packsAsked(f, said)
	p.wrongPacks(f, most, said, Finding{
		Level: surplus(int64(said.N), most.Packs, surplusPacks),
		Message: fmt.Sprintf("the pattern prints %s of %q; the %s needed %s in %s", count(said.N, "pack"), f.Role.Text,
			count(most.Sheets.Count, "piece"), is(int64(most.Sheets.Count)), count(int(most.Packs), "pack")),
	})
}
