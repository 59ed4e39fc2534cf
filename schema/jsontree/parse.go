package jsontree

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

	"yardproof/schema/source"
)

// The problems that Parse can find; they become the names of rules.
const (
	codeEmpty     = "schema/empty-file"
	codeNotJSON   = "schema/not-json"
	codeEncoding  = "schema/encoding"
	codeDuplicate = "schema/duplicate-key"
	codeTrailing  = "schema/trailing-text"
	codeDeep      = "schema/too-deep"
	codeNumber    = "schema/number"
	codeLarge     = "schema/too-large"
)

// Parse decodes the single JSON value of a file (RFC 8259, with the demands of
// RFC 7493 on keys and encoding). Problems come in the order of the file.
//
// The node is nil when the file cannot be used. Duplicate keys alone leave it
// usable: the first of them counts, and the problems name the others. After a
// duplicate key, half a surrogate pair or a number out of bounds Parse goes on,
// so that one run shows all of them; text that is not JSON ends it.
//
// The bytes of f must not change while the tree is in use.
func Parse(f *source.File, lim Limits) (*Node, []source.Problem) {
	p := parser{file: f, lim: lim.withDefaults()}
	root := p.root()
	return root, p.sorted()
}

type parser struct {
	file     *source.File
	lim      Limits
	text     string // the whole file once more; strings of the tree are parts of it
	dec      *jsontext.Decoder
	last     token // read before this one
	open     []int // where the brackets around this place open
	spare    []Node
	values   int
	problems []source.Problem
	untold   int // problems beyond the limit
	unusable bool
	crooked  slant
}

// token is one token and where it stands; brackets are tokens, commas and
// colons are not.
type token struct {
	kind  jsontext.Kind // 0 before the first
	place source.Range
	key   bool
}

func (p *parser) root() *Node {
	if !p.readable() {
		return nil
	}
	p.text = string(p.file.Bytes)
	// Duplicates and odd characters are looked for here, so that reading can go on after one.
	p.dec = jsontext.NewDecoder(bytes.NewBuffer(p.file.Bytes), jsontext.AllowDuplicateNames(true), jsontext.AllowInvalidUTF8(true))
	n := p.value()
	if n == nil {
		return nil
	}
	if p.trailing(); p.unusable {
		return nil
	}
	return n
}

// next reads a token. When there is none it finds out why and says so.
func (p *parser) next() (token, bool) {
	t, err := p.dec.ReadToken()
	if err != nil {
		p.diagnose(err)
		return token{}, false
	}
	end := int(p.dec.InputOffset())
	p.last = token{kind: t.Kind(), place: source.Range{Start: p.gap(p.last.place.End), End: end}}
	return p.last, true
}

// gap is the end of the blanks, comma and colon before a token.
func (p *parser) gap(at int) int {
	for at < len(p.text) {
		switch p.text[at] {
		case ' ', '\t', '\r', '\n', ',', ':':
			at++
		default:
			return at
		}
	}
	return at
}

// skip is the first offset from at on that holds none of the given characters.
func (p *parser) skip(at int, set string) int {
	for at < len(p.text) && strings.IndexByte(set, p.text[at]) >= 0 {
		at++
	}
	return at
}

func (p *parser) value() *Node {
	t, ok := p.next()
	if !ok {
		return nil
	}
	return p.valueOf(t)
}

// valueOf is the value that begins with a token, nil when the rest of the file
// is of no use.
func (p *parser) valueOf(t token) *Node {
	if p.values++; p.values > p.lim.MaxValues {
		p.end(codeLarge, t.place, fmt.Sprintf("the file holds more than %s values", thousands(p.lim.MaxValues)), "split the file")
		return nil
	}
	n := p.node()
	n.Range = t.place
	switch t.kind {
	case '{':
		return p.container(n, Object, p.members)
	case '[':
		return p.container(n, Array, p.items)
	case '"':
		n.Kind, n.Text = String, p.unquote(t.place)
	case '0':
		n.Kind, n.Text = Number, p.number(t.place)
	case 't', 'f':
		n.Kind, n.Text = Bool, p.text[t.place.Start:t.place.End]
	}
	return n
}

