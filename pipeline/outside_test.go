package pipeline

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/store"
)

// TestFormat: every plan and project file that is not in the style is handed on with its
// styled text, in file order; one that is no JSON is told and left; what cannot be
// written is a finding, and the others are still done.
func TestFormat(t *testing.T) {
	t.Chdir(t.TempDir())
	save(t, "a.plan.json", named(sound, "a"))
	save(t, "b.plan.json", "{")
	save(t, "c.plan.json", `{"format":1}`)
	save(t, "yardproof.json", `{"format":1}`)
	save(t, "notes.json", `{"format":1}`)
	var styled []string
	c := FormatConfig{Paths: []string{"."}, Each: func(_ context.Context, path string, text []byte) error {
		styled = append(styled, filepath.ToSlash(path))
		if strings.HasPrefix(filepath.Base(path), "c.") {
			return errors.New("the disk is full")
		}
		return os.WriteFile(path, text, 0o666)
	}}
	run := Format(t.Context(), c)
	if want := []string{"a.plan.json", "c.plan.json", "yardproof.json"}; !slices.Equal(styled, want) {
		t.Errorf("styled %v, want %v", styled, want)
	}
	if got := rules(run); !slices.Equal(got, []string{"schema/not-json", "run/write"}) {
		t.Errorf("found %v", got)
	}
	styled, c.Each = nil, func(_ context.Context, path string, _ []byte) error {
		styled = append(styled, filepath.ToSlash(path))
		return nil
	}
	if Format(t.Context(), c); !slices.Equal(styled, []string{"c.plan.json"}) {
		t.Errorf("what is in the style is handed on again: %v", styled)
	}
	save(t, "a.plan.json", `{"format":1}`)
	ctx, cancel := context.WithCancel(t.Context())
	c.Each = func(context.Context, string, []byte) error { cancel(); return nil }
	if got := rules(Format(ctx, c)); !slices.Equal(got, []string{"run/interrupted"}) {
		t.Errorf("interrupted, found %v", got)
	}
}

// broken is a stream that fails.
type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("the pipe is gone") }

// TestStreams: a stream is styled, or told; one that fails is a finding, for a plan that
// is handed over as well.
func TestStreams(t *testing.T) {
	styled, same, findings := FormatStream("-", strings.NewReader(`{"format":1}`))
	if same || len(findings) > 0 || !strings.Contains(string(styled), `"format": 1`) {
		t.Errorf("%q, %v, %v", styled, same, findings)
	}
	if _, same, _ = FormatStream("-", strings.NewReader(string(styled))); !same {
		t.Error("what is in the style is another")
	}
	if _, _, findings = FormatStream("-", strings.NewReader("{")); len(findings) != 1 || findings[0].Rule != "schema/not-json" {
		t.Errorf("no JSON: %v", findings)
	}
	if _, _, findings = FormatStream("-", broken{}); len(findings) != 1 || findings[0].Rule != "run/unreadable" {
		t.Errorf("a stream that fails: %v", findings)
	}
	if g, findings := ReadGiven("a.plan.json", broken{}); g != nil || len(findings) != 1 || findings[0].Rule != "run/unreadable" {
		t.Errorf("a plan that fails: %v, %v", g, findings)
	}
	given, findings := ReadGiven("plans/a.plan.json", strings.NewReader(short("a")))
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	run, err := Run(t.Context(), Config{Given: given})
	if err != nil || !slices.Equal(rules(run), []string{"printed/parts"}) || run.Plans[0].File != "plans/a.plan.json" {
		t.Errorf("%v, %v", rules(run), err)
	}
}

