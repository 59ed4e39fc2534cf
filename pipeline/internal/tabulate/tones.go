package tabulate

import (
	"strings"

	"yardproof/pipeline/internal/derive"
)

// Tones of a legend that look light, medium and dark where they are printed
// without colour: white, a middle grey and a dark one.
const (
	lightTone = iota
	mediumTone
	_
	darkTone
)

// tones are those of the fabrics that show, by their places in the size: what a
// fabric's name says it is, where that tone is not taken, and otherwise the first
// that is free.
func tones(fabrics []*derive.Fabric, shown []bool) map[int]int {
	of, taken := map[int]int{}, map[int]bool{}
	take := func(i, tone int) { of[i], taken[tone] = tone, true }
	for i, f := range fabrics {
		if tone, says := toneSaid(f); says && shown[i] && !taken[tone] {
			take(i, tone)
		}
	}
	free := 0
	for i := range fabrics {
		if _, has := of[i]; has || !shown[i] {
			continue
		}
		for taken[free] {
			free++
		}
		take(i, free)
	}
	return of
}

// toneSaid is the tone that a fabric's role or name says.
func toneSaid(f *derive.Fabric) (tone int, says bool) {
	words := strings.FieldsFunc(strings.ToLower(f.Role.Text+" "+f.Name.Text), func(r rune) bool { return r == ' ' || r == '-' })
	for _, word := range words { // the first that says one
		switch word {
		case "light":
			return lightTone, true
		case "medium":
			return mediumTone, true
		case "dark":
			return darkTone, true
		}
	}
	return 0, false
}
