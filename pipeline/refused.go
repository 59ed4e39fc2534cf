package pipeline

import (
	"slices"
	"strings"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// beyondRefused leaves out, of what the sizes and the decoder say, what follows
// from a value that the schema has refused: what is said of its insides, which
// were read as what they are not, of the same place of a size, which is merged
// over it, and of the value itself once more.
func beyondRefused(tree *jsontree.Node, refused, more []source.Problem) []source.Problem {
	var whole []string
	for _, p := range refused {
		if p.Code == schema.WrongType {
			whole = append(whole, tree.PointerAt(p.Range.Start))
		}
	}
	return slices.DeleteFunc(more, func(p source.Problem) bool {
		if slices.ContainsFunc(refused, func(r source.Problem) bool { return said(r, p) }) {
			return true
		}
		at := tree.PointerAt(p.Range.Start)
		return slices.ContainsFunc(whole, func(w string) bool { return below(at, w) || below(recipePlace(at), w) })
	})
}

// below reports whether a place is another or lies in it.
func below(at, place string) bool { return at == place || strings.HasPrefix(at, place+"/") }

// besideRefused leaves out, of what the decoder says, what it concludes from a
// value that the schema has refused beside it: that a layout which neither
// stands straight nor on point has no room for setting triangles.
func besideRefused(tree *jsontree.Node, refused, unread []source.Problem) []source.Problem {
	var holders []string
	for _, p := range refused {
		if p.Code == schema.WrongType || p.Code == schema.NotAllowed {
			holders = append(holders, holder(tree.PointerAt(p.Range.Start)))
		}
	}
	return slices.DeleteFunc(unread, func(p source.Problem) bool {
		concluded := p.Code == schema.Missing || p.Code == schema.NotAllowed || p.Code == schema.OutOfRange
		at := tree.PointerAt(p.Range.Start)
		return concluded && (slices.Contains(holders, at) || slices.Contains(holders, holder(at)))
	})
}

// holder is the object that a value stands in, in however many lists.
func holder(pointer string) string {
	for {
		cut := strings.LastIndexByte(pointer, '/')
		if cut < 0 {
			return ""
		}
		last := pointer[cut+1:]
		pointer = pointer[:cut]
		if strings.Trim(last, "0123456789") != "" {
			return pointer
		}
	}
}

// said reports whether a problem is of the very value or key that the schema
// refuses.
func said(refused, p source.Problem) bool {
	return refused.Range == p.Range && (refused.Code == schema.WrongType || refused.Code == schema.UnknownKey || refused.Code == schema.NotAllowed || refused.Code == schema.OutOfRange)
}

// recipePlace is the place of the recipe that a size or colourway changes at a
// place of its own.
func recipePlace(pointer string) string {
	steps := strings.SplitN(pointer, "/", 4)
	if len(steps) == 4 && (steps[1] == "sizes" || steps[1] == "colourways") {
		return "/" + steps[3]
	}
	return pointer
}
