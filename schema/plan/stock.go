package plan

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// BadStock is the rule of everything that is wrong with a stock list.
const BadStock = "cost/stock-list"

// Stock is what a studio has on its shelves: part-bolts and pieces of articles,
// and kits that are packed.
type Stock struct {
	Parts []PartBolt
	Kits  []ShelfKits
}

// PartBolt is a row of an article on hand: one length of fabric in one piece, or
// so many pieces of what is sold by the piece.
type PartBolt struct {
	SKU    string
	Length measure.Length // zero of an article sold by the piece
	Pieces int64          // zero of one sold by the length
	File   *source.File
	At     source.Range
}

// ShelfKits are packed kits of a size of a plan, in one of its colourways or in
// the fabrics of the recipe.
type ShelfKits struct {
	Plan, Size, Colourway string
	Count                 int
	File                  *source.File
	At                    source.Range // of the item
}

// Only is what there is of some articles, and of the kits of one plan, wherever
// the list says it. The receiver may be nil.
func (s *Stock) Only(skus []string, plan string) *Stock {
	if s == nil {
		return nil
	}
	some := &Stock{}
	for _, p := range s.Parts {
		if slices.Contains(skus, p.SKU) {
			p.File, p.At = nil, source.Range{}
			some.Parts = append(some.Parts, p)
		}
	}
	for _, k := range s.Kits {
		if k.Plan == plan {
			k.File, k.At = nil, source.Range{}
			some.Kits = append(some.Kits, k)
		}
	}
	return some
}

// OnHand is what there is of an article: lengths in one piece, or
// pieces of what is sold by the piece. The receiver may be nil.
func (s *Stock) OnHand(sku string) (lengths []measure.Length, pieces int64) {
	if s == nil {
		return nil, 0
	}
	for _, p := range s.Parts {
		if p.SKU == sku && p.Length > 0 {
			lengths = append(lengths, p.Length)
		}
		if p.SKU == sku {
			pieces += p.Pieces
		}
	}
	return lengths, pieces
}

// Packed is how many kits of a size of a plan are packed, in a colourway or, where
// that is empty, in the fabrics of the recipe. The receiver may be nil.
func (s *Stock) Packed(plan, size, colourway string) int {
	if s == nil {
		return 0
	}
	for _, k := range s.Kits {
		if k.Plan == plan && k.Size == size && k.Colourway == colourway {
			return k.Count
		}
	}
	return 0
}

// most of one item that a studio has.
const mostOnShelf = 100_000

// ReadStock reads a stock list with the columns item, quantity and unit: an
// article by its sku with a length in one piece (unit yd, m, half-m, in or cm;
// one row for each piece of fabric) or with a number of pieces (pack, roll,
// spool, each); or packed kits as plan/size or plan/size/colourway with the unit
// kit. Rows that cannot be used are left out, each with one problem that points
// at the field. The price list, which may be nil, says how articles are sold.
func ReadStock(f *source.File, from ListSource, prices *PriceList) (*Stock, []source.Problem) {
	columns := []string{"item", "quantity", "unit"}
	p := &stockReader{
		listReader: listReader{code: BadStock, what: "the stock list", file: f, from: from, wanted: columns, known: columns},
		prices:     prices, seen: map[ShelfKits]int{},
	}
	if p.open() {
		for p.more() {
			p.row()
		}
	}
	return &p.stock, sortProblems(p.problems)
}

type stockReader struct {
	listReader
	prices *PriceList
	stock  Stock
	seen   map[ShelfKits]int // the line of each kit
}

func (p *stockReader) row() {
	item, at := p.field("item")
	text, unitAt := p.field("unit")
	unit := strings.ToLower(text)
	if meant, ok := p.from.Units[unit]; ok {
		unit = meant.Text
	}
	switch {
	case item == "":
		p.report(at, "name an article by its sku, or kits as plan/size", "this row of the stock list has no item")
	case unit == "kit" || unit == "kits":
		p.kits(item, at)
	case PriceUnit(unit).pieces():
		p.pieces(item, at)
	case lengthUnit(unit) > 0:
		p.length(item, at, lengthUnit(unit))
	default:
		p.report(unitAt, "write yd, m, half-m, in or cm for fabric, pack, roll, spool or each for pieces, kit for packed kits", "%s is not a unit that stock is counted in", quote(text))
	}
}

