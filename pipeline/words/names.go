package words

import (
	"slices"
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/schema/plan"
)

// key is what a word of a text may speak of: a fabric, a part, a border, a thing
// that every quilt has, or a kind of thing that is counted.
type key string

func fabricKey(role string) key { return key("fabric " + role) }
func partKey(name string) key   { return key("part " + name) }
func whatKey(what string) key   { return key("what " + what) }
func borderKey(name string) key { return key("border " + name) }

// The things that quilts have, and the kinds of things that patterns count.
const (
	binding, backing, batting    key = "binding", "backing", "batting"
	border, sashing, cornerstone key = "border", "sashing", "cornerstone"
	setting_, sideTriangle       key = "setting triangle", "side triangle"
	cornerTriangle, cornerSquare key = "corner triangle", "corner square"
	sleeve, label_, quilt        key = "sleeve", "label", "quilt"
	middle, top                  key = "middle", "top"
	sides, ends                  key = "sides", "top and bottom"
	mat                          key = "mat"

	strip, square, rectangle, triangle key = "strip", "square", "rectangle", "triangle"
	piece, segment, stripSet, tube     key = "piece", "segment", "strip set", "tube"
	unit, block, row, column           key = "unit", "block", "row", "column"
	panel, pack, pair, seam            key = "panel", "pack", "pair", "seam"
	usable, ruler, spare, round        key = "usable width", "ruler", "spare", "round"
	log_, centre, cloth, package_      key = "log", "centre", "fabric", "package"
	overhang, oneSize, trimmed         key = "overhang", "size", "trimmed"
	lot                                key = "lot"
)

// trade are the words of the trade. A phrase is looked for before its words.
var trade = map[string][]key{
	"strip": {strip}, "square": {square}, "rectangle": {rectangle}, "triangle": {triangle}, "piece": {piece}, "patch": {piece, block},
	"segment": {segment}, "unit": {unit}, "set": {stripSet}, "strip set": {stripSet}, "strata": {stripSet}, "tube": {tube},
	"block": {block}, "row": {row}, "column": {column}, "panel": {panel}, "pack": {pack}, "packet": {pack}, "roll": {pack}, "bundle": {pack},
	"pair": {pair}, "seam": {seam}, "seam allowance": {seam}, "allowance": {seam}, "usable width": {usable}, "usable": {usable}, "wof": {usable},
	"width of fabric": {usable}, "fabric width": {usable}, "usable fabric width": {usable}, "ruler": {ruler}, "spare": {spare}, "leave over": {spare},
	"leave": {spare}, "left over": {spare}, "left": {spare}, "leftover": {spare}, "round": {round}, "log": {log_}, "cut mat": {mat}, "cutting mat": {mat}, "mat": {mat},
	"half-square triangle": {unit}, "half-square triangle unit": {unit}, "half-square unit": {unit}, "half-square": {unit}, "hst": {unit}, "quarter-square triangle": {unit}, "nine-patch block": {block}, "four-patch block": {block}, "nine-patch": {block}, "four-patch": {block},
	"binding": {binding}, "bind": {binding}, "backing": {backing}, "back": {backing}, "batting": {batting}, "wadding": {batting}, "border": {border}, "frame": {border},
	"sash": {sashing}, "sashing": {sashing}, "cornerstone": {cornerstone}, "setting triangle": {setting_}, "side triangle": {sideTriangle, setting_},
	"side setting triangle": {sideTriangle, setting_}, "corner triangle": {cornerTriangle, setting_}, "corner setting triangle": {cornerTriangle, setting_},
	"corner square": {cornerSquare, square}, "sleeve": {sleeve}, "label": {label_}, "quilt": {quilt, top}, "top": {top, ends}, "quilt top": {top}, "runner": {quilt, top},
	"centre": {middle, centre}, "quilt centre": {middle}, "middle": {middle}, "centre square": {centre, square}, "side": {sides}, "end": {ends}, "top and bottom": {ends},
	"fabric": {cloth}, "cloth": {cloth}, "package": {package_, pack}, "overhang": {overhang}, "finished size": {quilt}, "fat quarter": {piece, pack},
	"pair of square": {pair}, "size": {oneSize}, "trim": {trimmed}, "lot": {lot}, "batch": {lot}, "trimmed": {trimmed},
}

// heads are the keys that a count counts.
var heads = map[key]bool{
	strip: true, square: true, rectangle: true, triangle: true, piece: true, segment: true, stripSet: true, tube: true, unit: true, block: true,
	row: true, column: true, panel: true, pack: true, pair: true, spare: true, round: true, log_: true, cornerstone: true, sashing: true,
	sideTriangle: true, cornerTriangle: true, cornerSquare: true, oneSize: true, lot: true,
}

