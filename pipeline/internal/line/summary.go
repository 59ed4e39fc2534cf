package line

import (
	"fmt"
	"math/big"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/supply"
	"yardproof/schema/measure"
	"yardproof/schema/plan"
)

// Summary is what the line's sheets keep of a plan. It is kept from run to run,
// as JSON.
type Summary struct {
	Sizes []SizeSummary `json:"sizes,omitempty"`
}

// SizeSummary is one size of a plan in the line.
type SizeSummary struct {
	Name     string   `json:"name"`
	Finished string   `json:"finished,omitempty"` // in words; empty when it is not known
	Fabric   string   `json:"fabric,omitempty"`   // in words
	Slack    string   `json:"slack,omitempty"`    // the least, and what has it; empty when nothing has a yield
	Cost     *big.Rat `json:"cost,omitempty"`     // of a kit, like Price; nil when there is none
	Price    *big.Rat `json:"price,omitempty"`
	Kit      *Kit     `json:"kit,omitempty"` // what both are worked out from

	Planned *supply.Kit `json:"planned,omitempty"` // what the kits that are planned take; nil when none are
}

// Summarise keeps what the line's sheets need of a plan: of each size, with its
// kits after it where there are any.
func Summarise(sizes []*derive.Size, kits []*kit.Kit, project *plan.Project) Summary {
	var sum Summary
	for _, s := range sizes {
		of := kit.Costed(kits, s)
		if len(of) == 0 || of[0].Size.Of.Way.Given() {
			sum.Sizes = append(sum.Sizes, summarise(s))
		}
		for _, k := range of {
			one := summarise(k.Size)
			one.Cost, one.Price, one.Kit, one.Planned = k.Costs.Unit.Value, k.Costs.Price.Value, keep(k, project.Currency.Code()), planned(k)
			sum.Sizes = append(sum.Sizes, one)
		}
	}
	return sum
}

// summarise keeps what the line needs of a size in a colourway.
func summarise(s *derive.Size) SizeSummary {
	units := s.Plan.Units
	sum := SizeSummary{Name: kit.Worn(s)}
	if s.Top.Known {
		sum.Finished = measure.FormatBox(s.Top.Finished.Width, s.Top.Finished.Height, units)
	}
	var fabric []string
	for _, f := range s.Fabrics {
		if f.Used() && f.Err == nil {
			fabric = append(fabric, kit.Title(f)+" "+Bought(s, f))
		}
	}
	sum.Fabric = strings.Join(fabric, "; ")
	var least measure.Length
	for _, p := range s.Parts {
		if slack, ok := leastSlack(p); ok && p.Needed > 0 && (sum.Slack == "" || slack < least) {
			least, sum.Slack = slack, slack.AsThere(units)+", "+p.Name.Text
		}
	}
	return sum
}

// Bought is what is bought of a fabric, in words: at least so much where not all
// that it is for could be counted, as a draft may show it.
func Bought(s *derive.Size, f *derive.Fabric) string {
	bought := fmt.Sprintf("%d packs", f.Packs)
	switch {
	case f.Buy > 0:
		bought = measure.FormatFabric(f.Buy, s.Plan.Units)
	case f.Packs == 1:
		bought = "1 pack"
	}
	if s.SureOfCloth(f) {
		return bought
	}
	return "at least " + bought
}

func leastSlack(p *derive.Part) (measure.Length, bool) {
	switch {
	case p.Pool != nil:
		return p.Pool.Length - p.Pool.Fill, p.Pool.Parts[0] == p
	case p.Tube != nil && p.Known:
		return p.Tube.Yield.Slack(), true
	case p.Set != nil && p.Set.Cut != nil:
		return p.Set.Cut.Slack(), true
	}
	return 0, false
}
