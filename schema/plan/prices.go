package plan

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math/big"
	"slices"
	"strings"
	"unicode/utf8"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// BadPriceList is the rule of everything that is wrong with a price list.
const BadPriceList = "cost/price-list"

// A price list beyond these is no studio's, and reading on would only cost
// memory.
const (
	maxPriceListBytes    = 8 << 20
	maxPriceListProblems = 100
)

// Price is one article of the price list.
type Price struct {
	SKU         string
	Description string
	Unit        PriceUnit
	Amount      *big.Rat // for one unit, in the list's currency, exact
	At          source.Range

	Width  measure.Length // usable, across the fabric; zero when the list does not say
	Repeat measure.Length // of the print along the fabric; zero when the list does not say
}

// PriceUnit is what a price is for.
type PriceUnit string

// The units of a price.
const (
	PerYard  PriceUnit = "yd"
	PerMetre PriceUnit = "m"
	PerPack  PriceUnit = "pack"
	PerEach  PriceUnit = "each"
)

// PriceList is a studio's price list, by article.
type PriceList struct {
	File     *source.File
	Currency measure.Currency
	prices   []Price
	bySKU    map[string]int
}

// Find is the price of an article; false when the list has none. The list may
// be nil.
func (l *PriceList) Find(sku string) (Price, bool) {
	if l == nil {
		return Price{}, false
	}
	i, ok := l.bySKU[sku]
	if !ok {
		return Price{}, false
	}
	return l.prices[i], true
}

// Only is a list of the prices of some articles, which is all that a plan with
// these may look at. Places are left out: nothing about a plan may depend on
// where a row stands. The list may be nil, and the result is nil then.
func (l *PriceList) Only(skus []string) *PriceList {
	if l == nil {
		return nil
	}
	some := &PriceList{Currency: l.Currency, bySKU: map[string]int{}}
	for _, sku := range skus {
		if p, ok := l.Find(sku); ok {
			p.At = source.Range{}
			some.prices = append(some.prices, p)
			some.bySKU[sku] = len(some.prices) - 1
		}
	}
	return some
}

// All are the prices in the order of the file.
func (l *PriceList) All() []Price { return slices.Clone(l.prices) }

// ReadPrices reads a price list: CSV (RFC 4180) in UTF-8 with a header row that
// has the columns sku, description, unit and price in any order; other columns
// are passed over. A byte order mark is accepted, because spreadsheet programs
// write one. Rows that cannot be used are left out, each with one problem that
// points at the field.
func ReadPrices(f *source.File, c measure.Currency) (*PriceList, []source.Problem) {
	p := &priceReader{list: &PriceList{File: f, Currency: c, bySKU: map[string]int{}}}
	if p.readable(f.Bytes) && p.header() {
		for p.next() && len(p.problems) < maxPriceListProblems {
			p.row()
		}
	}
	return p.list, sortProblems(p.problems)
}

type priceReader struct {
	list     *PriceList
	problems []source.Problem
	text     []byte // after the byte order mark
	skipped  int    // bytes of the mark
	lines    []int  // where lines begin in text
	csv      *csv.Reader
	fields   []string
	columns  map[string]int
}

func (p *priceReader) report(at source.Range, hint, format string, args ...any) {
	p.problems = append(p.problems, source.Problem{Code: BadPriceList, Range: at, Message: fmt.Sprintf(format, args...), Hint: hint})
}

func (p *priceReader) readable(b []byte) bool {
	p.text = bytes.TrimPrefix(b, []byte("\ufeff"))
	p.skipped = len(b) - len(p.text)
	const hint = "save the price list as CSV in UTF-8"
	switch {
	case len(b) > maxPriceListBytes:
		p.report(source.At(0), "split the price list", "the price list has %d bytes; the most is %d", len(b), maxPriceListBytes)
		return false
	case !utf8.Valid(p.text):
		at := p.skipped + firstInvalid(p.text)
		p.report(source.Range{Start: at, End: at + 1}, hint, "the price list is not UTF-8 here")
		return false
	}
	p.lines = []int{0}
	for i, c := range p.text {
		if c == '\n' {
			p.lines = append(p.lines, i+1)
		}
	}
	p.csv = csv.NewReader(bytes.NewReader(p.text))
	p.csv.FieldsPerRecord = -1
	return true
}