// TestGatherFiles: results are read from files and folders; a folder without any, a file
// that is none, one of another version and a second, other result of a plan are refused.
func TestGatherFiles(t *testing.T) {
	t.Chdir(t.TempDir())
	write := func(name, id string, made string) {
		r := store.Result{Format: store.ResultFormat, File: id + ".plan.json", ID: id}
		r.Version = made
		save(t, name, string(r.Standing()))
	}
	for _, dir := range []string{"results", "empty", "other"} {
		if err := os.Mkdir(dir, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	write("results/a.result.json", "a", "v1")
	write("results/b.result.json", "b", "v1")
	save(t, "results/notes.txt", "no result")
	write("other/a.result.json", "a", "v0")
	save(t, "other/c.result.json", "{}")
	g, files, findings := Gather([]string{"results"}, "v1")
	if len(findings) > 0 || len(files) != 2 || !slices.Equal(g.Plans(), []string{"a.plan.json", "b.plan.json"}) {
		t.Errorf("%v, %v, %v", g.Plans(), files, findings)
	}
	for path, want := range map[string]string{
		"empty": "the folder holds no result", "other/a.result.json": "made by yardproof v0, and this is v1",
		"other/c.result.json": "it holds no result of a plan", "nowhere": "",
	} {
		if _, _, findings := Gather([]string{path}, "v1"); len(findings) != 1 || !strings.Contains(findings[0].Message, want) {
			t.Errorf("%s: %v", path, findings)
		}
	}
}

// TestText: each number of a pattern's text is held against the plan. Four patches are
// right, five are not, and nobody can tell what seventeen would be.
func TestText(t *testing.T) {
	t.Chdir(t.TempDir())
	save(t, "a.plan.json", named(sound, "a"))
	for text, want := range map[string]string{
		"Cut 4 patch pieces.\n": "", "Cut 5 patch pieces.\n": "words/disagrees", "Then do 17 of it.\n": "words/not-placed",
	} {
		run, err := Run(t.Context(), Config{Paths: []string{"a.plan.json"}, Text: &Text{"a.txt", []byte(text)}})
		if err != nil || strings.Join(rules(run), " ") != want {
			t.Errorf("%q: %v, %v", text, rules(run), err)
		}
	}
	run, err := Run(t.Context(), Config{Paths: []string{"a.plan.json"}, Text: &Text{"a.txt", make([]byte, LargestText()+1)}})
	if err != nil || !slices.Equal(rules(run), []string{"words/too-large"}) {
		t.Errorf("too large: %v, %v", rules(run), err)
	}
	save(t, "a.plan.json", short("a"))
	run, err = Run(t.Context(), Config{Paths: []string{"a.plan.json"}, Text: &Text{"a.txt", []byte("Cut 4 patch pieces.\n")}})
	if err != nil || !slices.Equal(rules(run), []string{"words/plan-errors"}) {
		t.Errorf("a plan with an error: %v, %v", rules(run), err)
	}
}

// TestSetLevels: a run gives rules levels by name, but not those that keep a plan from
// being proved.
func TestSetLevels(t *testing.T) {
	l := Levels{}
	for _, set := range [][2]string{{"fabric/tight", "off"}, {"fabric/generous", "error"}} {
		if err := l.Set(set[0], set[1]); err != nil {
			t.Error(err)
		}
	}
	if l["fabric/tight"] != 0 || l["fabric/generous"] != diag.Error {
		t.Errorf("%v", l)
	}
	for rule, word := range map[string]string{"fabric/tigth": "off", "schema/not-json": "off", "fabric/tight": "loud"} {
		if err := l.Set(rule, word); err == nil {
			t.Errorf("%s=%s is taken", rule, word)
		}
	}
}

// TestNotBegun: what kept a run from beginning is its one finding.
func TestNotBegun(t *testing.T) {
	if got := rules(Unbegun()); !slices.Equal(got, []string{"run/interrupted"}) {
		t.Errorf("%v", got)
	}
	if got := rules(Unwritable(t.Context(), errors.New("no room"))); !slices.Equal(got, []string{"run/write"}) {
		t.Errorf("%v", got)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if got := rules(Unwritable(ctx, errors.New("no room"))); !slices.Equal(got, []string{"run/interrupted"}) {
		t.Errorf("interrupted: %v", got)
	}
}

// TestPicturesOfTurns: the topic has a heading and a picture of eight rows for each part.
func TestPicturesOfTurns(t *testing.T) {
	text := Turns()
	for _, l := range Lyings() {
		if !strings.Contains(text, "\n"+l.Operation+"\n") || !strings.Contains(text, l.Says) {
			t.Errorf("%s is not told", l.Part)
		}
	}
	if got := strings.Count(text, "\n    "); got != pictureRows*len(Lyings()) {
		t.Errorf("%d rows of pictures", got)
	}
	if Lies("no such part") != nil {
		t.Error("a part that is not there is drawn")
	}
}

// TestMissing: each path that is named and is not there is a finding of its own, and the
// plans that are there are proved all the same.
func TestMissing(t *testing.T) {
	t.Chdir(t.TempDir())
	save(t, "a.plan.json", named(sound, "a"))
	run, err := Run(t.Context(), Config{Paths: []string{"a.plan.json", "missing.plan.json", "nowhere"}})
	if err != nil || !slices.Equal(rules(run), []string{"run/missing", "run/missing"}) || len(run.Plans) != 1 {
		t.Errorf("%v, %v", rules(run), err)
	}
}
