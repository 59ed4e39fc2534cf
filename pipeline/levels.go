package pipeline

import (
	"fmt"
	"maps"
	"strings"

	"yardproof/pipeline/check"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
	"yardproof/schema/plan"
	"yardproof/schema/source"
)

// levels is how a project sees the rules: what levels it gives them, and which
// findings it accepts. A nil levels changes nothing.
type levels struct {
	of         map[string]diag.Level // 0 for a rule that is off
	exceptions []plan.Exception
	places     []diag.Place // of the exceptions
	today      plan.Date    // no exception has run out when it is not given
}

// newLevels reads a project's levels and exceptions. Those that the run gives
// come before the project's. Problems are names of rules that do not exist, or
// that no project can change.
func newLevels(p *plan.Project, run Levels, today plan.Date) (levels, []source.Problem) {
	l := levels{of: map[string]diag.Level{}, exceptions: p.Exceptions, today: today}
	var problems []source.Problem
	for _, r := range p.Rules {
		level, _ := diag.ParseLevel(r.Level.Text) // "off" gives 0
		l.of[r.Rule.Text] = level
		problems = append(problems, misnamed(r.Rule)...)
	}
	maps.Copy(l.of, run)
	for _, e := range p.Exceptions {
		problems = append(problems, misnamed(e.Rule)...)
		l.places = append(l.places, diag.Place{
			File: p.File.Name, Range: e.At, Pointer: p.Tree.PointerAt(e.At.Start),
			Start: p.File.Position(e.At.Start), End: p.File.Position(e.At.End),
			Excerpt: p.File.Excerpt(e.At),
		})
	}
	return l, problems
}

// misnamed is the problem of a rule's name that a project cannot use.
func misnamed(name plan.Text) []source.Problem {
	message, hint := unchangeable(name.Text)
	if message == "" {
		return nil
	}
	return []source.Problem{{Code: schemaNotAllowed, Range: name.At, Message: message, Hint: hint}}
}

// unchangeable says why nobody can change the level of what a name stands for,
// and what to do; nothing where they can.
func unchangeable(name string) (message, hint string) {
	c, known := check.Find(name)
	switch {
	case !known:
		return fmt.Sprintf("there is no rule %q", name), "choose one of those that `yardproof explain` lists"
	case fixed(c):
		return fmt.Sprintf("the rule %q cannot be changed or accepted: what it finds keeps a plan from being proved at all", name),
			"remove this, and mend what the rule finds"
	}
	return "", ""
}

// Levels are the levels that one run gives rules, by their names, whatever the
// projects say; 0 for a rule that is off.
type Levels map[string]diag.Level

// Set gives a rule a level: error, warning, note or off. The error is of a rule
// that there is not or that keeps its level, or of any other word.
func (l Levels) Set(rule, word string) error {
	if message, hint := unchangeable(rule); message != "" {
		return fmt.Errorf("%s: %s", message, hint)
	}
	level, ok := diag.ParseLevel(word)
	if !ok && word != "off" {
		return fmt.Errorf("%q is not error, warning, note or off", word)
	}
	l[rule] = level
	return nil
}

const schemaNotAllowed = "schema/not-allowed"

// fixed reports whether no project can change a rule: after such a finding
// nothing is known of the plan, and silence would pass for proof.
func fixed(c check.Check) bool {
	return c.Level == diag.Error && (c.Scope == check.Running || c.Scope == check.Reading)
}

// apply gives findings of a plan the project's levels and takes out those it
// accepts, marking the exceptions that match. What follows from a finding that
// is taken out, or that no longer is as grave as it, stands alone.
func (l levels) apply(findings []diag.Finding, used []bool) (kept []diag.Finding, excused []report.Excused) {
	for _, f := range findings {
		follows, below := l.apply(f.Follows, used)
		excused = append(excused, below...)
		f.Follows = nil
		off := false
		if level, changed := l.of[f.Rule]; changed {
			f.Level, off = level, level == 0
		}
		if i := l.covering(f, used); i >= 0 && !off {
			excused = append(excused, l.excuse(f, i))
			off = true
		}
		for _, c := range follows {
			if off || c.Level > f.Level {
				kept = append(kept, c)
			} else {
				f.Follows = append(f.Follows, c)
			}
		}
		if !off {
			kept = append(kept, f)
		}
	}
	return diag.Sort(kept), excused
}

