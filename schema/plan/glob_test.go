package plan_test

import (
	"strings"
	"testing"

	"yardproof/schema/plan"
)

func TestGlob(t *testing.T) {
	tests := []struct {
		glob, path string
		folder     bool
		want       bool
	}{
		{"old", "old", true, true},
		{"old", "a/b/old", true, true}, // a name at any depth
		{"old", "a/older", true, false},
		{"old", "old/a.plan.json", false, false}, // what is in it is never met
		{"old/", "a/old", true, true},
		{"old/", "a/old", false, false}, // a file of this name
		{"*-draft.plan.json", "a/b/x-draft.plan.json", false, true},
		{"*-draft.plan.json", "a/b/x-drafts.plan.json", false, false},
		{"old/*", "old/a", true, true},
		{"old/*", "old/a/b", false, false}, // a star ends at a slash
		{"old/*", "a/old/b", false, false}, // from where the glob is
		{"./old/*", "old/a", true, true},
		{"old/**", "old/a/b", false, true},
		{"old/**", "old", true, true}, // and so it is not searched
		{"**/old/*.plan.json", "old/a.plan.json", false, true},
		{"**/old/*.plan.json", "a/b/old/a.plan.json", false, true},
		{"{old,new}/?.plan.json", "new/a.plan.json", false, true},
		{"{old,new}/?.plan.json", "new/ab.plan.json", false, false},
		{"plans/[a-c]*", "plans/birch", false, true},
		{"plans/[a-c]*", "plans/elder", false, false},
		{"../x/*", "../x/a", false, true},
	}
	for _, tt := range tests {
		g, err := plan.ParseGlob(tt.glob)
		if err != nil {
			t.Errorf("%s: %v", tt.glob, err)
		} else if got := g.Match(tt.path, tt.folder); got != tt.want {
			t.Errorf("%s on %s (folder: %v): %v", tt.glob, tt.path, tt.folder, got)
		}
	}
	for _, text := range []string{"", "/", "./", ".", "[", "a/{b", `a\`, "a\xff"} {
		if _, err := plan.ParseGlob(text); err == nil {
			t.Errorf("%q is taken for a glob", text)
		}
	}
	if (plan.Glob{}).Match("", true) {
		t.Error("no glob matches something")
	}
}

func TestExclude(t *testing.T) {
	with := func(globs string) string {
		return strings.Replace(sample(t, "studio.project.json"), `["old/", "**/*-draft.plan.json"]`, `[`+globs+`]`, 1)
	}
	p, problems := readProject(t, with(`"old/**", "*-draft.plan.json"`))
	same(t, "problems", len(problems), 0)
	same(t, "globs", len(p.Exclude), 2)
	same(t, "match", p.Exclude[1].Match("a/x-draft.plan.json", false), true)
	for glob, want := range map[string]string{
		`"a[b"`:    `schema/not-allowed /exclude/0: "a[b": it is no glob: a bracket or brace is not closed, or a backslash ends it -> write it like old/** or *-draft.plan.json`,
		`"../b/*"`: `schema/outside-folder /exclude/0: "../b/*" matches nothing inside the pattern folder -> write it relative to this file, like old/**`,
		`"/b/*"`:   `schema/outside-folder /exclude/0: "/b/*" matches nothing inside the pattern folder -> write it relative to this file, like old/**`,
	} {
		p, problems := readProject(t, with(glob))
		same(t, glob, strings.Join(lines(p.Tree, problems), "\n"), want)
		same(t, glob+" is used", len(p.Exclude), 0)
	}
}

func FuzzGlob(f *testing.F) {
	f.Add("{a,b}/**/[c-d]?", "a/b/c")
	f.Add(`\**/{,x}`, "x")
	f.Fuzz(func(t *testing.T, text, name string) {
		if g, err := plan.ParseGlob(text); err == nil {
			g.Match(name, true)
			g.Match(name, false)
		}
	})
}