func (u PriceUnit) pieces() bool {
	switch u {
	case PerPack, PerRoll, PerSpool, PerEach:
		return true
	}
	return false
}

func lengthUnit(unit string) measure.Length {
	switch unit {
	case "in":
		return measure.Inch
	case "cm":
		return measure.Centimetre
	}
	return PriceUnit(unit).Length()
}

// kits are named as plan/size or plan/size/colourway.
func (p *stockReader) kits(item string, at source.Range) {
	words := strings.Split(item, "/")
	if len(words) < 2 || len(words) > 3 || words[0] == "" || words[1] == "" {
		p.report(at, "write the plan's id and the size's name, like harbour-lamps/throw", "%s does not name kits of a size", quote(item))
		return
	}
	k := ShelfKits{Plan: words[0], Size: words[1]}
	if len(words) == 3 {
		k.Colourway = words[2]
	}
	if line, twice := p.seen[k]; twice {
		p.report(at, "add them up in one row", "kits of %s stand in the stock list twice: first on line %d", quote(item), line)
		return
	}
	n, ok := p.whole("kits")
	if !ok {
		return
	}
	p.seen[k], _ = p.csv.FieldPos(0)
	k.Count, k.File, k.At = int(n), p.file, at
	p.stock.Kits = append(p.stock.Kits, k)
}

func (p *stockReader) pieces(item string, at source.Range) {
	if p.sold(item, at, false) {
		if n, ok := p.whole("pieces"); ok && n > 0 {
			p.stock.Parts = append(p.stock.Parts, PartBolt{SKU: item, Pieces: n, File: p.file, At: at})
		}
	}
}

// sold reports whether an article is known, and sold in the way in which the
// stock counts it.
func (p *stockReader) sold(item string, at source.Range, byLength bool) bool {
	if p.prices == nil {
		return true
	}
	price, ok := p.prices.Find(item)
	switch {
	case !ok:
		p.report(at, "write the sku as the price list does, or add the article to it", "the price list has no article %s", quote(item))
		return false
	case (price.Unit.Length() > 0) != byLength:
		_, at := p.field("unit")
		p.report(at, "count it as it is sold", "%s is sold per %s, and the stock list counts it in %s", quote(item), price.Unit, quote(p.unitText()))
		return false
	}
	return true
}

func (p *stockReader) unitText() string {
	text, _ := p.field("unit")
	return text
}

// whole is a count from 0 up.
func (p *stockReader) whole(what string) (int64, bool) {
	text, at := p.field("quantity")
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || n < 0 || n > mostOnShelf {
		p.report(at, "write a whole number up to "+strconv.Itoa(mostOnShelf), "%s is no number of %s", quote(text), what)
		return 0, false
	}
	return n, true
}

// length is a piece of fabric: a decimal or a fraction of its unit.
func (p *stockReader) length(item string, at source.Range, unit measure.Length) {
	if !p.sold(item, at, true) {
		return
	}
	text, place := p.field("quantity")
	l, ok := p.stretch(text, unit)
	if !ok {
		p.report(place, "write a length like 4.5 or 4 1/2, one row for each piece of fabric", "%s is no length of one piece of fabric", quote(text))
		return
	}
	if l > 0 {
		p.stock.Parts = append(p.stock.Parts, PartBolt{SKU: item, Length: l, File: p.file, At: at})
	}
}

// stretch is exact: what is no whole number of ticks is rounded down, for more
// than there is cannot be cut.
func (p *stockReader) stretch(text string, unit measure.Length) (measure.Length, bool) {
	plain, ok := p.decimal(text)
	if !ok {
		return 0, false
	}
	total := new(big.Rat)
	for i, word := range strings.Fields(plain) {
		n, ok := new(big.Rat).SetString(word)
		if !ok || len(word) > 20 || i > 1 || i == 1 && !strings.Contains(word, "/") || strings.ContainsAny(word, "eEpPxX_+-") {
			return 0, false
		}
		total.Add(total, n)
	}
	total.Mul(total, big.NewRat(int64(unit), 1))
	ticks := new(big.Int).Quo(total.Num(), total.Denom())
	if text == "" || !ticks.IsInt64() || ticks.Int64() > int64(mostOnShelf*measure.Yard) {
		return 0, false
	}
	return measure.Length(ticks.Int64()), true
}