func firstInvalid(b []byte) int {
	at := 0
	for at < len(b) {
		r, n := utf8.DecodeRune(b[at:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		at += n
	}
	return at
}

// next reads a row that has any text; false at the end or where the text is no
// longer CSV.
func (p *priceReader) next() bool {
	for {
		fields, err := p.csv.Read()
		if err != nil {
			p.broken(err)
			return false
		}
		p.fields = fields
		if strings.TrimSpace(strings.Join(fields, "")) != "" {
			return true
		}
	}
}

func (p *priceReader) broken(err error) {
	if errors.Is(err, io.EOF) {
		return
	}
	at := source.At(p.skipped + int(p.csv.InputOffset()))
	var e *csv.ParseError
	if errors.As(err, &e) {
		at = source.At(p.offset(e.Line, e.Column))
		err = e.Err
	}
	p.report(at, "put a text that contains quotation marks in quotation marks, and double those inside it", "the price list cannot be read on from here: %v", err)
}

// offset turns a line and a byte column, both from 1, into an offset of the
// file.
func (p *priceReader) offset(line, column int) int {
	line = max(1, min(line, len(p.lines)))
	return min(p.skipped+p.lines[line-1]+max(column, 1)-1, p.skipped+len(p.text))
}

// place is the range of a field of the row, or of the row's end when it is too
// short to have it.
func (p *priceReader) place(column int) source.Range {
	end := p.skipped + int(p.csv.InputOffset())
	if column < len(p.fields)-1 {
		end = p.offset(p.csv.FieldPos(column+1)) - 1
	}
	for end > p.skipped && strings.IndexByte("\r\n", p.text[end-p.skipped-1]) >= 0 {
		end--
	}
	if column >= len(p.fields) {
		return source.At(end)
	}
	start := p.offset(p.csv.FieldPos(column))
	return source.Range{Start: start, End: max(start, end)}
}

func (p *priceReader) header() bool {
	if !p.next() {
		if len(p.problems) == 0 {
			p.report(source.At(p.skipped), "begin it with sku,description,unit,price", "the price list is empty")
		}
		return false
	}
	if len(p.fields) == 1 && strings.ContainsAny(p.fields[0], ";\t") {
		p.report(p.place(0), "save it with commas between the columns and points in the prices", "the columns of the price list are not separated by commas")
		return false
	}
	p.columns = map[string]int{}
	for i, field := range p.fields {
		p.column(i, strings.ToLower(strings.TrimSpace(field)))
	}
	for _, name := range priceColumns() {
		if _, ok := p.columns[name]; !ok {
			p.report(p.rowPlace(), "begin the list with sku,description,unit,price", "the header row of the price list has no column %q", name)
		}
	}
	return len(p.problems) == 0
}

func (p *priceReader) column(i int, name string) {
	if _, twice := p.columns[name]; twice && slices.Contains(priceColumns(), name) {
		p.report(p.place(i), "remove or rename one of them", "the price list has two columns %q", name)
		return
	}
	p.columns[name] = i
}

func priceColumns() []string { return []string{"sku", "description", "unit", "price"} }

func (p *priceReader) rowPlace() source.Range {
	return source.Range{Start: p.place(0).Start, End: p.place(len(p.fields) - 1).End}
}

// field is a field of the row by its column's name.
func (p *priceReader) field(name string) (string, source.Range) {
	column := p.columns[name]
	if column >= len(p.fields) {
		return "", p.place(column)
	}
	return strings.TrimSpace(p.fields[column]), p.place(column)
}

func (p *priceReader) row() {
	sku, at := p.field("sku")
	price := Price{SKU: sku, At: p.rowPlace()}
	price.Description, _ = p.field("description")
	unit, ok := p.unit()
	amount, priced := p.amount()
	price.Unit, price.Amount = unit, amount
	first, known := p.list.bySKU[sku]
	switch {
	case sku == "":
		p.report(at, "name the article, as the plans do", "this row of the price list has no sku")
	case known:
		line := p.list.File.Position(p.list.prices[first].At.Start).Line
		p.report(at, "remove one of the rows", "%s stands in the price list twice: first on line %d", quote(sku), line)
	case ok && priced:
		p.list.bySKU[sku] = len(p.list.prices)
		p.list.prices = append(p.list.prices, price)
	}
}

func (p *priceReader) unit() (PriceUnit, bool) {
	text, at := p.field("unit")
	switch u := PriceUnit(strings.ToLower(text)); u {
	case PerYard, PerMetre, PerPack, PerEach:
		return u, true
	}
	p.report(at, "write yd, m, pack or each", "%s is not a unit that a price can be for", quote(text))
	return "", false
}

func (p *priceReader) amount() (*big.Rat, bool) {
	text, at := p.field("price")
	amount, err := measure.ParseMoney(text, p.list.Currency)
	if err != nil {
		p.report(at, "write a price like 6.00", "%v", err)
		return nil, false
	}
	return amount, true
}

// Fits tells whether the price is for a unit that fabric of a form is sold in.
func (p Price) Fits(form Form) bool {
	switch p.Unit {
	case PerYard, PerMetre:
		return form == Yardage
	case PerPack, PerEach:
		return form == Precut
	}
	return false
}
