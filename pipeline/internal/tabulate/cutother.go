package tabulate

import (
	"fmt"
	"strconv"

	"yardproof/pipeline/internal/cutting"
	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/say"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// another is a layout that the plan does not take.
type another struct {
	cutter
	id, name string // which it is
	list     report.Table
}

// other is the layout that the plan does not take, where it differs.
func (c cutter) other() (o another, ok bool) {
	if c.f.Form != plan.Yardage || !c.s.SureOfCloth(c.f) || len(c.f.Needs) == 0 || c.f.Packed().Length == c.f.Plain.Length {
		return o, false
	}
	o = another{cutter: c, id: "-packed", name: ", packed layout instead"}
	o.layout = c.f.Packed().Layout
	own, method := c.f.AmountOf(c.f.Plain.Length), "the plain method"
	if c.f.Cuts == plan.PackedCuts {
		o.id, o.name, o.layout = "-plain", ", plain method instead", c.f.Plain
		own, method = c.f.Packed().Amount, "the packed layout"
	}
	o.tabulate(o.lead(own, method))
	return o, true
}

// otherSheets is the cutting of a precut that the plan does not take, where
// it takes another number of pieces.
func (c cutter) otherSheets() (o another, ok bool) {
	if c.f.Form != plan.Precut || !c.s.SureOfCloth(c.f) || c.f.PackedSheets().Layout.Count == c.f.PlainSheets.Count {
		return o, false
	}
	o = another{cutter: c, id: "-packed", name: ", packed layout instead"}
	o.sheets = c.f.PackedSheets().Layout
	method := "the plain method"
	if c.f.Cuts == plan.PackedCuts {
		o.id, o.name, o.sheets = "-plain", ", plain method instead", c.f.PlainSheets
		method = "the packed layout"
	}
	o.list = o.empty(o.f.Role.Text+o.id, kit.Title(o.f)+o.name)
	o.list.Lead = []string{o.leadOfSheets(method)}
	if c.f.Cuts != plan.PackedCuts {
		o.list.Lead = append(o.list.Lead, c.knownSheets())
	}
	o.packs(&o.list)
	return o, true
}

// knownSheets says what is known of layouts with fewer pieces than the packed
// one.
func (c cutter) knownSheets() string {
	packed := c.f.PackedSheets()
	if packed.Status == cutting.Proved {
		return "Packed layout, proved: no cutting of the pieces into strips, and of these into what is needed, takes fewer."
	}
	return "Packed layout, not proved the fewest: no cutting into strips takes fewer than " + say.Many(int64(packed.Bound), "piece") + "."
}

// stacked is the layout with columns stacked in strips, where it saves a step.
func (c cutter) stacked() (o another, ok bool) {
	if c.f.Form != plan.Yardage || !c.s.SureOfCloth(c.f) || len(c.f.Needs) == 0 {
		return o, false
	}
	s := c.f.Stacked()
	if s == nil {
		return o, false
	}
	o = another{cutter: c, id: "-stacked", name: ", stacked layout instead"}
	o.layout = s.Layout
	lead := o.lead(c.f.Packed().Amount, "the packed layout")
	o.tabulate(sentence(s.Rounds()) + " " + lead + " " + c.straight(s.Length))
	return o, true
}

// straight says what is known of cuttings shorter than a layout that is no layout of
// strips.
func (c cutter) straight(length measure.Length) string {
	if bound := c.f.Straight(); bound < length {
		return "Not proved the shortest: no straight cutting goes below " + bound.AsThere(c.u) + c.usedWhole() + "."
	}
	return "Proved: no straight cutting is shorter" + c.usedWhole() + "."
}

// tabulate writes the layout's own cut list.
func (o *another) tabulate(lead string) {
	o.list = o.empty(o.f.Role.Text+o.id, kit.Title(o.f)+o.name)
	o.list.Lead = []string{lead}
	o.yardage(&o.list)
}

// lead says what the layout takes instead of what the plan's own method does,
// and what the length that the pattern prints is enough for.
func (o *another) lead(own derive.Amount, method string) string {
	takes, printed := o.f.AmountOf(o.layout.Length), o.f.Printed()
	buy := measure.FormatFabric(takes.Buy, o.u) + " to buy"
	if takes.Buy == own.Buy {
		buy += ", as for " + method
	} else {
		buy += " instead of " + method + "'s " + measure.FormatFabric(own.Buy, o.u)
	}
	return fmt.Sprintf("%s: %s of strips, so %s.", enough(printed, takes.Gross, own.Gross, measure.FormatCut(printed, o.u), method), o.layout.Length.AsCut(o.u), buy)
}

// leadOfSheets is lead of precut pieces.
func (o *another) leadOfSheets(method string) string {
	packs, _ := o.f.PacksOf(o.sheets.Count)
	printed := o.s.PrintedPacks(o.f)
	return enough(printed, packs, o.f.Packs, say.Many(printed, "pack"), method) + ": " +
		say.Many(int64(o.sheets.Count), "piece") + " cut into instead of " + strconv.Itoa(o.f.Sheets.Count) + "."
}

// enough says what a printed quantity is enough for: this layout, which takes
// the one, and that of the method, which takes the other.
func enough[Quantity int64 | measure.Length](printed, takes, own Quantity, says, method string) string {
	says = "The pattern prints " + says
	switch {
	case printed == 0:
		return "Another layout than the plan's"
	case printed < takes:
		return says + ", too little for this layout"
	case printed < own:
		return says + ", enough for this layout but not for " + method
	}
	return says + ", enough for this layout and for " + method
}
