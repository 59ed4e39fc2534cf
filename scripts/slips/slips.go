package main

import (
	"fmt"
	"strings"
	"time"

	"yardproof/pipeline/diag"
)

// tried is a slip and what became of it.
type tried struct {
	slip
	outcome
}

// trySlips makes all slips of all plans.
func trySlips(folder string, verbose bool, oneIn int) ([]tried, error) {
	lines, err := sources(folder)
	if err != nil {
		return nil, err
	}
	var all []tried
	met := 0
	for _, l := range lines {
		b, err := newBench(l)
		if err != nil {
			return nil, err
		}
		for _, s := range l.slips() {
			if met++; met%oneIn != 0 {
				continue
			}
			o, err := b.try(s)
			if err != nil {
				b.close()
				return nil, err
			}
			t := tried{s, o}
			if all = append(all, t); verbose {
				show(t)
			}
		}
		b.close()
	}
	return all, nil
}

// count is what became of some slips.
type count struct{ made, seen, first, hints int }

func (c *count) add(t tried) {
	c.made++
	if len(t.found) > 0 {
		c.seen++
	}
	if t.first {
		c.first++
	}
	if t.hints {
		c.hints++
	}
}

func (c count) String() string {
	return fmt.Sprintf("%6d %6d %6d %6d %6s", c.made, c.seen, c.first, c.hints, share(c.first, c.seen))
}

func share(part, of int) string {
	if of == 0 {
		return "-"
	}
	return fmt.Sprintf("%d %%", (100*part+of/2)/of)
}

// slipTable is a line a kind, for all plans or for those that were set aside.
func slipTable(all []tried, apart bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-16s %-24s %6s %6s %6s %6s %6s\n", "", "", "made", "seen", "first", "hints", "")
	var groups []string
	whole := map[string]*count{}
	for _, k := range kinds() {
		var c count
		if whole[k.group] == nil {
			whole[k.group] = &count{}
			groups = append(groups, k.group)
		}
		for _, t := range all {
			if t.group == k.group && t.kind == k.name && t.of.apart == apart {
				c.add(t)
				whole[k.group].add(t)
			}
		}
		fmt.Fprintf(&b, "%-16s %-24s %s\n", k.group, k.name, c)
	}
	for _, g := range groups {
		fmt.Fprintf(&b, "%-16s %-24s %s\n", g, "all", whole[g])
	}
	return b.String()
}

// show shows a slip with what is said of it.
func show(t tried) {
	apart := ""
	if t.of.apart {
		apart = " (set aside)"
	}
	fmt.Printf("%s%s %s: %s, %s; %d found; first %v, %v\n", t.of.name, apart, t.at, t.was, t.kind, len(diag.Flatten(t.found)), t.first, t.took.Round(time.Millisecond))
	for _, f := range t.found {
		fmt.Printf("    %s %s %s [%s] hint: %s (+%d)\n", f.Place, f.Level, f.Message, f.Rule, f.Hint, len(diag.Flatten(f.Follows)))
	}
}
