package why

import (
	"slices"
	"strings"

	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// Find lists the numbers of a plan that are asked for, in the order of its sizes:
//
//   - "trio": every number of a part, fabric or border;
//   - "finished width", "step, tubes": those of a name;
//   - "width": those of the quilt in whose name each of the words stands;
//   - "strips of trio": those of trio in whose name each of the words before "of"
//     stands, one or several;
//   - "/parts/step/tube/trim": those that are worked out from what the plan says there;
//   - each of these with " in throw" after it: those of one size.
//
// All of them are meant where nothing is asked for.
func Find(p *report.Plan, asked string) []report.Derived {
	asked = strings.TrimSpace(asked)
	if strings.HasPrefix(asked, "/") {
		return at(p, asked)
	}
	size, asked := sizeOf(p, asked)
	var all []report.Derived
	for _, n := range p.Numbers {
		if (size == "" || n.Size == size) && meant(n, asked) {
			all = append(all, n)
		}
	}
	return all
}

// sizeOf takes the size off the end of what is asked for, if it names one.
func sizeOf(p *report.Plan, asked string) (size, rest string) {
	for _, s := range p.Sizes {
		if before, ok := cutSuffixFold(asked, " in "+s); ok && len(s) > len(size) {
			size, rest = s, strings.TrimSpace(before)
		}
		if strings.EqualFold(asked, s) {
			return s, ""
		}
	}
	if size == "" {
		return "", asked
	}
	return size, rest
}

func cutSuffixFold(text, suffix string) (string, bool) {
	i := len(text) - len(suffix)
	if i < 0 || !strings.EqualFold(text[i:], suffix) {
		return text, false
	}
	return text[:i], true
}

// meant reports whether a number is one of those asked for.
func meant(n report.Derived, asked string) bool {
	if asked == "" || strings.EqualFold(asked, n.Of) || strings.EqualFold(asked, n.Is) || strings.EqualFold(asked, n.Name()) {
		return true
	}
	if n.Of == "" && says(n.Is, asked) {
		return true
	}
	parts := strings.Split(asked, " of ")
	for i := 1; i < len(parts); i++ { // the name of a part may have the word in it
		if strings.EqualFold(strings.Join(parts[i:], " of "), n.Of) && says(n.Is, strings.Join(parts[:i], " of ")) {
			return true
		}
	}
	return false
}

// says reports whether each word stands in a name, in the singular or plural.
func says(name, words string) bool {
	all := strings.Fields(strings.ToLower(name))
	for i := range all {
		all[i] = singular(all[i])
	}
	for w := range strings.FieldsSeq(strings.ToLower(words)) {
		if !slices.Contains(all, singular(w)) {
			return false
		}
	}
	return true
}

func singular(word string) string { return strings.TrimSuffix(strings.Trim(word, ","), "s") }

// at are the numbers of which a term stands at a place of the plan, or within it.
func at(p *report.Plan, pointer string) (all []report.Derived) {
	tree, problems := jsontree.Parse(p.Source, jsontree.DefaultLimits())
	if tree == nil || len(problems) > 0 {
		return nil
	}
	n := tree.At(pointer)
	if n == nil {
		return nil
	}
	for _, number := range p.Numbers {
		if slices.ContainsFunc(number.Work.Terms, func(t report.Term) bool { return !t.At.Empty() && within(t.At, n.Range) }) {
			all = append(all, number)
		}
	}
	return all
}

func within(r, outer source.Range) bool { return outer.Start <= r.Start && r.End <= outer.End }
