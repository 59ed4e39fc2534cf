package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"yardproof/exporters"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// view shows the runs of a watch, one after the other.
type view interface {
	// show is told which paths have changed since the last run.
	show(run *report.Run, changed []string) error
	close() error
}

func newView(s streams, color bool) (view, error) {
	text, _ := exporters.Report("text")
	if terminal(s.stdout) == nil || os.Getenv("TERM") == "dumb" {
		return &scroll{out: s.stdout, text: text, color: color}, nil
	}
	screen, err := exporters.OpenScreen(s.stdout)
	return &page{out: s.stdout, text: text, color: color, screen: screen}, err
}

// page keeps the report in its place on a terminal.
type page struct {
	out    io.Writer
	text   exporters.ReportFormat
	color  bool
	screen *exporters.Screen
	sums   string // closing line of the last report
}

func (p *page) show(run *report.Run, changed []string) error {
	width, height := window(p.out)
	var b bytes.Buffer
	if err := p.text.Write(&b, run, exporters.Options{Color: p.color, Width: width}); err != nil {
		return err
	}
	p.sums = lastLine(b.String())
	return p.screen.Draw(b.String(), "Watching"+after(changed)+"; Ctrl-C ends it.", width, height)
}

// close leaves the closing line behind, where the report was.
func (p *page) close() error {
	if err := p.screen.Close(); err != nil || p.sums == "" {
		return err
	}
	_, err := fmt.Fprintln(p.out, p.sums)
	return err
}

func lastLine(text string) string {
	text = strings.TrimRight(text, "\n")
	return text[strings.LastIndexByte(text, '\n')+1:]
}

// after says what was changed, in words for a line.
func after(changed []string) string {
	switch len(changed) {
	case 0:
		return ""
	case 1:
		return "; checked after " + exporters.Shown(filepath.Base(changed[0]))
	}
	return fmt.Sprintf("; checked after %d changes, the first in %s", len(changed), exporters.Shown(filepath.Base(changed[0])))
}

// scroll writes below what it wrote before, first the whole report and then
// what differs.
type scroll struct {
	out   io.Writer
	text  exporters.ReportFormat
	color bool
	begun bool
	last  []diag.Finding
	sums  string
}

func (s *scroll) show(run *report.Run, changed []string) error {
	found := run.All()
	options := exporters.Options{Color: s.color}
	if s.begun {
		known := counted(s.last)
		options.Only = func(f diag.Finding) bool { return !known.take(key(f)) }
		options.Gone = gone(s.last, found)
	}
	var b bytes.Buffer
	if err := s.text.Write(&b, run, options); err != nil {
		return err
	}
	sums := lastLine(b.String())
	if s.begun && changed == nil && sums+"\n" == b.String() && sums == s.sums {
		return nil // a second look that saw nothing else
	}
	s.last, s.sums, s.begun = found, sums, true
	_, err := s.out.Write(b.Bytes())
	return err
}

func (s *scroll) close() error { return nil }

// gone are the findings that are no more.
func gone(last, found []diag.Finding) []diag.Finding {
	still := counted(found)
	var lost []diag.Finding
	for _, f := range last {
		if !still.take(key(f)) {
			lost = append(lost, f)
		}
	}
	return lost
}

// key is the same for two findings that say the same, though they have moved
// to other lines of the plan.
func key(f diag.Finding) string {
	parts := []string{f.Place.File, f.Place.Pointer, f.Rule, f.Level.String(), f.Message, f.Hint}
	parts = append(parts, f.Sizes...)
	for _, c := range f.Follows {
		parts = append(parts, key(c))
	}
	return strings.Join(parts, "\x00")
}

// counts is how many there are of each.
type counts map[string]int

func counted(fs []diag.Finding) counts {
	c := counts{}
	for _, f := range fs {
		c[key(f)]++
	}
	return c
}

// take takes one away, if there is one.
func (c counts) take(key string) bool {
	c[key]--
	return c[key] >= 0
}
