package slip

import (
	"strconv"

	"yardproof/schema"
	"yardproof/schema/amend"
	"yardproof/schema/jsontree"
	"yardproof/schema/measure"
	"yardproof/schema/source"
)

// value is a value of the recipe.
type value struct {
	schema.Value
	key    string         // the last of its keys that is none of a list's positions
	length measure.Length // 0 of what is none
	count  int64          // 0 of what is none
	text   string         // as it is written

	relevant bool // an error is another one when it changes
}

// list are the values that a slip may have been made in.
func (s *search) list() []*value {
	var all []*value
	for _, v := range schema.Values(s.Tree) {
		switch v.Keys[0] {
		case "seam", "fabrics", "tools", "parts", "layout", "finish", "bed", "sizes":
			all = append(all, s.read(v))
		}
	}
	return all
}

func (s *search) read(v schema.Value) *value {
	one := &value{Value: v, key: v.Keys[len(v.Keys)-1], text: s.File.Slice(v.Node.Range)}
	for i := len(v.Keys) - 1; i >= 0; i-- {
		if _, err := strconv.Atoi(v.Keys[i]); err != nil {
			one.key = v.Keys[i]
			break
		}
	}
	switch v.Means {
	case "length", "square_or_pair":
		if x, err := measure.ParseLength(v.Node.Text, s.Plan.Units); err == nil {
			one.length = x
		}
	case "integer":
		if n, err := strconv.ParseInt(v.Node.Text, 10, 32); err == nil && n > 0 {
			one.count = n
		}
	}
	return one
}

// put is the edit that writes a length or a count in the value's place.
func (s *search) put(v *value, text string) source.Edit {
	return amend.Of(s.File, s.Tree).Put(v.Node.Range, text)
}

// inPlace is a length as the value writes lengths; empty where no plan may hold it.
func (s *search) inPlace(v *value, x measure.Length) string {
	return amend.LengthLike(v.text, x, s.Plan.Units)
}

// pair reports whether the value is the first of two lengths.
func (v *value) pair() bool {
	return v.In.Kind == jsontree.Array && len(v.In.Items) == 2 && v.In.Items[0] == v.Node
}
