package line

import (
	"math/big"

	"yardproof/pipeline/internal/kit"
	"yardproof/pipeline/internal/supply"
)

// planned is what the kits that are planned take; nil where none are.
func planned(k *kit.Kit) *supply.Kit {
	if k.Cells.Run.Value.Sign() == 0 {
		return nil
	}
	planned := &supply.Kit{Size: k.Size.Of.Name.Text, Colourway: k.Size.Of.Way.Text, Planned: int(k.Cells.Run.Value.Num().Int64())}
	planned.Spoilage = new(big.Rat).Mul(k.Cells.Spoilage.Value, big.NewRat(10_000, 1)).Num().Int64()
	if k.Said.NeededBy.Given() {
		planned.NeededBy = k.Said.NeededBy.String()
	}
	for _, l := range k.Fabrics {
		if l.Priced {
			planned.Takes = append(planned.Takes, take(l))
		}
	}
	for _, l := range k.Things {
		if l.Ordered() {
			planned.Takes = append(planned.Takes, supply.Take{SKU: l.Article.Text, What: l.Title(), Pieces: int64(l.Thing.Count.N)})
		}
	}
	return planned
}

// take is what a kit takes of a fabric, of which the quantity is in the unit of
// its price.
func take(l kit.Line) supply.Take {
	t := supply.Take{SKU: l.Article.Text, What: l.Title()}
	if l.Unit.Length() > 0 {
		t.Length = l.Length
		if len(l.Listed.Bolts) > 0 && l.CanBeCut(l.Buy-l.Grid) {
			t.Step = l.Grid
		}
	} else {
		t.Pieces = supply.Up(l.Quantity.Value)
	}
	return t
}
