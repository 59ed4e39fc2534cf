package plan

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// The rules of what is wrong with a price list.
const (
	BadPriceList  = "cost/price-list"
	OtherCurrency = "cost/currency-mixed" // a price in a currency that is not the project's
	StalePrice    = "cost/stale-price"    // prices of long ago
	DearerBreak   = "cost/dearer-break"   // a price for more that is higher
	PriceOfZero   = "cost/price-of-0"     // an article that costs nothing
	OtherSupplier = "cost/landed-supplier"
)

// ListSource says where a list is and how it is laid out. Only the path has to
// be given.
type ListSource struct {
	Path      Text            // relative to the project file
	Sheet     Text            // of a workbook; its first where not given
	HeaderRow Count           // from 1; the first row that has any text where not given
	Columns   map[string]Text // what the list calls a column, by yardproof's name
	Units     map[string]Text // the unit that is meant, by what the list writes, in small letters
	Unit      Text            // of every row, where the list has no column for it
	Supplier  Text            // of every row, likewise
	Decimal   Text            // mark before decimals, "." where not given
	Thousands Text            // mark between thousands; none where not given
	Separator Text            // between columns: ",", ";" or "tab"; seen from the header row where not given
	At        source.Range
}

// Mark is what stands before the decimals of its numbers.
func (l ListSource) Mark() string {
	if l.Decimal.Given() {
		return l.Decimal.Text
	}
	return "."
}

// priceColumns are the columns of a price list, those first that it must have.
func priceColumns() (wanted, all []string) {
	wanted = []string{"sku", "description", "unit", "price"}
	return wanted, append(slices.Clone(wanted), "currency", "from", "dated", "supplier", "bolt", "loss", "minimum", "multiple", "lead_days",
		"width", "repeat", "discontinued", "substitute")
}

// Read reads the price list in a file and adds its prices. Rows that cannot be
// used are left out, each with one problem that points at the field. Rows of one
// sku, of which all but one say from how many on they hold, are the prices of
// one article.
func (l *PriceList) Read(f *source.File, from ListSource) []source.Problem {
	wanted, all := priceColumns()
	p := &priceReader{list: l, listReader: listReader{
		code: BadPriceList, what: "the price list", file: f, from: from, wanted: wanted, known: all,
	}}
	if p.open() {
		for p.more() {
			p.row()
		}
	}
	return sortProblems(p.problems)
}

type priceReader struct {
	listReader
	list *PriceList
}

func (p *priceReader) row() {
	sku, at := p.field("sku")
	amount, _ := p.field("price")
	if sku == "" {
		if amount != "" { // otherwise it is a note or a heading between the rows
			p.report(at, "name the article, as the plans do", "this row of the price list has no sku")
		}
		return
	}
	if len(p.from.Columns) > 0 && p.filled() == 1 {
		return // a heading between the rows of a supplier's sheet
	}
	before := len(p.problems)
	price := p.article(sku)
	if len(p.problems) > before {
		return
	}
	p.enter(price)
	if len(p.problems) == before && price.Amount.Sign() == 0 {
		_, at := p.field("price")
		p.problems = append(p.problems, source.Problem{Code: PriceOfZero, Range: at,
			Message: quote(sku) + " costs nothing: its price is " + quote(amount), Hint: "fill the price in"})
	}
}

// article reads a row that has a sku.
func (p *priceReader) article(sku string) Price {
	price := Price{SKU: sku, File: p.file, At: p.rowPlace()}
	price.Description, _ = p.field("description")
	price.Unit = p.unit()
	price.Amount = p.amount()
	p.currency()
	if price.Supplier, _ = p.field("supplier"); price.Supplier == "" {
		price.Supplier = p.from.Supplier.Text
	}
	price.Bolts = p.bolts(price.Unit)
	price.Loss = p.loss()
	price.Minimum, price.Multiple = p.quantity("minimum"), p.quantity("multiple")
	price.LeadDays, price.LeadSaid = p.days()
	price.Width, price.Repeat = p.length("width", price.Unit), p.length("repeat", price.Unit)
	price.Dated = p.date()
	price.Discontinued = p.yes("discontinued")
	price.Substitute, _ = p.field("substitute")
	if price.Substitute == sku {
		_, at := p.field("substitute")
		p.report(at, "name another article", "%s is named as its own substitute", quote(sku))
	}
	return price
}

// enter puts an article's row where it belongs: a new article, or a further
// price of one that is known.
func (p *priceReader) enter(price Price) {
	before := len(p.problems)
	from := p.quantity("from")
	if len(p.problems) > before {
		return
	}
	i, known := p.list.bySKU[price.SKU]
	_, at := p.field("sku")
	switch {
	case !known && (from == nil || from.Sign() == 0):
		p.list.add(price)
	case !known:
		_, at := p.field("from")
		p.report(at, "put the row of the usual price above it, with nothing in this column", "%s has a price from %s on and none for less", quote(price.SKU), from.RatString())
	case from == nil || from.Sign() == 0:
		p.report(at, "remove one of the rows", "%s stands in the price list twice: first %s", quote(price.SKU), p.first(p.list.prices[i]))
	default:
		p.further(&p.list.prices[i], price, from)
	}
}

