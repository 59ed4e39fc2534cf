package sarif

import (
	"bytes"
	"encoding/json"
	"io"
	"slices"
	"strings"

	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

// Options say what only the program knows of the run.
type Options struct {
	Version string     // of yardproof; left out when empty
	FailOn  diag.Level // from which level on findings give status 1; no status is told when 0
}

const (
	schemaURI = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	version   = "2.1.0"
)

// Write writes the whole run, in the one order of findings. An error is one of
// w.
func Write(w io.Writer, r *report.Run, o Options) error {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(log{Schema: schemaURI, Version: version, Runs: []run{convert(r, o)}}); err != nil {
		return err
	}
	_, err := w.Write(words.JSON(b.Bytes()))
	return err
}

func convert(r *report.Run, o Options) run {
	findings, excused := r.All(), r.Exceptions()
	all := findings
	if r.Baseline != nil {
		all = diag.Sort(append(r.All(), r.Baseline.Old...))
	}
	b := &builder{
		state:     func(diag.Finding) string { return "" },
		artifacts: newArtifacts(r, all, excused),
		rules:     newRules(r, all, excused),
		results:   []result{},
	}
	if r.Baseline != nil {
		b.state = func(f diag.Finding) string {
			if _, old := slices.BinarySearchFunc(r.Baseline.Old, f, diag.Compare); old {
				return "unchanged"
			}
			return "new"
		}
	}
	for _, f := range all {
		b.finding(f)
	}
	for _, e := range excused {
		b.excused(e)
	}
	return run{
		Tool:               tool{Driver: b.rules.component(o.Version)},
		Invocations:        []invocation{b.invocation(findings, o.FailOn)},
		OriginalURIBaseIDs: map[string]location{root: {Description: &message{"The folder that yardproof was started in."}}},
		Artifacts:          b.artifacts.list,
		Results:            b.results,
		NewlineSequences:   []string{"\r\n", "\n", "\r"},
		ColumnKind:         "unicodeCodePoints",
		Properties:         properties(r),
	}
}

func properties(r *report.Run) runProperties {
	p := runProperties{Accepted: words.Accepted(r)}
	if b := r.Baseline; b != nil {
		p.Baseline = &baseline{Recorded: b.Recorded, Old: len(b.Old), Gone: b.Gone, Unseen: b.Unseen, Since: b.Since, Same: b.Same, Unjudged: b.Unjudged}
	}
	return p
}

// builder gathers the parts of a run that refer to each other.
type builder struct {
	state         func(diag.Finding) string // against a baseline, in the standard's words
	artifacts     *artifacts
	rules         *rules
	identities    diag.Identities
	results       []result
	notifications []notification
}

func (b *builder) finding(f diag.Finding) {
	if strings.HasPrefix(f.Rule, words.RunFamily) && f.Place.File == "" {
		b.notifications = append(b.notifications, notification{
			Descriptor: b.rules.notification(f.Rule), Level: level(f.Level), Message: sentence(f),
		})
		return
	}
	b.results = append(b.results, b.result(f))
}

func (b *builder) excused(e report.Excused) {
	r := b.result(e.Finding)
	s := suppression{Kind: "external", Status: "accepted", Justification: words.OneLine(e.Reason)}
	if at := b.place(e.Place, ""); at.PhysicalLocation != nil {
		s.Location = &at
	}
	r.Suppressions = []suppression{s}
	b.results = append(b.results, r)
}

func (b *builder) result(f diag.Finding) result {
	r := result{
		RuleID: f.Rule, RuleIndex: b.rules.index(f.Rule), Level: level(f.Level),
		Message:             sentence(f),
		BaselineState:       b.state(f), // of an accepted finding "new": none of those is recorded
		PartialFingerprints: map[string]string{fingerprintName: b.identities.Of(f).Fingerprint()},
		Fixes:               b.fixes(f),
		Properties: resultProperties{
			Plan: f.Plan, Sizes: f.Sizes, Pointer: f.Place.Pointer, Hint: words.OneLine(f.Hint),
		},
	}
	if at := b.place(f.Place, f.Plan); at.PhysicalLocation != nil || at.LogicalLocations != nil {
		r.Locations = []place{at}
	}
	for _, other := range f.Related {
		r.relate(b.place(other.Place, ""), other.Message)
	}
	for _, c := range diag.Flatten(f.Follows) {
		id := r.relate(b.place(c.Place, c.Plan), "may follow: "+following(c))
		r.Properties.Follows = append(r.Properties.Follows, consequence{
			RuleID: c.Rule, Level: level(c.Level), Sizes: c.Sizes, LocationID: id,
		})
	}
	return r
}

// relate adds a related location and gives its id.
func (r *result) relate(at place, text string) int {
	at.ID = len(r.RelatedLocations) + 1
	at.Message = plain(text)
	r.RelatedLocations = append(r.RelatedLocations, at)
	return at.ID
}

func following(f diag.Finding) string {
	return f.Level.String() + ": " + words.OneLine(f.Message) + " [" + words.OneLine(f.Rule) + "]"
}

// place leaves out the region when only the file is known.
func (b *builder) place(at diag.Place, plan string) place {
	var p place
	if at.File != "" {
		p.PhysicalLocation = &physical{ArtifactLocation: b.artifacts.reference(at.File)}
		if at.Start.Line > 0 {
			p.PhysicalLocation.Region = &region{
				StartLine: at.Start.Line, StartColumn: at.Start.Column,
				EndLine: at.End.Line, EndColumn: at.End.Column,
				ByteOffset: at.Range.Start, ByteLength: at.Range.Len(),
			}
		}
	}
	if at.Cell != "" {
		p.LogicalLocations = append(p.LogicalLocations, logical{Name: at.Cell, FullyQualifiedName: at.String(), Kind: "resource"})
	}
	if plan != "" {
		p.LogicalLocations = append(p.LogicalLocations, logical{Name: plan, FullyQualifiedName: plan, Kind: "resource"})
	}
	return p
}

// fingerprintName carries the version of what the fingerprint is made of, as
// the standard asks for (3.5.4.2).
const fingerprintName = "findingIdentity/v1"

// Exit statuses of yardproof.
const (
	statusClean = iota
	statusFindings
	_
	statusStopped
)

// invocation tells the exit status that the findings give.
func (b *builder) invocation(findings []diag.Finding, failOn diag.Level) invocation {
	i := invocation{ExecutionSuccessful: true, ToolExecutionNotifications: b.notifications}
	status := func(code int, means string) { i.ExitCode, i.ExitCodeDescription = &code, means }
	switch {
	case words.Stopped(findings):
		i.ExecutionSuccessful = false
		status(statusStopped, "the work could not be finished")
	case failOn == 0:
	case diag.Worst(findings) >= failOn:
		status(statusFindings, "something was found at the level of "+failOn.String()+" or above")
	default:
		status(statusClean, "nothing was found at the level of "+failOn.String()+" or above")
	}
	return i
}
