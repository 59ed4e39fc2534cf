package baseline

import (
	"bytes"
	"cmp"
	"encoding/json"
	"slices"
	"strconv"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

type document struct {
	Format   int     `json:"format"`
	Findings []entry `json:"findings"`
}

type entry struct {
	Rule    string   `json:"rule"`
	Plan    string   `json:"plan,omitempty"`
	File    string   `json:"file,omitempty"`
	Pointer string   `json:"pointer,omitempty"`
	Sizes   []string `json:"sizes,omitempty"`
	Number  int      `json:"number,omitempty"` // from 2
	Level   string   `json:"level"`
	Follows bool     `json:"follows,omitempty"`
	Message string   `json:"message,omitempty"`
}

// Encode is the text of a baseline of all that a run found, old and new, as
// JSON that is the same for the same findings and has one of them a paragraph.
func Encode(run *report.Run) []byte {
	d := document{Format: 1, Findings: []entry{}}
	for _, m := range recordable(run) {
		i := m.identity
		e := entry{
			Rule: i.Rule, Plan: i.Plan, File: i.File, Pointer: i.Pointer, Sizes: i.Sizes,
			Level: m.Level.String(), Follows: m.follows, Message: m.Message,
		}
		if i.Number > 1 {
			e.Number = i.Number
		}
		d.Findings = append(d.Findings, e)
	}
	slices.SortFunc(d.Findings, entry.compare)
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	encoder.Encode(d) // of these types into memory it cannot fail
	return b.Bytes()
}

// recordable are the findings of a run that a record may hold, old and new.
func recordable(run *report.Run) []met {
	all := run.All()
	if run.Baseline != nil {
		all = diag.Sort(append(all, run.Baseline.Old...))
	}
	return slices.DeleteFunc(identified(all), func(m met) bool { return stopped(m.Finding) })
}

func (e entry) compare(f entry) int {
	return cmp.Or(
		cmp.Compare(e.Plan, f.Plan), cmp.Compare(e.File, f.File), cmp.Compare(e.Rule, f.Rule),
		cmp.Compare(e.Pointer, f.Pointer), slices.Compare(e.Sizes, f.Sizes), cmp.Compare(e.Number, f.Number),
	)
}

// limits let a baseline be larger than a plan: some forty thousand findings.
func limits() jsontree.Limits {
	l := jsontree.DefaultLimits()
	l.MaxBytes, l.MaxValues = MaxBytes, 1<<20
	return l
}

// MaxBytes is how large a baseline may be.
const MaxBytes = 64 << 20

// Parse reads a baseline. What is wrong with it are findings about its text;
// nothing of it is used then.
func Parse(name string, text []byte) (Record, []diag.Finding) {
	file := source.New(name, text)
	tree, problems := jsontree.Parse(file, limits())
	if tree != nil {
		problems = append(problems, schema.Baseline(tree)...)
	}
	if tree == nil || len(problems) > 0 {
		return Record{}, check.Problems(file, tree, "", problems)
	}
	r := Record{known: map[string]recorded{}}
	for _, item := range tree.Get("findings").Items {
		level, _ := diag.ParseLevel(word(item, "level"))
		i := identity(item)
		r.known[i.Fingerprint()] = recorded{i, level, word(item, "follows") == "true"}
	}
	return r, nil
}

func identity(n *jsontree.Node) diag.Identity {
	i := diag.Identity{Rule: word(n, "rule"), Plan: word(n, "plan"), File: word(n, "file"), Pointer: word(n, "pointer"), Number: 1}
	if sizes := n.Get("sizes"); sizes != nil {
		for _, s := range sizes.Items {
			i.Sizes = append(i.Sizes, s.Text)
		}
	}
	if number, err := strconv.Atoi(word(n, "number")); err == nil {
		i.Number = number
	}
	return i
}

// word is the text of a value, empty when there is none.
func word(n *jsontree.Node, key string) string {
	if v := n.Get(key); v != nil {
		return v.Text
	}
	return ""
}
