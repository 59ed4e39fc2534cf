package pipeline

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/report"
)

// inGit puts files into the current folder and into git, and gives what runs
// git there.
func inGit(t *testing.T, files map[string]string) (git func(args ...string) string) {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git here")
	}
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	t.Setenv("GIT_CONFIG_NOSYSTEM", "1")
	git = func(args ...string) string {
		t.Helper()
		out, err := exec.Command("git", append([]string{"-c", "user.name=a", "-c", "user.email=a@example.org"}, args...)...).CombinedOutput()
		if err != nil {
			t.Fatalf("git %s: %v\n%s", args, err, out)
		}
		return strings.TrimSpace(string(out))
	}
	folder(t, files)
	git("init", "-q")
	git("add", ".")
	git("commit", "-q", "-m", "first")
	return git
}

func since(t *testing.T, ctx context.Context, c Config) *report.Run {
	t.Helper()
	earlier, err := At(ctx, "HEAD", c.Paths)
	if err != nil {
		t.Fatal(err)
	}
	defer earlier.Close()
	run, err := earlier.Run(ctx, c)
	if err != nil {
		t.Fatal(err)
	}
	return run
}

// What keeps the revision from being looked at is told, and hides nothing.
func TestEarlierTroubles(t *testing.T) {
	wrong := strings.Replace(named(sound, "b"), `"stitch": "301"`, `"stitch": "302"`, 1)
	git := inGit(t, map[string]string{"a.plan.json": named(sound, "a"), "b.plan.json": wrong})
	if got := rules(since(t, t.Context(), Config{Paths: []string{"."}})); len(got) > 0 {
		t.Errorf("found again: %v", got)
	}

	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	of := map[string]bool{}
	run := since(t, ctx, Config{Paths: []string{"."}, Jobs: 1, Progress: func(p Progress) {
		if of[p.Of] = true; p.Of == "HEAD" {
			stop()
		}
	}})
	if got := rules(run); !slices.Contains(got, "run/interrupted") || !slices.Contains(got, "schema/not-allowed") || !of[""] || !of["HEAD"] {
		t.Errorf("interrupted: %v, %v", got, of)
	}

	lost := git("rev-parse", "HEAD:b.plan.json")
	if err := os.Remove(filepath.Join(".git", "objects", lost[:2], lost[2:])); err != nil {
		t.Fatal(err)
	}
	if got := rules(since(t, t.Context(), Config{Paths: []string{"."}})); len(got) > 0 {
		t.Errorf("what lies here as it was is asked of git: %v", got)
	}
	if err := os.WriteFile("b.plan.json", []byte(wrong+" "), 0o666); err != nil {
		t.Fatal(err)
	}
	run = since(t, t.Context(), Config{Paths: []string{"."}})
	if got := rules(run); !slices.Contains(got, "run/unreadable") || !slices.Contains(got, "schema/not-allowed") || run.Baseline != nil {
		t.Errorf("lost: %v, %+v", got, run.Baseline)
	}
}

// The findings and their order are the same for any number of jobs.
func TestEarlierIsTheSameForAnyJobs(t *testing.T) {
	files := map[string]string{}
	for _, id := range []string{"a", "b", "c", "d", "e", "f"} {
		files[id+".plan.json"] = named(sound, id)
	}
	inGit(t, files)
	for _, id := range []string{"b", "d", "e"} {
		text := strings.Replace(files[id+".plan.json"], `"stitch": "301"`, `"stitch": "302"`, 1)
		if err := os.WriteFile(id+".plan.json", []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	one := since(t, t.Context(), Config{Paths: []string{"."}, Jobs: 1})
	if len(one.Plans) != 3 || len(one.All()) != 3 || one.Baseline.Same != 3 {
		t.Errorf("%d plans, %d findings, %+v", len(one.Plans), len(one.All()), one.Baseline)
	}
	for range 5 {
		many := since(t, t.Context(), Config{Paths: []string{"."}, Jobs: 8})
		if !reflect.DeepEqual(one.All(), many.All()) {
			t.Errorf("%v\n%v", one.All(), many.All())
		}
	}
}