// further adds a price for more of an article.
func (p *priceReader) further(article *Price, price Price, from *big.Rat) {
	_, at := p.field("from")
	last := new(big.Rat)
	if n := len(article.Breaks); n > 0 {
		last = article.Breaks[n-1].From
	}
	switch {
	case price.Unit != article.Unit:
		_, at := p.field("unit")
		p.report(at, "give all prices of an article for one unit", "%s is priced per %s here and per %s %s", quote(price.SKU), price.Unit, article.Unit, p.first(*article))
	case from.Cmp(last) <= 0:
		p.report(at, "order the rows of an article by what they are from", "the price of %s from %s on stands below that from %s on", quote(price.SKU), from.RatString(), last.RatString())
	default:
		before := article.For(from)
		article.Breaks = append(article.Breaks, Break{from, price.Amount})
		if price.Amount.Cmp(before) > 0 {
			_, at := p.field("price")
			p.problems = append(p.problems, source.Problem{Code: DearerBreak, Range: at,
				Message: quote(price.SKU) + " costs " + p.list.money(price.Amount) + " from " + from.RatString() + " on, and " + p.list.money(before) + " for less",
				Hint:    "correct the price, or what it is from"})
		}
	}
}

// first says where an article stands, as seen from this row.
func (p *priceReader) first(a Price) string {
	at := ""
	if cell := a.File.Cell(a.At.Start); cell != "" {
		at = "in " + cell
	} else {
		at = "on line " + strconv.Itoa(a.File.Position(a.At.Start).Line)
	}
	if a.File != p.file {
		at += " of " + a.File.Name
	}
	return at
}

func (p *priceReader) unit() PriceUnit {
	text, at := p.field("unit")
	word := strings.ToLower(text)
	if word == "" {
		word = strings.ToLower(p.from.Unit.Text)
	}
	if meant, ok := p.from.Units[word]; ok {
		word = meant.Text
	}
	if u := PriceUnit(word); slices.Contains(PriceUnits(), u) {
		return u
	}
	p.report(at, "write yd, m, half-m, pack, roll, spool or each, or say in \"units\" of the project file which of them is meant", "%s is not a unit that a price can be for", quote(text))
	return ""
}

func (p *priceReader) amount() *big.Rat {
	text, at := p.field("price")
	plain, ok := p.decimal(text)
	if !ok {
		p.report(at, "write a price like "+p.marks()+", or say in the project file which marks the list writes", "%s is not a price with the marks of this list", quote(text))
		return nil
	}
	amount, err := measure.ParseMoney(plain, p.list.Currency)
	if err != nil {
		p.report(at, "write a price like "+p.marks(), "%v", err)
	}
	return amount
}

// currency refuses a price in another currency than the project's: no rate of
// exchange is known here.
func (p *priceReader) currency() {
	text, at := p.field("currency")
	if text != "" && !strings.EqualFold(text, p.list.Currency.Code()) {
		p.problems = append(p.problems, source.Problem{Code: OtherCurrency, Range: at,
			Message: "a price in " + quote(text) + ", and the project is in " + p.list.Currency.Code(),
			Hint:    "give the price in " + p.list.Currency.Code() + ", at the rate that was paid"})
	}
}

