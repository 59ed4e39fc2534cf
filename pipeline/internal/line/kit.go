package line

import (
	"bytes"
	"encoding/json"
	"errors"

	"yardproof/pipeline/internal/costing"
	"yardproof/pipeline/internal/kit"
)

// Kit is what a line keeps of the kit of a size, to work its costs out anew
// from other prices.
type Kit struct {
	Currency  string // ISO 4217; empty where the project names none
	OwnMargin bool   // the target is the kit's own, not its project's
	Fabrics   []Line
	Things    []Line
	Inputs    costing.Inputs
}

// Line is a fabric of a kit, or another thing in it. What it costs is not kept.
type Line struct {
	Fabric  string `json:"fabric"` // as the plan calls it
	SKU     string `json:"sku,omitempty"`
	Article string `json:"article,omitempty"` // as the price list calls it
	Unit    string `json:"unit"`              // that the price is for

	costing.Item `json:"-"`
}

// keep keeps what a line needs of a kit.
func keep(k *kit.Kit, currency string) *Kit {
	kept := &Kit{Currency: currency, OwnMargin: k.Said.Margin.Given(), Inputs: k.Cells}
	for _, l := range k.Fabrics {
		kept.Fabrics = append(kept.Fabrics, keepLine(l, l.Description))
	}
	for _, l := range k.Things {
		kept.Things = append(kept.Things, keepLine(l, ""))
	}
	return kept
}

func keepLine(l kit.Line, article string) Line {
	return Line{
		Fabric: l.Title(), SKU: l.Article.Text, Article: article, Unit: string(l.Unit),
		Item: costing.Item{Quantity: l.Quantity, Price: l.Price, Landed: l.Landed},
	}
}

// keptKit is a kit as JSON, which has what lines hold apart from their numbers.
type keptKit struct {
	Currency  string      `json:"currency,omitempty"`
	OwnMargin bool        `json:"own_margin"`
	Goods     []Line      `json:"goods,omitempty"`  // beside the materials
	Things    []Line      `json:"things,omitempty"` // beside the things of the costing
	Costing   keptCosting `json:"costing"`
}

// keptCosting has the members of the inputs behind those of its own: a name that
// both have is here.
type keptCosting struct {
	Suffix    string     `json:"suffix"`
	Digits    int        `json:"digits"`
	Materials []keptItem `json:"materials,omitempty"`
	Things    []keptItem `json:"things,omitempty"`
	costing.Inputs
}

type keptItem struct {
	Quantity costing.Input `json:"quantity"`
	Price    costing.Input `json:"price"`

	Landed *costing.Landing `json:"landed,omitempty"`
}

func numbersOf(lines []Line) []keptItem {
	var items []keptItem
	for _, l := range lines {
		items = append(items, keptItem{l.Quantity, l.Price, l.Landed})
	}
	return items
}

var errUneven = errors.New("the goods of a kit and what they cost are not as many")

// join gives lines their numbers.
func join(lines []Line, items []keptItem) error {
	if len(lines) != len(items) {
		return errUneven
	}
	for i, item := range items {
		lines[i].Quantity, lines[i].Price, lines[i].Landed = item.Quantity, item.Price, item.Landed
	}
	return nil
}

// MarshalJSON writes the kit as it is kept.
func (k Kit) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false) // whoever asks for it escapes once more
	err := encoder.Encode(keptKit{k.Currency, k.OwnMargin, k.Fabrics, k.Things,
		keptCosting{k.Inputs.Suffix, k.Inputs.Digits, numbersOf(k.Fabrics), numbersOf(k.Things), k.Inputs}})
	return b.Bytes(), err
}

// UnmarshalJSON reads a kit, and takes no member that it does not know.
func (k *Kit) UnmarshalJSON(text []byte) error {
	var kept keptKit
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&kept); err != nil {
		return err
	}
	kept.Costing.Inputs.Suffix, kept.Costing.Inputs.Digits = kept.Costing.Suffix, kept.Costing.Digits
	*k = Kit{kept.Currency, kept.OwnMargin, kept.Goods, kept.Things, kept.Costing.Inputs}
	return errors.Join(join(k.Fabrics, kept.Costing.Materials), join(k.Things, kept.Costing.Things))
}
