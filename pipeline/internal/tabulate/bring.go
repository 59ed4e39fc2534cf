package tabulate

import (
	"strings"

	"yardproof/pipeline/internal/derive"
	"yardproof/pipeline/internal/kit"
	"yardproof/schema/plan"
)

// besidesFabric is what a student of a class brings besides fabric, tools and what
// the class asks for: all that the kit leaves out, or where she brings her own
// fabric, what any quilt takes. What is listed already is not said twice.
func (in Input) besidesFabric(s *derive.Size, c *plan.Class, listed []string) []string {
	wanted := []string{"Batting", "Thread"}
	if s.Of.Kit != nil && c.Kits != plan.OwnFabric {
		if i := kitOf(in.Kits, s); i != nil {
			wanted = excluded(i)
		}
	}
	var all []string
	for _, what := range wanted {
		if !said(what, listed) {
			all, listed = append(all, strings.ToUpper(what[:1])+what[1:]), append(listed, what)
		}
	}
	return all
}

// kitOf is the kit of a size in the recipe's own fabrics; nil where there is none.
func kitOf(kits []*kit.Kit, s *derive.Size) *kit.Kit {
	for _, k := range kits {
		if k.Of == s && !k.Size.Of.Way.Given() {
			return k
		}
	}
	return nil
}

// said reports whether something is listed, with more or fewer words.
func said(what string, listed []string) bool {
	words := func(text string) string { return " " + strings.ToLower(text) + " " }
	for _, l := range listed {
		if l != "" && (strings.Contains(words(l), words(what)) || strings.Contains(words(what), words(l))) {
			return true
		}
	}
	return false
}
