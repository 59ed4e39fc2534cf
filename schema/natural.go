package schema

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"

	"yardproof/schema/jsontree"
)

// needs reports whether an object must have some key; where it need not, no one
// key is the natural place of a bare value.
func needs(schema *jsontree.Node) bool {
	return len(itemsOf(schema.Get("required"))) > 0 || len(alternatives(schema)) > 0
}

var shopLength = regexp.MustCompile(`^[0-9./ -]*[0-9] ?(yds?|yards?|m|metres?|meters?)$`)

// toBuy reports whether a value is a length as a shop sells it, in yards or
// metres.
func toBuy(n *jsontree.Node) bool {
	return n.Kind == jsontree.String && shopLength.MatchString(n.Text)
}

// lengthToBuy leads a length that stands for a fabric's whole yardage to the
// printed figures, "" for any other value.
func (f fault) lengthToBuy() string {
	if len(f.path) != 3 || f.path[0] != "fabrics" || f.path[2] != "yardage" || !toBuy(f.node) {
		return ""
	}
	return fmt.Sprintf("write \"yardage\": {}, and the length to buy in printed.SIZE.fabric: %q: %s", f.path[1], jsonText(f.node.Text))
}

// buysLength reports whether a key that a fabric's yardage cannot have holds a length
// as a shop sells it.
func (f fault) buysLength() bool {
	return len(f.path) == 3 && f.path[0] == "fabrics" && f.path[2] == "yardage" && f.meant.write == "" && !f.meant.near && toBuy(f.node.Get(f.property))
}

// toPrinted leads such a length to the printed figures.
func (f fault) toPrinted(first string) string {
	return fmt.Sprintf("%s, and write the length to buy in printed.SIZE.fabric: %q: %s", first, f.path[1], jsonText(f.node.Get(f.property).Text))
}

var between = regexp.MustCompile(`(?i)\s*(?:×|\bby\b|\*|x)\s*`)

// onePair reports whether one value stands where a pair of lengths is wanted
// whose sides are not alike by nature: two sides in one text, or a key that the
// schema shows with sides of its own.
func (f fault) onePair() bool {
	least, most := itemLimits(f.schema)
	if least != 2 || most != 2 || !f.guide.accepts(f.guide.item(f.schema), f.node) || !slices.Equal(types(f.schema), []string{"array"}) {
		return false
	}
	return f.twoSides() != nil || f.says != f.schema && f.says.Get("examples") != nil
}

var oneSide = regexp.MustCompile(`^[0-9][0-9./ -]*[A-Za-z"″]*$`)

// bare is the number of a length without a unit, like "41 1/2"; nil for any
// other value.
func bare(n *jsontree.Node) *big.Rat {
	sum := new(big.Rat)
	for _, word := range strings.Fields(n.Text) {
		if len(word) > 12 || strings.ContainsAny(word, "eEpP_") {
			return nil
		}
		number, ok := new(big.Rat).SetString(word)
		if !ok {
			return nil
		}
		sum.Add(sum, number)
	}
	return sum
}

// twoSides are the sides of a text like "46 x 54", nil for any other value.
func (f fault) twoSides() []string {
	if f.node.Kind != jsontree.String {
		return nil
	}
	sides := between.Split(strings.TrimSpace(f.node.Text), -1)
	if len(sides) != 2 {
		return nil
	}
	for i, side := range sides {
		if !oneSide.MatchString(side) {
			return nil
		}
		sides[i] = jsonText(side)
	}
	return sides
}

// bothSides shows the pair: of the text's own two sides, of the one side and
// the piece's other, or else an example that is called one.
func (f fault) bothSides() string {
	if sides := f.twoSides(); sides != nil {
		return "write it like " + f.withKey("["+strings.Join(sides, ", ")+"]")
	}
	if sides := f.within(f.holder.Get("piece")); sides != nil {
		return "write it like " + f.withKey("["+strings.Join(sides, ", ")+"]")
	}
	return "write both sides, for example " + f.withKey(f.examples()[0])
}

// within is a pair with the value in place of its shortest side that is long
// enough for it; nil where neither is.
func (f fault) within(pair *jsontree.Node) []string {
	value := bare(f.node)
	if pair == nil || pair == f.node || len(pair.Items) != 2 || value == nil {
		return nil
	}
	var best *big.Rat
	at := -1
	for i, item := range pair.Items {
		if side := bare(item); side != nil && side.Cmp(value) >= 0 && (best == nil || side.Cmp(best) < 0) {
			best, at = side, i
		}
	}
	if at < 0 {
		return nil
	}
	sides := []string{onOneLine(pair.Items[0]), onOneLine(pair.Items[1])}
	sides[at] = onOneLine(f.node)
	return sides
}
