package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/schema/jsontree"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// IDAt is a plan's id and the file that says it. Tree may be nil.
type IDAt struct {
	ID   plan.Text
	File *source.File
	Tree *jsontree.Node
}

// DuplicateIDs reports plans of a run whose ids are equal, or equal but for
// upper and lower case: output files are named after them. Of each such group
// the first file by name keeps its id.
func DuplicateIDs(ids []IDAt) []diag.Finding {
	ids = slices.Clone(ids)
	slices.SortStableFunc(ids, func(a, b IDAt) int {
		return cmp.Or(cmp.Compare(a.File.Name, b.File.Name), a.ID.At.Compare(b.ID.At))
	})
	first := map[string]IDAt{}
	var out []diag.Finding
	for _, id := range ids {
		if !id.ID.Given() {
			continue
		}
		folded := strings.ToLower(id.ID.Text)
		if other, taken := first[folded]; taken {
			out = append(out, duplicateID(id, other))
		} else {
			first[folded] = id
		}
	}
	return diag.Sort(out)
}

func duplicateID(id, other IDAt) diag.Finding {
	c := byRule["reference/duplicate-id"]
	message := fmt.Sprintf("the id %q is that of %s too", id.ID.Text, other.File.Name)
	if id.ID.Text != other.ID.Text {
		message = fmt.Sprintf("the id %q differs from %q of %s only in upper and lower case", id.ID.Text, other.ID.Text, other.File.Name)
	}
	return diag.Finding{
		Rule: c.Rule, Level: c.Level, Plan: id.ID.Text,
		Place:   newPlaces(id.File, id.Tree).at(id.ID.At),
		Message: message,
		Hint:    "give one of the two plans another id",
		Related: []diag.Related{{
			Place:   newPlaces(other.File, other.Tree).at(other.ID.At),
			Message: "the other plan",
		}},
	}
}

// TitleAt is a plan's title, the unit it is in and the file that says it.
type TitleAt struct {
	ID    string
	Title plan.Text
	Units string
	File  *source.File
	Tree  *jsontree.Node // may be nil
}

// SameTitle is a title as people hear it: without regard to case and spaces.
func SameTitle(title string) string {
	return strings.ToLower(strings.Join(strings.Fields(title), " "))
}

// DuplicateTitles reports plans of a run that share a title and a unit: an
// edition in the other unit is the same pattern. Of each group the first file
// by name keeps its title.
func DuplicateTitles(titles []TitleAt) []diag.Finding {
	titles = slices.Clone(titles)
	slices.SortStableFunc(titles, func(a, b TitleAt) int { return cmp.Compare(a.File.Name, b.File.Name) })
	first := map[[2]string]TitleAt{}
	var out []diag.Finding
	for _, t := range titles {
		key := [2]string{SameTitle(t.Title.Text), t.Units}
		if key[0] == "" {
			continue
		}
		if other, taken := first[key]; taken {
			if !strings.EqualFold(t.ID, other.ID) { // reference/duplicate-id tells of a copied plan
				out = append(out, duplicateTitle(t, other))
			}
		} else {
			first[key] = t
		}
	}
	return diag.Sort(out)
}

func duplicateTitle(t, other TitleAt) diag.Finding {
	c := byRule["reference/duplicate-title"]
	return diag.Finding{
		Rule: c.Rule, Level: c.Level, Plan: t.ID,
		Place:   newPlaces(t.File, t.Tree).at(t.Title.At),
		Message: fmt.Sprintf("the title %q is that of %s too", t.Title.Text, other.File.Name),
		Hint:    "give one of the two another title",
		Related: []diag.Related{{
			Place:   newPlaces(other.File, other.Tree).at(other.Title.At),
			Message: "the other plan",
		}},
	}
}