// dull words say nothing by themselves in the name of a fabric.
var dull = set("and", "of", "the", "for", "a", "in", "as", "with", "print", "prints", "fabric", "fabrics", "colour", "color", "assorted", "inch", "inches", "measured",
	"square", "strip", "triangle", "rectangle", "piece", "patch", "block", "log", "half", "x", "set", "unit", "prewashed", "printed", "panel",
	"wide", "extra", "long", "large", "small", "narrow", "width", "length", "deep", "one", "whole", "first", "second", "last", "each", "all", "cut")

// stem is a word as it is looked up: in the singular, in one spelling.
func stem(w string) string {
	switch w = strings.TrimSuffix(w, "'s"); w {
	case "geese":
		return "goose"
	case "halves":
		return "half"
	case "center", "centers", "centres":
		return "centre"
	case "pcs", "pc":
		return "piece"
	case "sq", "sqs":
		return "square"
	case "hsts":
		return "hst"
	case "binds", "bound":
		return "bind"
	}
	switch {
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		return w[:len(w)-3] + "y"
	case strings.HasSuffix(w, "xes"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "sses"):
		return w[:len(w)-2]
	case strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && len(w) > 3:
		return w[:len(w)-1]
	}
	return w
}

// lexicon is what the words of a text may mean in one plan.
type lexicon struct {
	phrases map[string][]key
	longest int // words in a phrase
	parts   []string
	sizes   map[string]int // names of sizes, counted from 1
	title   []string
	n       int // of sizes
}

func newLexicon(p *plan.Plan, sizes []*derive.Size) *lexicon {
	x := &lexicon{phrases: map[string][]key{}, sizes: map[string]int{}, n: len(sizes), title: plainWords(p.Title.Text)}
	for phrase, keys := range trade {
		x.put(strings.Fields(phrase), keys...)
	}
	for i, s := range sizes {
		x.sizes[strings.Join(stems(plainWords(s.Of.Name.Text)), " ")] = i + 1
		for _, f := range s.Fabrics {
			x.fabric(f.Role.Text, f.Name.Text)
		}
		for _, q := range s.Parts {
			x.named(q.Name.Text, partKey(q.Name.Text))
			if !slices.Contains(x.parts, q.Name.Text) {
				x.parts = append(x.parts, q.Name.Text)
			}
		}
		for _, q := range s.Parts {
			for _, r := range q.Room.OnRuler() {
				for _, w := range stems(plainWords(r.What)) {
					if !plainSize[w] {
						x.put([]string{w}, whatKey(w))
					}
				}
			}
		}
		for _, b := range s.Top.Borders {
			x.named(b.Said.Name.Text, borderKey(b.Said.Name.Text))
		}
	}
	return x
}

// plainSize are words for a cut size that name no piece.
var plainSize = set("cut", "width", "height", "trim", "segment", "square", "strip", "triangle", "rectangle", "piece", "of", "side", "the", "across", "down", "unit")

// plainWords are the words and figures of a name.
func plainWords(name string) []string {
	var all []string
	for _, t := range lex(name, 0, 0) {
		if t.kind != mark {
			all = append(all, t.text)
		}
	}
	return all
}

func stems(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = stem(w)
	}
	return out
}

// put adds a phrase.
func (x *lexicon) put(words []string, keys ...key) {
	if len(words) == 0 {
		return
	}
	phrase := strings.Join(words, " ")
	for _, k := range keys {
		if !slices.Contains(x.phrases[phrase], k) {
			x.phrases[phrase] = append(slices.Clip(x.phrases[phrase]), k)
		}
	}
	x.longest = max(x.longest, len(words))
}

// named adds a name that the plan gives, and what of it tells it from others.
func (x *lexicon) named(name string, k key) {
	words := stems(plainWords(name))
	x.put(words, k)
	x.distinct(words, k)
}

func isFigure(w string) bool { return w != "" && isDigit(rune(w[0])) }

// everyday are words that patterns use in other senses than for a fabric, whatever
// the plan calls its own by them.
var everyday = set("edge", "back", "top", "side", "line", "point", "step", "long", "corner", "light", "dark", "plain", "roll", "seat", "label", "string", "wall", "sun", "tin", "air", "rim", "hand", "lap")

// fabric adds a fabric by its role and by the pieces of its name: dark squares,
// border and binding are three.
func (x *lexicon) fabric(role, name string) {
	k := fabricKey(role)
	if name == "" || !everyday[stem(strings.ToLower(role))] {
		x.named(role, k)
	}
	for _, part := range strings.Split(strings.NewReplacer(" and ", ",", " / ", ",").Replace(name), ",") {
		words := stems(plainWords(part))
		if len(words) > 0 && trade[strings.Join(words, " ")] != nil && !strings.HasPrefix(words[0], "setting") {
			continue // the binding is no name of the fabric that it is cut from
		}
		for len(words) > 1 && (trade[words[len(words)-1]] != nil || dull[words[len(words)-1]]) {
			words = words[:len(words)-1] // the squares of "dark squares" are counted
		}
		if slices.ContainsFunc(words, func(w string) bool { return !dull[w] && !isFigure(w) }) {
			x.put(words, k)
		}
		x.distinct(words, k)
	}
}

