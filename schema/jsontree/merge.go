package jsontree

// MergePatch applies a JSON Merge Patch (RFC 7396) to base and gives the
// result. Neither is changed, and the result shares nodes with both. A nil
// patch gives base; a nil base stands for an absent value.
//
// Ranges stay those of where the text stands: a value that the patch brings,
// and its key, point into the patch. An object that both have keeps base's
// range and base's key range, one that only the patch has keeps the patch's.
// Keys come in base's order, then the new ones in the patch's order.
func MergePatch(base, patch *Node) *Node {
	switch {
	case patch == nil:
		return base
	case patch.Kind != Object:
		return patch
	case base == nil || base.Kind != Object:
		return merge(&Node{Kind: Object, Range: patch.Range}, patch)
	default:
		return merge(base, patch)
	}
}

func merge(base, patch *Node) *Node {
	result := &Node{Kind: Object, Range: base.Range}
	for _, m := range base.Members {
		change := patch.Member(m.Key)
		if change == nil {
			result.add(m)
		} else if change.Value.Kind != Null {
			result.add(mergeMember(m, *change))
		}
	}
	for _, m := range patch.Members {
		if m.Value.Kind != Null && base.find(m.Key) < 0 {
			m.Value = MergePatch(nil, m.Value)
			result.add(m)
		}
	}
	return result
}

// mergeMember takes the key from where the value's own text stands.
func mergeMember(base, change Member) Member {
	key := change.KeyRange
	if base.Value.Kind == Object && change.Value.Kind == Object {
		key = base.KeyRange
	}
	return Member{Key: base.Key, KeyRange: key, Value: MergePatch(base.Value, change.Value)}
}
