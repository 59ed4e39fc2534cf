package check

import (
	"fmt"

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
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; %s", p.printedPacks(f, said), needed),
		Hint:    "print " + p.atLeast(f) + count(int(f.Packs), "pack"),
		About:   cloth(f),
	})
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
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; the best layout found cuts into %d%s%s: whether the printed packs are enough is not settled%s",
			p.printedPacks(f, said), f.PackedSheets().Layout.Count, p.asBoxes(f), none, within(f.PackedSheets().Spent)),
		Hint:  "print " + count(int(f.Packs), "pack"),
		About: cloth(f),
	})
}

func packTight(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	if !p.Size.SureOfCloth(f) || f.PackZone(int64(said.N)) != derive.Tight {
		return
	}
	p.Report(said.At, Finding{
		Message: fmt.Sprintf("%s; the plain method cuts into %d, and only the packed layout printed on sheet %q does with %d",
			p.printedPacks(f, said), f.Sheets.Count, p.Size.CutList(), f.PackedSheets().Layout.Count),
		Hint:  fmt.Sprintf("print %s, or say \"cutting\": \"packed\" for %q and print its cut list", count(int(f.Packs), "pack"), f.Role.Text),
		About: cloth(f),
	})
}

func packsOver(p *Pass, f *derive.Fabric, said plan.PrintedCount) {
	most := f
	if int64(said.N) > f.Packs {
		most = p.mostPacks(f)
	}
	if int64(said.N) <= most.Packs || !p.Size.SureOfCloth(f) {
		return
	}
	p.Report(said.At, Finding{
		Level: surplus(int64(said.N), most.Packs, surplusPacks),
		Message: fmt.Sprintf("the pattern prints %s of %q; the %s needed %s in %s", count(said.N, "pack"), f.Role.Text,
			count(most.Sheets.Count, "piece"), is(int64(most.Sheets.Count)), count(int(most.Packs), "pack")),
		Hint:  "print " + count(int(most.Packs), "pack"),
		About: cloth(f),
	})
}
