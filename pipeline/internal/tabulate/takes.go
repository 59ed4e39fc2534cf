package tabulate

import (
	"math/big"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/supply"
)

// asked are the kits that are planned of a size: in the recipe's fabrics, and
// in each colourway.
func (in Input) asked(s *derive.Size) []supply.Kit {
	var kits []supply.Kit
	for _, way := range append([]*derive.Size{s}, s.Colourways()...) {
		k := way.Kit(in.Project, in.Prices)
		if k == nil || k.Cells.Run.Value.Sign() == 0 {
			continue
		}
		kit := supply.Kit{Size: s.Of.Name.Text, Colourway: way.Of.Way.Text, Planned: int(k.Cells.Run.Value.Num().Int64())}
		if k.Said.NeededBy.Given() {
			kit.NeededBy = k.Said.NeededBy.String()
		}
		for i, g := range k.Goods {
			if g.Priced {
				kit.Takes = append(kit.Takes, take(g, k.Cells.Materials[i].Quantity.Value))
			}
		}
		kits = append(kits, kit)
	}
	return kits
}

// take is what a kit takes of a fabric, of which the quantity is in the unit of
// its price.
func take(g derive.Good, quantity *big.Rat) supply.Take {
	t := supply.Take{SKU: g.SKU.Text, What: title(g.Fabric)}
	if g.Unit.Length() > 0 {
		t.Length, t.Step = g.Buy, g.Grid
	} else {
		t.Pieces = supply.Up(quantity)
	}
	return t
}
