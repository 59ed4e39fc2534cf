package slip

import (
	"fmt"
	"strconv"
	"strings"

	"yardproof/schema/jsontree"
)

// name is what a message calls the value: `the width of border "frame"`.
func (v *value) name() string {
	keys, size := v.Keys, ""
	if keys[0] == "sizes" && len(keys) > 2 {
		size, keys = fmt.Sprintf(" in size %q", keys[1]), keys[2:]
	}
	what := strings.ReplaceAll(v.key, "_", " ")
	switch {
	case v.Means == "cell":
		what = "part"
	case v.length > 0 && v.In.Kind == jsontree.Array && len(v.In.Items) == 2:
		if what = "width"; v.In.Items[1] == v.Node {
			what = "height"
		}
		what, keys = what+" "+ofPair(v.key), keys[:len(keys)-1]
	case v.key == "to":
		what = "size"
	}
	return "the " + strings.TrimSpace(what) + owner(keys) + nth(keys) + size
}

// ofPair is what a width and a height are those of, where the key says more than that.
func ofPair(key string) string {
	switch key {
	case "size", "square", "to":
		return ""
	case "trim":
		return "of the trim"
	}
	return "(" + strings.ReplaceAll(key, "_", " ") + ")"
}

// owner is whose value it is.
func owner(keys []string) string {
	switch {
	case keys[0] == "parts" && len(keys) > 1:
		return fmt.Sprintf(" of %q", keys[1])
	case keys[0] == "fabrics" && len(keys) > 1:
		return fmt.Sprintf(" of fabric %q", keys[1])
	case keys[0] == "layout" && len(keys) > 2 && keys[1] == "borders":
		return fmt.Sprintf(" of border %q", keys[2])
	case keys[0] == "finish" && len(keys) > 1:
		return " of the " + keys[1]
	case keys[0] == "seam":
		return " of the seams"
	}
	return " of the " + keys[0]
}

// nth tells which of several it is: ` (row 2, place 1)`.
func nth(keys []string) string {
	var places []int
	list := ""
	for i, key := range keys {
		if n, err := strconv.Atoi(key); err == nil {
			places = append(places, n+1)
		} else if len(places) == 0 && i+1 < len(keys) {
			list = strings.TrimSuffix(strings.ReplaceAll(key, "_", " "), "s")
		}
	}
	switch len(places) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf(" (%s %d)", list, places[0])
	}
	return fmt.Sprintf(" (row %d, place %d)", places[0], places[1])
}

// verb is "is", or "are" of what is counted in the plural.
func (v *value) verb() string {
	if v.count > 0 && strings.HasSuffix(v.key, "s") {
		return "are"
	}
	return "is"
}