func (l levels) excuse(f diag.Finding, i int) report.Excused {
	e := report.Excused{Finding: f, Reason: l.exceptions[i].Reason.Text, Place: l.places[i]}
	if until := l.exceptions[i].Until; until.Given() {
		e.Until = until.String()
	}
	return e
}

// covering is the first exception that covers a finding, or -1. It marks all
// that do.
func (l levels) covering(f diag.Finding, used []bool) int {
	first := -1
	for i, e := range l.exceptions {
		if e.Rule.Text != f.Rule || e.Plan.Text != f.Plan || !within(f.Place.Pointer, e.Pointer.Text) || l.expired(e) {
			continue
		}
		if used[i] = true; first < 0 {
			first = i
		}
	}
	return first
}

// expired reports whether the last day of an exception is over.
func (l levels) expired(e plan.Exception) bool {
	return e.Until.Given() && l.today.Given() && l.today.Compare(e.Until) > 0
}

// within reports whether a JSON Pointer (RFC 6901) names the value that another
// names, or a part of it.
func within(pointer, outer string) bool {
	return pointer == outer || strings.HasPrefix(pointer, outer+"/")
}

// heedProjects adds what is wrong with each project to the line's findings.
func (l *line) heedProjects() {
	for _, p := range l.projects {
		l.findings = append(l.findings, p.findings...)
		if p.settings != nil {
			found, _ := p.rules.apply(l.idle(p), make([]bool, len(p.rules.exceptions)))
			l.findings = append(l.findings, found...)
		}
	}
}

// idle finds the exceptions of a project that cover nothing, or no longer do. A
// plan that was not looked at, or not far enough, says nothing about its
// exceptions.
func (l *line) idle(p *project) []diag.Finding {
	used := make([]bool, len(p.rules.exceptions))
	judged, held := map[string]bool{}, map[string]bool{}
	for _, f := range l.plans {
		if f.project != p {
			continue
		}
		held[f.id] = true
		judged[f.id] = judged[f.id] || f.judged
		for i, u := range f.used {
			used[i] = used[i] || u
		}
	}
	var problems []source.Problem
	for i, e := range p.rules.exceptions {
		switch id := e.Plan.Text; {
		case p.whole && !held[id] && l.allRead():
			problems = append(problems, unmatched(e.Plan.At, fmt.Sprintf("the exception is for a plan %q, and no plan of the folder has this id", id)))
		case judged[id] && p.rules.expired(e):
			problems = append(problems, ended(e))
		case judged[id] && !used[i]:
			problems = append(problems, unmatched(e.At, fmt.Sprintf("the exception matches nothing: %s finds nothing in %q%s", e.Rule.Text, id, atPointer(e))))
		}
	}
	return check.Problems(p.settings.File, p.settings.Tree, "", problems)
}

func unmatched(at source.Range, message string) source.Problem {
	return source.Problem{Code: "project/unmatched-exception", Range: at, Message: message, Hint: "remove it, or correct its rule, plan or pointer"}
}

// ended does not say what day it is: the finding would be another one every
// day.
func ended(e plan.Exception) source.Problem {
	return source.Problem{
		Code: "project/expired-exception", Range: e.UntilAt,
		Message: fmt.Sprintf("the exception of %s in %q held until %s, and that day is over", e.Rule.Text, e.Plan.Text, e.Until),
		Hint:    "mend the plan and remove it, or look at it again and give it a later day",
	}
}

func atPointer(e plan.Exception) string {
	if !e.Pointer.Given() {
		return ""
	}
	return " at " + e.Pointer.Text
}

// allRead reports whether the id of every plan is known.
func (l *line) allRead() bool {
	for _, p := range l.plans {
		if p.id == "" {
			return false
		}
	}
	return true
}
