package plan

import (
	"math/big"
	"strconv"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// BadEdition is the rule of everything that is wrong with the figures of an
// earlier edition.
const BadEdition = "project/edition"

// Edition is the line as it was when its last edition was published.
type Edition struct{ Sizes []EditionSize }

// EditionSize is a size of a plan in it.
type EditionSize struct {
	Plan, Size  string // the title, as the line's table has it
	Fabric      string
	Cost, Price *big.Rat // of a kit; nil when there was none
	Counts      [3]int   // errors, warnings, notes
}

// Find is a size of the edition; false when it was not in it.
func (e *Edition) Find(plan, size string) (EditionSize, bool) {
	for _, s := range e.Sizes {
		if s.Plan == plan && s.Size == size {
			return s, true
		}
	}
	return EditionSize{}, false
}

// ReadEdition reads the line's table as an export in CSV wrote it. Rows that
// cannot be read are left out, each with one problem that points at the field.
func ReadEdition(f *source.File, c measure.Currency) (*Edition, []source.Problem) {
	cost, price := "cost", "price"
	if code := c.Code(); code != "" {
		cost, price = cost+" ("+code+")", price+" ("+code+")"
	}
	columns := []string{"plan", "size", "fabric", cost, price, "errors", "warnings", "notes"}
	p := &editionReader{listReader: listReader{code: BadEdition, what: "the edition", file: f, wanted: columns, known: append([]string{"row"}, columns...)}, currency: c, cost: cost, price: price}
	if p.open() {
		for p.more() {
			p.row()
		}
	}
	return &p.edition, sortProblems(p.problems)
}

type editionReader struct {
	listReader
	currency    measure.Currency
	cost, price string // the columns
	edition     Edition
}

func (p *editionReader) row() {
	switch role, _ := p.field("row"); role {
	case "heading", "lead", "foot": // words about the table
		return
	}
	before := len(p.problems)
	var s EditionSize
	s.Plan, _ = p.field("plan")
	s.Size, _ = p.field("size")
	s.Fabric, _ = p.field("fabric")
	s.Cost, s.Price = p.money(p.cost), p.money(p.price)
	for i, column := range []string{"errors", "warnings", "notes"} {
		text, at := p.field(column)
		n, err := strconv.ParseUint(text, 10, 31)
		if err != nil {
			p.report(at, "keep the table as the export wrote it", "%s is no number of %s", quote(text), column)
		}
		s.Counts[i] = int(n)
	}
	if len(p.problems) == before && s.Size != "" {
		p.edition.Sizes = append(p.edition.Sizes, s)
	}
}

func (p *editionReader) money(column string) *big.Rat {
	text, at := p.field(column)
	if text == "" {
		return nil
	}
	amount, err := measure.ParseMoney(text, p.currency)
	if err != nil {
		p.report(at, "keep the table as the export wrote it", "%v", err)
		return nil
	}
	return amount
}
