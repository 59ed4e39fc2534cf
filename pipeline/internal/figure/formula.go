package figure

import (
	"strconv"
	"strings"
)

// Formula is how the number is worked out, in the symbols of what it is made of:
// "1 + floor((L - 2h) / a), none when L < 2h". Of what the plan states it is empty.
func (f F) Formula() string {
	if f.n == nil {
		return ""
	}
	text := f.label().words
	if n := base(f.n); text == "" && n.op != leaf {
		text = n.formula().text
	}
	if t := f.label().apart; t.n != nil {
		text += ", " + t.Symbol() + " = " + t.Formula()
	}
	return text
}

// binding is how tightly the outermost operation of a formula's part binds.
type binding int

const (
	loose    binding = iota // as a whole only: "f, none when a < b"
	added                   // a sum
	quotient                // a product or quotient
	product
	scaled // a product that begins with a whole number, written without a sign: 2s
	atom
)

// part is a part of a formula.
type part struct {
	text  string
	binds binding
	tight string // a sum of two symbols or whole numbers without the spaces; else empty
}

// operand is a node where it stands in a formula: its symbol if it has one.
func (n *node) operand() part {
	switch l := n.label; {
	case l == nil:
	case l.symbol != "":
		return part{text: l.symbol, binds: atom}
	case l.words != "":
		return part{text: l.words, binds: atom}
	case base(n).op == leaf:
		return part{text: l.says, binds: atom}
	}
	return base(n).formula()
}

// formula is a node as it is worked out.
func (n *node) formula() part {
	switch n.op {
	case plus, less:
		return n.sum()
	case by:
		return n.scaled()
	case times:
		return n.product()
	case over:
		return part{text: n.a.operand().within(product) + " / " + n.b.operand().within(atom), binds: quotient}
	case overInt:
		return n.share()
	case floor, ceil:
		return part{text: [...]string{"floor(", "ceil("}[n.op-floor] + n.a.operand().text + ")", binds: atom}
	case ceilTo:
		return part{text: n.a.operand().within(quotient) + " up to a multiple of " + n.b.operand().text}
	case floorTo:
		return part{text: n.a.operand().within(quotient) + " down to a multiple of " + n.b.operand().text}
	case orNone:
		return n.a.operand()
	case raised:
		if n.a.value.Cmp(n.b.value) >= 0 {
			return n.a.operand()
		}
		return listed("max", []*node{n.a, n.b})
	}
	return n.formulaOfMany()
}

func (n *node) formulaOfMany() part {
	switch n.op {
	case whole:
		return part{text: strconv.FormatInt(n.k, 10), binds: atom}
	case root:
		return part{text: "sqrt" + strconv.FormatInt(n.k, 10), binds: atom}
	case unless:
		return part{text: n.more[0].operand().text + ", none when " + n.more[1].operand().text + " < " + n.more[2].operand().text}
	case least:
		return listed("min", n.more)
	case most:
		return listed("max", n.more)
	}
	if n.label != nil {
		return part{text: n.label.words, binds: atom}
	}
	return part{text: "not known", binds: atom}
}

// listed is a function of several operands.
func listed(name string, of []*node) part {
	texts := make([]string, 0, len(of))
	for _, m := range of {
		texts = append(texts, m.operand().text)
	}
	return part{text: name + "(" + strings.Join(texts, ", ") + ")", binds: atom}
}

func (n *node) sum() part {
	sign, x, y := "+", n.a.operand(), n.b.operand()
	right := y.within(added)
	if n.op == less {
		sign, right = "-", y.within(quotient)
	}
	p := part{text: x.within(added) + " " + sign + " " + right, binds: added}
	if x.binds == atom && y.binds == atom {
		p.tight = x.text + sign + right
	}
	return p
}

// scaled is a whole number of something: 2s, 2(h+s), 2 x float.
func (n *node) scaled() part {
	k, x := strconv.FormatInt(n.k, 10), n.a.operand()
	switch {
	case x.letter():
		return part{text: k + x.text, binds: scaled}
	case x.binds <= added:
		return part{text: k + x.inBrackets(), binds: scaled}
	}
	return part{text: k + " x " + x.within(product), binds: product}
}

// product writes no sign between 2(n-1) and s.
func (n *node) product() part {
	x, y := n.a.operand(), n.b.operand()
	if x.binds == scaled && y.letter() {
		return part{text: x.text + y.text, binds: scaled}
	}
	left := x.within(product)
	if x.binds == added && (base(n.a).a.op == whole || base(n.a).b.op == whole) {
		left = x.inBrackets()
	}
	return part{text: left + " x " + y.within(product), binds: product}
}

// share is a whole part of something: c/2, (P-t)/2.
func (n *node) share() part {
	k, x := strconv.FormatInt(n.k, 10), n.a.operand()
	switch {
	case x.letter():
		return part{text: x.text + "/" + k, binds: quotient}
	case x.binds <= added:
		return part{text: x.inBrackets() + "/" + k, binds: quotient}
	}
	return part{text: x.within(product) + " / " + k, binds: quotient}
}

// letter reports whether it is a symbol of one letter.
func (p part) letter() bool { return p.binds == atom && len(p.text) == 1 && p.text[0] > '9' }

// within is the part in brackets unless it binds as tightly as it has to.
func (p part) within(least binding) string {
	if p.binds >= least {
		return p.text
	}
	return "(" + p.text + ")"
}

// inBrackets is the part in brackets, without spaces where it can be read so.
func (p part) inBrackets() string {
	if p.tight != "" {
		return "(" + p.tight + ")"
	}
	return "(" + p.text + ")"
}