// distinct adds the words of a name that tell it from others.
func (x *lexicon) distinct(words []string, k key) {
	for _, w := range words {
		if len(w) > 1 && !dull[w] && small[w] == 0 && tens[w] == 0 && !isFigure(w) && (trade[w] == nil || len(words) == 1) {
			x.put([]string{w}, k)
		}
	}
}

// mention is a stretch of tokens that speaks of something.
type mention struct {
	from, to int
	keys     []key
	size     int // counted from 1; 0 where it names none
}

// mentions finds what tokens speak of, the longest phrases first.
func (x *lexicon) mentions(t []token) []mention {
	var all []mention
	for i := 0; i < len(t); {
		if n := x.titleAt(t, i); n > 0 {
			i += n
			continue
		}
		m, ok := x.mention(t, i)
		if !ok {
			i++
			continue
		}
		all = append(all, m)
		i = m.to
	}
	return all
}

func (x *lexicon) mention(t []token, i int) (mention, bool) {
	for n := x.longest + 2; n > 0; n-- {
		phrase, end := phraseOf(t, i, n)
		if end == 0 {
			continue
		}
		m := mention{from: i, to: end, keys: x.phrases[phrase], size: x.sizes[phrase]}
		if m.size > 0 && end < len(t) && t[end].is("quilt", "hanging", "size", "version") {
			m.to, m.keys = m.to+1, nil
		}
		if n == 1 && len(m.keys) == 0 {
			m.keys = x.within(phrase)
		}
		if len(m.keys) > 0 {
			m.keys = x.components(m.keys, phrase)
		}
		if (len(m.keys) > 0 || m.size > 0) && !at(t, i-1).is("before", "without") {
			return m, true
		}
	}
	return mention{}, false
}

// components adds what the words of a phrase name by themselves: the part nine of a
// nine-patch block.
func (x *lexicon) components(keys []key, phrase string) []key {
	words := strings.FieldsFunc(phrase, func(r rune) bool { return r == ' ' || r == '-' })
	if len(words) < 2 {
		return keys
	}
	keys = slices.Clone(keys)
	for _, w := range words {
		for _, k := range x.phrases[w] {
			if named := strings.Contains(string(k), " ") && (k.class() == ofCloth || k.class() == ofThing); named && !slices.Contains(keys, k) && trade[w] == nil {
				keys = append(keys, k)
			}
		}
	}
	return keys
}

// titleAt is how many tokens from i on are the plan's title, which speaks of
// nothing; 0 where it does not begin there.
func (x *lexicon) titleAt(t []token, i int) int {
	if len(x.title) < 2 && (i > 0 || len(t) > 1) {
		return 0
	}
	k, j := 0, i
	for j < len(t) && k < len(x.title) && (t[j].kind != mark && t[j].text == x.title[k] || t[j].kind == mark && k > 0) {
		if t[j].kind != mark {
			k++
		}
		j++
	}
	if k < len(x.title) || k == 0 {
		return 0
	}
	return j - i
}

// within finds a part whose name a longer word ends with: the wheel in pinwheels.
func (x *lexicon) within(w string) []key {
	for _, p := range x.parts {
		if name := stem(strings.ToLower(p)); len(name) >= 4 && len(w) > len(name) && (strings.HasSuffix(w, name) || strings.HasPrefix(w, name)) {
			return []key{partKey(p)}
		}
	}
	return nil
}

// phraseOf is n words and figures from token i on, as they are looked up; end is 0
// where there are not so many beside each other. A hyphen ties two words, or is
// as good as a blank.
func phraseOf(t []token, i, n int) (phrase string, end int) {
	var s strings.Builder
	for k := 0; k < n; k++ {
		if i >= len(t) || t[i].kind == mark {
			return "", 0
		}
		if k > 0 {
			s.WriteByte(' ')
		}
		s.WriteString(stem(t[i].text))
		i++
		for i+1 < len(t) && t[i].text == "-" && !t[i].loose && !t[i+1].loose && t[i+1].kind == word && k < n-1 && tied(s.String()) {
			s.WriteByte('-')
			s.WriteString(stem(t[i+1].text))
			i += 2
		}
		if k < n-1 && i < len(t) && t[i].text == "-" && !t[i].loose {
			i++
		}
	}
	return s.String(), i
}

// tied are first words of what the trade writes with a hyphen.
func tied(s string) bool {
	return strings.HasSuffix(s, "half") || strings.HasSuffix(s, "nine") || strings.HasSuffix(s, "four") || strings.HasSuffix(s, "quarter")
}

// size is the one size that tokens name, 0 where they name none or several.
func (x *lexicon) size(t []token) int {
	found := 0
	for _, m := range x.mentions(t) {
		if m.size == 0 {
			continue
		}
		if found > 0 && found != m.size {
			return 0
		}
		found = m.size
	}
	return found
}
