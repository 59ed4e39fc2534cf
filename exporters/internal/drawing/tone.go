package drawing

import (
	"strconv"

	"yardproof/pipeline/report"
)

// Colours of what is not a fabric.
func black() Colour    { return Colour{} }
func white() Colour    { return Colour{255, 255, 255} }
func leftOver() Colour { return Colour{226, 226, 226} }

// fillOf is how a key's shapes are filled. Without a colour of its own a tone
// is one of eight greys and hatchings; with it the hatching goes over the
// colour, for two colours may well be one grey.
func fillOf(k report.Key) Fill {
	if c, ok := parseColour(k.Colour); ok {
		hatches := [...]Hatch{NoHatch, Slash, Dots, Backslash, Cross, Level, Vertical, Grid}
		return Fill{c, hatches[k.Tone%len(hatches)], c.ink()}
	}
	tones := [...]Fill{
		{white(), NoHatch, black()}, {Colour{172, 172, 172}, NoHatch, black()},
		{white(), Slash, black()}, {Colour{96, 96, 96}, NoHatch, black()},
		{white(), Dots, black()}, {Colour{212, 212, 212}, Backslash, black()},
		{white(), Cross, black()}, {white(), Level, black()},
	}
	return tones[k.Tone%len(tones)]
}

// plain reports whether text can be read on the fill.
func (f Fill) plain() bool { return f.Hatch == NoHatch && f.Ground.light() >= bright }

// bright is from where on black reads better on a colour than white, of 255.
const bright = 140

// light is how bright a colour looks (the luma weights of ITU-R BT.601).
func (c Colour) light() int { return (299*int(c.R) + 587*int(c.G) + 114*int(c.B)) / 1000 }

// ink is a colour that shows on c without hiding it.
func (c Colour) ink() Colour {
	towards := 0
	if c.light() < bright {
		towards = 255
	}
	mix := func(v uint8) uint8 { return uint8((2*int(v) + 3*towards) / 5) }
	return Colour{mix(c.R), mix(c.G), mix(c.B)}
}

// parseColour reads "#rrggbb".
func parseColour(text string) (Colour, bool) {
	if len(text) != 7 || text[0] != '#' {
		return Colour{}, false
	}
	v, err := strconv.ParseUint(text[1:], 16, 32)
	return Colour{uint8(v >> 16), uint8(v >> 8), uint8(v)}, err == nil
}
