package caution

import "slices"

// caution is a safety line that a pattern prints, by the key under which a
// plan lists it.
type caution struct {
	key, sentence string
}

// cautions are reminders, no legal advice: each defers to the maker's
// instructions of the tool or to the rules where the pattern is sold. What
// they remind of is common practice unless a source is named.
var cautions = [...]caution{
	{"rotary-cutter", "Rotary cutter: close the blade after every cut, cut away from the body with the hand behind the ruler's edge, and keep cutter and blades away from children; follow the maker's instructions."},
	{"iron", "Iron: plate and steam burn, so never leave it on unwatched; press bias edges rather than sliding over them, and follow the instructions of the iron and of the fabric."},
	{"overlock", "Overlock machine: keep hair and loose sleeves away, switch it off and unplug it before threading or changing a needle, and follow the maker's instructions."},
	{"pins", "Pins and needles: take every pin out before it reaches a needle or an overlock's knife, as broken metal flies; count them in and out, and follow the machine maker's instructions."},
	{"starch", "Spray starch and adhesive: use them in fresh air and away from flames, and follow the instructions on the can."},
	{"bias-edges", "Bias edges: they stretch, so handle them little, press without sliding, and try starch on a scrap first as the fabric's maker allows."},
	{"bias-outside", "Outer edge: the edge of this top is cut on the bias and stretches; sew a line of stitches just inside it before quilting, as the machine's instructions advise, do not pull it, and bind it soon."},
	{"unpick-tip", "Tube tips: a few stitches of the far seam cross the tip of each square; unpick them before opening it, and follow the maker's instructions for the seam ripper."},
	// US Consumer Product Safety Commission, "bare is best".
	{"bare-cot", "Babies: the safest sleep is in a bare cot, without quilts, pillows or soft bedding; this quilt is for play, pram or wall under supervision, never loose in the cot. Check your local rules and health advice."},
	// 16 CFR 1501 holds the US rules for small parts.
	{"small-parts", "Small parts: buttons, beads and ribbon can choke children under three; leave them off, and check your local rules before giving or selling."},
	// 16 CFR 1500.48 and 1500.49 hold the US tests for sharp points and edges.
	{"children", "Children: cutters, needles and pins are sharp; this is no kit for young children without an adult beside them. Check your local rules for age marks before selling."},
}

// Sentence is what is printed for a caution's key; ok is false for a key
// that there is none for.
func Sentence(key string) (sentence string, ok bool) {
	for _, c := range cautions {
		if c.key == key {
			return c.sentence, true
		}
	}
	return "", false
}

// Keys are the keys of all cautions, in the order in which a pattern
// would print them.
func Keys() []string {
	keys := make([]string, 0, len(cautions))
	for _, c := range cautions {
		keys = append(keys, c.key)
	}
	return slices.Clip(keys)
}
