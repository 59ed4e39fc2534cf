package words

import (
	"slices"
	"strings"
)

// spoken is what is said around a claim: mentions in its own words, in the lead or
// label, in its sentence, in the sentence before and in the heading.
type spoken struct {
	near, lead, sentence, previous, heading []mention
}

func (s *spoken) tiers() [][]mention {
	return [][]mention{s.near, s.lead, s.sentence, s.previous, s.heading}
}

// class is a kind of key: of two figures that are alike in all else, which of a
// class is spoken of tells them apart.
type class int

const (
	noClass class = iota // what is counted
	ofCloth              // fabrics
	ofThing              // parts, borders and the rest of a quilt
	ofPlace              // sides, top and bottom
	ofKind               // what a length is of: a seam, usable width, a ruler
)

var things = map[key]bool{
	binding: true, backing: true, batting: true, border: true, sashing: true, cornerstone: true, setting_: true, sideTriangle: true,
	cornerTriangle: true, cornerSquare: true, sleeve: true, label_: true, quilt: true, top: true, middle: true,
}

// kinds are what a length is only taken for where the text says so.
var kinds = map[key]bool{ruler: true, usable: true, seam: true, overhang: true, package_: true, mat: true}

func (k key) class() class {
	switch {
	case strings.HasPrefix(string(k), "fabric ") && k != cloth:
		return ofCloth
	case strings.HasPrefix(string(k), "part "), strings.HasPrefix(string(k), "what "), strings.HasPrefix(string(k), "border "), things[k]:
		return ofThing
	case k == sides, k == ends:
		return ofPlace
	case kinds[k]:
		return ofKind
	}
	return noClass
}

func (m mention) of(c class) bool {
	return slices.ContainsFunc(m.keys, func(k key) bool { return k.class() == c })
}

func (f *figure) of2(c class) bool {
	for k := range f.keys {
		if k.class() == c {
			return true
		}
	}
	return false
}

// denies reports whether what is said speaks of another thing than the figure does:
// the nearest words that speak of any of its class do not speak of it.
func (s *spoken) denies(f *figure, headings bool) bool {
	if f.several && s.oneCloth(f) {
		return true
	}
	if f.keys[quilt] && s.sized() {
		return false
	}
	if f.buy {
		return s.deniesOf(f, headings, ofCloth, ofThing)
	}
	return s.deniesOf(f, headings, ofCloth) || s.deniesOf(f, headings, ofThing) || s.deniesOf(f, headings, ofPlace)
}

func (s *spoken) deniesOf(f *figure, headings bool, classes ...class) bool {
	if !slices.ContainsFunc(classes, f.of2) {
		return false
	}
	said := s.nearest(headings, classes...)
	if slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool { return m.specific() && f.on(m.keys) }) {
		said = slices.DeleteFunc(said, func(m mention) bool { return m.of(ofCloth) && m.of(ofThing) })
	}
	return len(said) > 0 && !slices.ContainsFunc(said, func(m mention) bool { return !m.opposes(f) })
}

// specific reports whether a mention names something.
func (m mention) specific() bool { return m.of(ofCloth) || m.of(ofThing) }

// opposes reports whether a mention cannot be of the figure: it is of none of its
// keys, though the figure has one of each class that the mention may be of.
func (m mention) opposes(f *figure) bool {
	for _, k := range m.keys {
		if k.class() != noClass && (f.keys[k] || f.head[k]) {
			return false
		}
	}
	for _, k := range m.keys {
		if c := k.class(); c != noClass && !f.of2(c) {
			return false
		}
	}
	return true
}

// oneCloth reports whether the nearest words name some of the fabrics that a sum is
// over and not all.
func (s *spoken) oneCloth(f *figure) bool {
	named := map[key]bool{}
	for _, m := range slices.Concat(s.near, s.lead) {
		for _, k := range m.keys {
			if k.class() == ofCloth {
				named[k] = true
			}
		}
	}
	if len(named) == 0 {
		return false
	}
	for k := range f.keys {
		if k.class() == ofCloth && !named[k] {
			return true
		}
	}
	return false
}

// sized reports whether a size is named near by: it stands for the quilt.
func (s *spoken) sized() bool {
	return slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool { return m.size > 0 })
}

// nearest are the mentions of some classes in the nearest words that have any. The
// sentence before may have been about something else.
func (s *spoken) nearest(headings bool, classes ...class) []mention {
	own := slices.ContainsFunc(s.near, func(m mention) bool { return m.of(ofCloth) || m.of(ofThing) })
	tiers := [][]mention{s.near, s.lead}
	if slices.Contains(classes, ofCloth) {
		tiers = [][]mention{slices.Concat(s.near, s.lead)}
	}
	if !own {
		tiers = append(tiers, s.sentence)
	}
	if headings && !own {
		tiers = append(tiers, s.heading)
	}
	for _, tier := range tiers {
		var all []mention
		for _, m := range tier {
			if slices.ContainsFunc(classes, m.of) {
				all = append(all, m)
			}
		}
		if len(all) > 0 {
			return all
		}
	}
	return nil
}

// asks reports whether the text says what a length of the figure's kind has to be
// called: a seam, a usable width.
func (s *spoken) asks(f *figure) bool {
	if f.need != "" && !slices.ContainsFunc(slices.Concat(s.near, s.lead, s.sentence, s.previous), func(m mention) bool { return slices.Contains(m.keys, f.need) }) {
		return false
	}
	if !f.of2(ofKind) {
		return true
	}
	for _, tier := range [][]mention{s.near, s.lead, s.sentence} {
		for _, m := range tier {
			if m.of(ofKind) && f.on(m.keys) {
				return true
			}
		}
	}
	return false
}

// hits is how many mentions of each tier speak of a figure.
func (s *spoken) hits(f *figure) [5]int {
	var out [5]int
	for i, tier := range s.tiers() {
		for _, m := range tier {
			if f.on(m.keys) {
				out[i]++
			}
		}
	}
	return out
}

// common are the heads that so many figures have that they single out none.
var common = map[key]bool{strip: true, square: true, rectangle: true, triangle: true, piece: true}

// supports reports whether something that is said, near enough, speaks of what the
// figure is about, or whether what is counted is a thing of few kinds.
func (s *statement) supports(f *figure) bool {
	for _, k := range s.head {
		if f.head[k] && !common[k] {
			return true
		}
	}
	if f.keys[quilt] && (s.said.sized() || s.only) || s.it && len(s.last) > 0 && f.on(s.last) {
		return true
	}
	for _, tier := range s.said.tiers() {
		for _, m := range tier {
			for _, k := range m.keys {
				if (k.class() != noClass || k == trimmed || heads[k] && !common[k]) && (f.keys[k] || f.head[k]) {
					return true
				}
			}
		}
	}
	return false
}

// names reports whether the nearest words name any of the figures.
func (s *spoken) names(all []*figure) bool {
	return slices.ContainsFunc(slices.Concat(s.near, s.lead), func(m mention) bool {
		return m.specific() && slices.ContainsFunc(all, func(f *figure) bool { return f.on(m.keys) })
	})
}
