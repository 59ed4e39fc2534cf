package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"yardproof/pipeline/diag"
)

func main() {
	verbose := flag.Bool("v", false, "list every slip, or every move that draws nothing")
	oneIn := flag.Int("every", 1, "make only every so many of the slips")
	flag.Parse()
	what, folder := "slips", "testdata/line"
	if flag.NArg() > 0 {
		what = flag.Arg(0)
	}
	if flag.NArg() > 1 {
		folder = flag.Arg(1)
	}
	if err := work(what, folder, *verbose, *oneIn); err != nil {
		fmt.Fprintln(os.Stderr, "slips:", err)
		os.Exit(1)
	}
}

func work(what, folder string, verbose bool, oneIn int) error {
	switch what {
	case "figures":
		return figures(folder, verbose)
	case "slips":
		return slips(folder, verbose, oneIn)
	}
	return fmt.Errorf("%q is neither figures nor slips", what)
}

func figures(folder string, verbose bool) error {
	s, err := falsify(folder, 1)
	if err != nil {
		return err
	}
	fmt.Print(s.table())
	if verbose {
		fmt.Print("\n" + strings.Join(s.silent, "\n") + "\n")
	}
	return s.fault()
}

func slips(folder string, verbose bool, oneIn int) error {
	all, err := trySlips(folder, verbose, oneIn)
	if err != nil {
		return err
	}
	fmt.Print(slipTable(all, false), "\nset aside\n", slipTable(all, true))
	return nil
}

// falsify judges one in so many moves of all plans of a folder.
func falsify(folder string, oneIn int) (*score, error) {
	paths, err := filepath.Glob(filepath.Join(folder, "*.plan.json"))
	if err != nil || len(paths) == 0 {
		return nil, fmt.Errorf("no plan in %s: %w", folder, err)
	}
	s := newScore()
	for _, path := range paths {
		l, err := open(path, strings.TrimSuffix(filepath.Base(path), ".plan.json"))
		if err != nil {
			return nil, err
		}
		var chosen []move
		for _, m := range l.moves() {
			if s.met++; s.met%oneIn == 0 {
				chosen = append(chosen, m)
			}
		}
		verdicts, err := judge(folder, l, chosen)
		if err != nil {
			return nil, err
		}
		for i, m := range chosen {
			s.add(m, verdicts[i])
		}
	}
	return s, nil
}

// score counts what was said of the moves.
type score struct {
	met    int
	all    int
	levels map[diag.Level]int
	kinds  map[string]*tally // by kind of figure
	ways   map[way]*tally
	excuse map[string]int // moves that draw nothing, by class
	silent []string       // the moves that draw nothing, each with its class
	unlike []string       // those of no class
}

// tally is what was said of some of the moves.
type tally struct{ all, errors, warnings, notes, silent int }

func newScore() *score {
	return &score{levels: map[diag.Level]int{}, kinds: map[string]*tally{}, ways: map[way]*tally{}, excuse: map[string]int{}}
}

func (s *score) add(m move, v verdict) {
	s.all++
	s.levels[v.level]++
	if s.kinds[m.fig.kind] == nil {
		s.kinds[m.fig.kind] = &tally{}
	}
	if s.ways[m.how] == nil {
		s.ways[m.how] = &tally{}
	}
	for _, t := range []*tally{s.kinds[m.fig.kind], s.ways[m.how]} {
		t.add(v.level)
	}
	if v.level != 0 {
		return
	}
	class := m.class()
	s.silent = append(s.silent, fmt.Sprintf("%s [%s]", m, class))
	if class == "" {
		s.unlike = append(s.unlike, m.String())
		return
	}
	s.excuse[class]++
}

func (t *tally) add(l diag.Level) {
	t.all++
	switch l {
	case diag.Error:
		t.errors++
	case diag.Warning:
		t.warnings++
	case diag.Note:
		t.notes++
	default:
		t.silent++
	}
}

// mostSilent is the share of the moves, in percent, that may draw nothing.
const mostSilent = 5

// fault is what is wrong with the score, nil where nothing is.
func (s *score) fault() error {
	if n := len(s.unlike); n > 0 {
		return fmt.Errorf("%d moves draw nothing and are of no listed class, such as\n%s", n, strings.Join(s.unlike[:min(n, 20)], "\n"))
	}
	if silent := len(s.silent); silent*100 > mostSilent*s.all {
		return fmt.Errorf("%d of %d moves draw nothing, more than %d %%", silent, s.all, mostSilent)
	}
	return nil
}

// table is the score for people.
func (s *score) table() string {
	var b strings.Builder
	row := func(name string, t tally) {
		fmt.Fprintf(&b, "%-16s %6d %7d %9d %6d %8d\n", name, t.all, t.errors, t.warnings, t.notes, t.silent)
	}
	fmt.Fprintf(&b, "%-16s %6s %7s %9s %6s %8s\n", "figure", "moves", "errors", "warnings", "notes", "nothing")
	for _, kind := range sorted(s.kinds) {
		row(kind, *s.kinds[kind])
	}
	b.WriteString("\n")
	for _, how := range ways() {
		if t := s.ways[how]; t != nil {
			row(string(how), *t)
		}
	}
	row("all", tally{s.all, s.levels[diag.Error], s.levels[diag.Warning], s.levels[diag.Note], s.levels[0]})
	fmt.Fprintf(&b, "\n%d of %d moves (%.1f %%) draw nothing:\n", len(s.silent), s.all, 100*float64(len(s.silent))/float64(max(1, s.all)))
	for _, class := range sorted(s.excuse) {
		fmt.Fprintf(&b, "%6d  %s: %s\n", s.excuse[class], class, classes[class])
	}
	return b.String()
}

func sorted[V any](m map[string]V) []string {
	var names []string
	for name := range m {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