// bolts are lengths like "15 yd" with blanks or semicolons between them.
func (p *priceReader) bolts(unit PriceUnit) []measure.Length {
	text, at := p.field("bolt")
	var all []measure.Length
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '/' }) {
		l, err := p.cloth(strings.TrimSpace(word), unit)
		if err != nil || l <= 0 {
			p.report(at, "write the lengths of the bolts like 15 yd, with semicolons between them", "%s is not a length of a bolt", quote(word))
			return nil
		}
		all = append(all, l)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// cloth is a length of fabric; a number alone is in yards or metres, as the
// price is.
func (p *priceReader) cloth(word string, unit PriceUnit) (measure.Length, error) {
	plain, ok := p.decimal(word)
	if ok {
		word = plain
	}
	if unit.Length() > 0 && strings.Trim(word, "0123456789./ ") == "" {
		word += map[PriceUnit]string{PerYard: " yd", PerMetre: " m", PerHalfMetre: " m"}[unit]
	}
	return measure.ParseLength(word, measure.In)
}

func (p *priceReader) loss() Percent {
	text, at := p.field("loss")
	if text == "" {
		return Percent{}
	}
	plain, _ := p.decimal(text)
	points, ok := basisPoints(strings.TrimSuffix(plain, "%") + "%")
	if !ok {
		p.report(at, "write a percentage like 1.5%", "%s is no share of a bolt", quote(text))
	}
	return Percent{BasisPoints: points, At: at}
}

// quantity is a number in the price's unit; nil where there is none.
func (p *priceReader) quantity(column string) *big.Rat {
	text, at := p.field(column)
	if text == "" {
		return nil
	}
	plain, ok := p.decimal(text)
	if n, err := measure.ParseMoney(plain, p.list.Currency); ok && err == nil {
		return n
	}
	p.report(at, "write a number, like 10", "%s is no quantity", quote(text))
	return nil
}

func (p *priceReader) days() (days int, said bool) {
	text, at := p.field("lead_days")
	if text == "" {
		return 0, false
	}
	n, err := strconv.ParseUint(text, 10, 10)
	if err != nil {
		p.report(at, "write how many days pass from order to delivery, up to 999", "%s is no number of days", quote(text))
	}
	return int(n), true
}

// length is across or along the fabric; a number alone is in inches where the
// price is by the yard, in centimetres otherwise.
func (p *priceReader) length(column string, unit PriceUnit) measure.Length {
	text, at := p.field(column)
	if text == "" {
		return 0
	}
	u := measure.Cm
	if unit == PerYard {
		u = measure.In
	}
	plain, ok := p.decimal(text)
	if !ok {
		plain = text
	}
	l, err := measure.ParseLength(plain, u)
	switch {
	case err != nil:
		p.report(at, "write a length, like 42 in or 107 cm", "%v", err)
	case l == 0:
		p.report(at, "leave it empty where it is not known", "%s is no %s of a fabric", quote(text), column)
	case column == "width" && l > widest(u):
		p.report(at, "write the usable width, or leave it empty", "a width of %s is more than fabric is sold in: that is up to %s", l.Format(u), widest(u).Format(u))
	}
	return l
}

func (p *priceReader) date() Date {
	text, at := p.field("dated")
	if text == "" {
		return Date{}
	}
	d, ok := ParseDate(text)
	if !ok {
		p.report(at, "write year, month and day, like 2027-03-31", "%s is not a date of the calendar", quote(text))
	}
	return d
}

func (p *priceReader) yes(column string) bool {
	text, at := p.field(column)
	switch strings.ToLower(text) {
	case "yes", "y", "true", "x", "1":
		return true
	case "", "no", "n", "false", "0":
		return false
	}
	p.report(at, "write yes or no", "%s is neither yes nor no", quote(text))
	return false
}

func (l *PriceList) money(amount *big.Rat) string {
	return measure.RoundMoney(amount, l.Currency).Format()
}

// Unmatched are problems of what a project says of landed cost: suppliers that no
// price names, and lengths to share by where something is sold by the piece.
func (l *PriceList) Unmatched(landed []Landed) []source.Problem {
	pieces, known := map[string]*Price{}, map[string]bool{}
	var names []string
	for i := range l.prices {
		p := &l.prices[i]
		if !known[p.Supplier] && p.Supplier != "" {
			names = append(names, quote(p.Supplier))
		}
		known[p.Supplier] = true
		if p.Unit.Length() == 0 && pieces[p.Supplier] == nil {
			pieces[p.Supplier] = p
		}
	}
	slices.Sort(names)
	var problems []source.Problem
	for _, of := range landed {
		switch piece := pieces[of.Supplier]; {
		case !known[of.Supplier]:
			problems = append(problems, source.Problem{Code: OtherSupplier, Range: of.At,
				Message: "the price list has no article of " + quote(of.Supplier) + ": its freight and duty go into nothing",
				Hint:    "write the supplier as the price list does" + oneOf(names)})
		case of.ByLength && piece != nil:
			problems = append(problems, source.Problem{Code: OtherSupplier, Range: of.ShareAt,
				Message: "freight and fees of " + quote(of.Supplier) + " are to be shared by length, and its " + quote(piece.SKU) + " is sold per " + string(piece.Unit) + ": an order with it is shared by value",
				Hint:    "share by \"value\""})
		}
	}
	return problems
}

// oneOf lists a few names to choose from.
func oneOf(names []string) string {
	const few = 6
	if len(names) == 0 || len(names) > few {
		return ""
	}
	return ": " + strings.Join(names, ", ")
}

// Stale is one problem for all prices that a list dates more than so many days
// before today; none where no price is that old.
func (l *PriceList) Stale(f *source.File, today Date, days int) []source.Problem {
	var oldest *Price
	old, dated := 0, 0
	for i := range l.prices {
		p := &l.prices[i]
		if p.File != f || !p.Dated.Given() {
			continue
		}
		dated++
		if today.Since(p.Dated) <= days {
			continue
		}
		old++
		if oldest == nil || p.Dated.Compare(oldest.Dated) < 0 {
			oldest = p
		}
	}
	if oldest == nil {
		return nil
	}
	subject, comma := "the price", ""
	if old > 1 {
		comma = ","
		subject = strconv.Itoa(old) + " of " + strconv.Itoa(dated) + " dated prices are older than " + strconv.Itoa(days) + " days; the oldest, that"
	}
	return []source.Problem{{Code: StalePrice, Range: oldest.At,
		Message: subject + " of " + quote(oldest.SKU) + comma + " is of " + oldest.Dated.String() + ", " + strconv.Itoa(today.Since(oldest.Dated)) + " days ago",
		Hint:    "ask the supplier, and date the price anew"}}
}
