package main

import (
	"fmt"
	"strconv"

	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// way is how a figure is falsified.
type way string

// The ways.
const (
	stepUp    way = "a step up"
	stepDown  way = "a step down"
	tenthUp   way = "a tenth up"
	tenthDown way = "a tenth down"
	doubled   way = "doubled"
	exchanged way = "exchanged"
)

func ways() []way { return []way{stepUp, stepDown, tenthUp, tenthDown, doubled, exchanged} }

// move is a plan with one figure falsified, or two exchanged.
type move struct {
	of    *line
	fig   figure
	other *figure // what it is exchanged with
	how   way
	change
	text string

	more    bool           // the figure becomes more
	becomes measure.Length // of a length
}

// moves falsifies every figure in every way that makes it another one.
func (l *line) moves() []move {
	var all []move
	for i, f := range l.figures {
		seen := map[string]bool{f.text: true, f.same(): true}
		for _, how := range []way{stepUp, stepDown, tenthUp, tenthDown, doubled} {
			text, more, ok := f.moved(how)
			if ok && !seen[text] {
				seen[text] = true
				c := change{replacement: replacement{f.at, text}}
				all = append(all, move{of: l, fig: f, how: how, more: more, becomes: moved(f.length, f.step, how), change: c, text: l.with(c)})
			}
		}
		if i+1 < len(l.figures) {
			if g := l.figures[i+1]; neighbours(f, g) && f.same() != g.same() {
				c := change{replacement{f.at, g.text}, []replacement{{g.at, f.text}}}
				all = append(all, move{of: l, fig: f, other: &g, how: exchanged, more: g.count > f.count || g.length > f.length, change: c, text: l.with(c)})
			}
		}
	}
	return all
}

// neighbours reports whether two figures that follow each other may be exchanged:
// they are of one kind and size of quilt, and no strip width stands between
// numbers of strips.
func neighbours(f, g figure) bool { return f.kind == g.kind && g.at.Start-f.at.End < 80 }

// same is the value as the moves write it.
func (f figure) same() string {
	if f.step == 0 {
		return strconv.FormatInt(f.count, 10)
	}
	return f.write(f.length)
}

// moved is the value as falsified; ok is false where it would be none.
func (f figure) moved(how way) (text string, more, ok bool) {
	if f.step == 0 {
		n := moved(f.count, 1, how)
		return strconv.FormatInt(n, 10), n > f.count, n >= 0
	}
	l := moved(f.length, f.step, how)
	return f.write(l), l > f.length, l > 0
}

// moved is a value as falsified; a tenth of it is rounded to whole steps, away
// from it.
func moved[N int64 | measure.Length](n, step N, how way) N {
	if step == 0 {
		return 0 // a count has no length
	}
	tenth := (n + 10*step - 1) / (10 * step) * step
	switch how {
	case stepUp:
		return n + step
	case stepDown:
		return n - step
	case tenthUp:
		return n + tenth
	case tenthDown:
		return n - tenth
	}
	return 2 * n
}

// replacement is a text in the place of another.
type replacement struct {
	at   source.Range
	text string
}

// change is a text in the place of another, and others that stand after it.
type change struct {
	replacement
	then []replacement
}

// with is the plan's text with a change made in it.
func (l *line) with(c change) string {
	whole := string(l.file.Bytes)
	out, from := "", 0
	for _, r := range append([]replacement{c.replacement}, c.then...) {
		out += whole[from:r.at.Start] + r.text
		from = r.at.End
	}
	return out + whole[from:]
}

// String names a move: "long-bench /printed/throw/strips/slat: 6 doubled".
func (m move) String() string {
	text := fmt.Sprintf("%s %s: %s %s", m.of.name, m.of.pointer(m.fig.at), m.fig.text, m.how)
	if m.other != nil {
		text += " with " + m.other.text
	}
	return text
}

func (l *line) pointer(at source.Range) string { return l.tree.PointerAt(at.Start) }
