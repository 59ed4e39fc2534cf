package check

import (
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// eachWays is what to print where so many strips are printed of each fabric: a
// number that is right for all of them, or where there is none that of each.
func (p *Pass) eachWays(c stripsCompared) []diag.Way {
	var common []stripTotal
	var apart []string
	for i, f := range c.fabrics {
		totals := stripTotals([]derive.FabricStrips{f}, c.said.Width)
		if len(totals) == 0 {
			continue
		}
		if len(apart) == 0 {
			common = totals
		}
		common = slices.DeleteFunc(slices.Clone(common), func(t stripTotal) bool {
			return !slices.ContainsFunc(totals, func(u stripTotal) bool { return u.n == t.n })
		})
		apart = append(apart, p.someOf(c, c.fabrics[i], totals))
	}
	if len(common) > 0 {
		return p.printTotal(common, c.said)
	}
	n := p.text().Node(c.said.Of.At)
	if n == nil {
		return ways()
	}
	return ways(mend(p.put("print", n.Range, "["+strings.Join(apart, ", ")+"]")))
}

// printTotal is the way out of printing a number that is right, or the choice of those
// that are.
func (p *Pass) printTotal(totals []stripTotal, said plan.PrintedStrips) []diag.Way {
	var all []diag.Way
	differ := slices.ContainsFunc(totals, func(t stripTotal) bool { return t.width != totals[0].width })
	for _, t := range totals {
		e := p.putCount("print", said.At, t.n)
		if differ && t.width > 0 && !said.Width.Given() {
			e.Thing = fmt.Sprintf("%s %s wide", things(t.n, "strip"), p.needs(t.width))
		}
		if t.shared {
			e.Thing = strings.TrimSpace(e.Thing + " with lengths sharing strips")
		}
		if len(totals) == 1 {
			all = append(all, mend(e))
		} else {
			all = append(all, choice(e))
		}
	}
	return ways(all...)
}

// someOf is the printed figure of one fabric's strips as a plan writes it, cut as
// the plain method cuts them where they are of one width.
func (p *Pass) someOf(c stripsCompared, f derive.FabricStrips, totals []stripTotal) string {
	n := totalOf(f.Ways[0], c.said.Width).n
	if n == 0 {
		n = totals[0].n
	}
	width := ""
	if c.said.Width.Given() {
		width = fmt.Sprintf(", \"width\": %q", c.said.Width.Length.Bare(p.Plan.Units))
	}
	return fmt.Sprintf("{ \"count\": %d, \"fabric\": %q%s }", n, f.Fabric.Role.Text, width)
}

// stripsAsPrinted is a printed number of strips in words: "8 strips 2 1/2 in
// wide of each fabric".
func (p *Pass) stripsAsPrinted(said plan.PrintedStrips) string {
	text := count(said.N, "strip")
	if said.Width.Given() {
		text += " " + p.length(said.Width.Length) + " wide"
	}
	switch {
	case said.Each:
		text += " of each fabric"
	case said.Fabric.Given():
		text += fmt.Sprintf(" of %q", said.Fabric.Text)
	}
	return text
}

// stripsTaken says how many strips the ways take: "31 pieces take 2", "it
// takes 6 of one fabric".
func (p *Pass) stripsTaken(fabrics []derive.FabricStrips, totals []stripTotal, said plan.PrintedStrips) string {
	pieces := int64(0)
	for _, f := range fabrics {
		pieces += f.Pieces
	}
	of := ""
	if len(fabrics) == 1 && (said.Each || said.Fabric.Given()) {
		of = fmt.Sprintf(" of %q", fabrics[0].Fabric.Role.Text)
	}
	take := " take "
	switch pieces {
	case 0:
		return "it takes " + p.printTotals(totals, said) + of
	case 1:
		take = " takes "
	}
	return count(int(pieces), "piece") + of + take + p.printTotals(totals, said)
}

// printTotals lists the numbers that are right, with the widths where they
// differ: "2 strips 10 1/2 in wide or 11 strips 2 1/2 in wide".
func (p *Pass) printTotals(totals []stripTotal, said plan.PrintedStrips) string {
	var words []string
	differ := slices.ContainsFunc(totals, func(t stripTotal) bool { return t.width != totals[0].width })
	for _, t := range totals {
		text := fmt.Sprint(t.n)
		switch {
		case !differ || said.Width.Given():
		case t.width > 0:
			text = fmt.Sprintf("%s %s wide", count(int(t.n), "strip"), p.needs(t.width))
		default:
			text = count(int(t.n), "strip") + " of several widths"
		}
		if t.shared {
			text += " with lengths sharing strips"
		}
		words = append(words, text)
	}
	return orWords(words)
}

// orWords joins words as alternatives: "a, b or c".
func orWords(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
