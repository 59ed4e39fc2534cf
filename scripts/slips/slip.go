package main

import (
	"math/rand/v2"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
)

// slip is a plan with a single mistake in it.
type slip struct {
	of    *line
	group string // of the kinds
	kind  string
	at    string // JSON Pointer (RFC 6901) of what is wrong
	was   string // what stood there
	text  string // the plan with the mistake
}

// The groups of kinds.
const (
	recipes = "recipe"
	printed = "printed figures"
	names   = "names and keys"
	prices  = "prices"
	warns   = "cautions"
)

// kind is one way of going wrong.
type kind struct {
	group, name string
	most        int // of one plan
	make        func(*line) []change
}

func put(n *jsontree.Node, text string) change {
	return change{replacement: replacement{n.Range, text}}
}

// kinds are all of them, in the order of the table.
func kinds() []kind {
	return []kind{
		{recipes, "a step on the ruler", 4, (*line).stepped},
		{recipes, "a seam allowance lost", 3, (*line).lost},
		{recipes, "seam allowances added", 3, (*line).added},
		{recipes, "finished for cut", 3, (*line).finishedForCut},
		{recipes, "a pair exchanged", 2, (*line).exchangedPairs},
		{recipes, "no trim", 2, (*line).untrimmed},
		{recipes, "another trim", 2, (*line).mistrimmed},
		{recipes, "a turn", 2, (*line).turned},
		{recipes, "digits swapped", 2, (*line).swapped},
		{recipes, "another fraction", 3, (*line).fractions},
		{recipes, "a count off by one", 3, (*line).miscounted},
		{printed, "a step", 3, func(l *line) []change { return l.falsified(stepUp, stepDown) }},
		{printed, "digits swapped", 2, (*line).swappedFigures},
		{printed, "doubled", 2, func(l *line) []change { return l.falsified(doubled) }},
		{printed, "exchanged", 2, func(l *line) []change { return l.falsified(exchanged) }},
		{names, "a name misspelt", 3, (*line).misspelt},
		{names, "another's name", 3, (*line).misnamed},
		{names, "a key misspelt", 3, (*line).keysMisspelt},
		{prices, "digits swapped", 2, (*line).pricesSwapped},
		{prices, "the point moved", 2, (*line).pointsMoved},
		{prices, "an article misspelt", 1, (*line).articlesMisspelt},
		{warns, "one left out", 1, (*line).unwarned},
		{warns, "one too many", 1, (*line).overwarned},
	}
}

// slips are the mistakes that are made in a plan: of each kind as many as the
// table of kinds says, drawn with a seed that is the plan's name and the kind.
func (l *line) slips() []slip {
	var all []slip
	for _, k := range kinds() {
		made := k.make(l)
		r := rand.New(rand.NewPCG(seed(l.name), seed(k.group+k.name)))
		r.Shuffle(len(made), func(i, j int) { made[i], made[j] = made[j], made[i] })
		for _, c := range made[:min(k.most, len(made))] {
			at := c.at.Start
			if c.text == "" { // something is taken away: it stands after the comma
				at = c.at.End - 1
			}
			all = append(all, slip{l, k.group, k.name, l.tree.PointerAt(at), l.file.Slice(c.at), l.with(c)})
		}
	}
	return all
}

// seed is a number made of a name: FNV-1a, as Fowler, Noll and Vo give it.
func seed(name string) uint64 {
	h := uint64(14695981039346656037)
	for _, b := range []byte(name) {
		h = (h ^ uint64(b)) * 1099511628211
	}
	return h
}

// without takes a member or an item away, with the comma that then is one too
// many.
func (l *line) without(in *jsontree.Node, i int) change {
	first, last := in.Range.Start+1, in.Range.End-1
	var at replacement
	start, end := childRange(in, i)
	switch n := max(len(in.Members), len(in.Items)); {
	case n == 1:
		at.at.Start, at.at.End = first, last
	case i > 0:
		_, at.at.Start = childRange(in, i-1)
		at.at.End = end
	default:
		at.at.Start = start
		at.at.End, _ = childRange(in, i+1)
	}
	return change{replacement: at}
}

func childRange(n *jsontree.Node, i int) (start, end int) {
	if n.Kind == jsontree.Object {
		return n.Members[i].KeyRange.Start, n.Members[i].Value.Range.End
	}
	return n.Items[i].Range.Start, n.Items[i].Range.End
}

// transposed are the texts in which two digits that stand together and differ
// have changed places. No number begins with 0 because of it.
func transposed(text string) []string {
	var all []string
	for i := 0; i+1 < len(text); i++ {
		a, b := text[i], text[i+1]
		starts := i == 0 || !strings.ContainsRune("0123456789.", rune(text[i-1]))
		if digit(a) && digit(b) && a != b && !(starts && b == '0') {
			all = append(all, text[:i]+string([]byte{b, a})+text[i+2:])
		}
	}
	return all
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// typos are three ways of misspelling a word: a letter left out, two exchanged,
// and one typed twice; always in the middle.
func typos(word string) []string {
	if len(word) < 3 {
		return []string{word + word[len(word)-1:]}
	}
	m := len(word) / 2
	all := []string{word[:m] + word[m+1:], word[:m] + word[m-1:m] + word[m:]}
	if word[m-1] != word[m] {
		all = append(all, word[:m-1]+string([]byte{word[m], word[m-1]})+word[m+1:])
	}
	return slices.DeleteFunc(all, func(s string) bool { return s == word })
}
