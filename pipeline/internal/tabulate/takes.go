package tabulate

import (
	"math/big"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/supply"
)

// planned is what the kits that are planned take; nil where none are.
func (k kit) planned() *supply.Kit {
	if k.Cells.Run.Value.Sign() == 0 {
		return nil
	}
	planned := &supply.Kit{Size: k.size.Of.Name.Text, Colourway: k.size.Of.Way.Text, Planned: int(k.Cells.Run.Value.Num().Int64())}
	if k.Said.NeededBy.Given() {
		planned.NeededBy = k.Said.NeededBy.String()
	}
	for i, g := range k.Goods {
		if g.Priced {
			planned.Takes = append(planned.Takes, take(g, k.Cells.Materials[i].Quantity.Value))
		}
	}
	return planned
}

// take is what a kit takes of a fabric, of which the quantity is in the unit of
// its price.
func take(g derive.Good, quantity *big.Rat) supply.Take {
	t := supply.Take{SKU: g.SKU.Text, What: title(g.Fabric)}
	if g.Unit.Length() > 0 {
		t.Length = g.Length
		if len(g.Price.Bolts) > 0 && g.CanBeCut(g.Buy-g.Grid) {
			t.Step = g.Grid
		}
	} else {
		t.Pieces = supply.Up(quantity)
	}
	return t
}