// node comes from a block of them: one allocation for many small values.
func (p *parser) node() *Node {
	if len(p.spare) == 0 {
		p.spare = make([]Node, 32)
	}
	n := &p.spare[0]
	p.spare = p.spare[1:]
	return n
}

func (p *parser) container(n *Node, kind Kind, fill func(*Node) bool) *Node {
	n.Kind = kind
	if len(p.open) == p.lim.MaxDepth {
		p.end(codeDeep, n.Range, fmt.Sprintf("objects and arrays stand more than %s deep inside one another here", thousands(p.lim.MaxDepth)), "nest them less deeply")
		return nil
	}
	p.open = append(p.open, n.Range.Start)
	if !fill(n) {
		return nil
	}
	p.open = p.open[:len(p.open)-1]
	n.Range.End = p.last.place.End
	p.crooked.note(p.text, n.Range)
	return n
}

func (p *parser) items(n *Node) bool {
	for {
		t, ok := p.next()
		if !ok || t.kind == ']' {
			return ok
		}
		item := p.valueOf(t)
		if item == nil {
			return false
		}
		n.Items = append(n.Items, item)
	}
}

func (p *parser) members(n *Node) bool {
	for {
		t, ok := p.next()
		if !ok || t.kind == '}' {
			return ok
		}
		p.last.key = true
		m := Member{Key: p.unquote(t.place), KeyRange: t.place}
		if m.Value = p.value(); m.Value == nil {
			return false
		}
		p.addMember(n, m)
	}
}

func (p *parser) addMember(n *Node, m Member) {
	first := n.Member(m.Key)
	if first == nil {
		n.add(m)
		return
	}
	if p.full() {
		return
	}
	p.report(codeDuplicate, m.KeyRange,
		fmt.Sprintf("two keys named %s: the first is %s", quote(m.Key), p.seenFrom(m.KeyRange.Start, first.KeyRange.Start)),
		"remove one of them, or give it another name")
}

// firstOfC1 is the first byte of U+0080 to U+00BF, of which half are control
// characters.
const firstOfC1 = 0xc2

// unquote decodes a string that the tokeniser has found to be well formed.
func (p *parser) unquote(r source.Range) string {
	raw := p.text[r.Start:r.End]
	if !strings.ContainsAny(raw, "\\\x7f") && strings.IndexByte(raw, firstOfC1) < 0 {
		return raw[1 : len(raw)-1]
	}
	p.characters(r)
	b, err := jsontext.AppendUnquote(nil, raw)
	if err != nil {
		p.unusable = true // a lone surrogate, which has just been reported
	}
	return string(b)
}

// full counts a problem that there is no more room to tell. Asking it first
// saves finding words for a hundred thousand of them.
func (p *parser) full() bool {
	if len(p.problems) < p.lim.MaxProblems {
		return false
	}
	p.untold++
	return true
}

// report notes a problem after which the tree can still be used.
func (p *parser) report(code string, r source.Range, message, hint string) {
	p.problems = append(p.problems, source.Problem{Code: code, Range: r, Message: message, Hint: hint})
}

// fail notes a problem after which the tree is of no use, but reading goes on.
func (p *parser) fail(code string, r source.Range, message, hint string) {
	p.unusable = true
	if !p.full() {
		p.report(code, r, message, hint)
	}
}

// end notes the problem that ends the reading; there is always room for it.
func (p *parser) end(code string, r source.Range, message, hint string) {
	p.unusable = true
	p.report(code, r, message, hint)
}

// sorted is the problems in the order of the file; the last one says how many
// there was no room for.
func (p *parser) sorted() []source.Problem {
	source.SortProblems(p.problems)
	if p.untold > 0 {
		p.problems[len(p.problems)-1].Message += fmt.Sprintf(" (%s more problems are not shown)", thousands(p.untold))
	}
	return p.problems
}
