package jsontree

import (
	"strconv"
	"strings"
)

// Pointer joins keys and array positions to a JSON Pointer (RFC 6901). No
// parts give "", the root.
func Pointer(parts ...string) string {
	var s strings.Builder
	for _, part := range parts {
		s.WriteByte('/')
		s.WriteString(escape(part))
	}
	return s.String()
}

// escape writes ~ before /, so that no ~1 of the key itself is taken for a slash.
func escape(part string) string {
	return strings.ReplaceAll(strings.ReplaceAll(part, "~", "~0"), "/", "~1")
}

// unescape reads one part of a pointer; a ~ must be followed by 0 or 1 (RFC
// 6901, section 3).
func unescape(part string) (string, bool) {
	for i := 0; i < len(part); i++ {
		if part[i] != '~' {
			continue
		}
		if i++; i == len(part) || part[i] != '0' && part[i] != '1' {
			return "", false
		}
	}
	return strings.ReplaceAll(strings.ReplaceAll(part, "~1", "/"), "~0", "~"), true
}

// At is the value that a JSON Pointer (RFC 6901) names, or nil. It also works
// on merged trees.
func (n *Node) At(pointer string) *Node {
	if pointer == "" {
		return n
	}
	if pointer[0] != '/' {
		return nil
	}
	for part := range strings.SplitSeq(pointer[1:], "/") {
		key, ok := unescape(part)
		if n == nil || !ok {
			return nil
		}
		n = n.child(key)
	}
	return n
}

func (n *Node) child(key string) *Node {
	if n.Kind != Array {
		return n.Get(key)
	}
	i, err := strconv.Atoi(key)
	if err != nil || i < 0 || i >= len(n.Items) || strconv.Itoa(i) != key {
		return nil // RFC 6901 allows no sign and no leading zero
	}
	return n.Items[i]
}

// PointerAt is the JSON Pointer (RFC 6901) of the deepest value that contains
// the byte at offset. A key stands for its value. Bytes between values belong
// to the object or array around them, and bytes outside the root to the root,
// whose pointer is "". It is meant for trees from [Parse]: the ranges of a
// merged tree come from two places.
func (n *Node) PointerAt(offset int) string {
	parts := []string{}
	for n != nil {
		part, child := n.around(offset)
		if child != nil {
			parts = append(parts, part)
		}
		n = child
	}
	return Pointer(parts...)
}

// around is the child whose value or key contains the offset.
func (n *Node) around(offset int) (string, *Node) {
	for _, m := range n.Members {
		if m.KeyRange.Contains(offset) || m.Value.Range.Contains(offset) {
			return m.Key, m.Value
		}
	}
	for i, item := range n.Items {
		if item.Range.Contains(offset) {
			return strconv.Itoa(i), item
		}
	}
	return "", nil
}
