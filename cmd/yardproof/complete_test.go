package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"yardproof/pipeline/check"
)

func TestComplete(t *testing.T) {
	cases := []struct{ typed, want string }{
		{"", "check export gather watch why words explain init new fmt schema completion man version help"},
		{"ex", "export explain"},
		{"complet", "completion"}, // and not the hidden command
		{"help ch", "check"},
		{"nonsense ", ""},
		{"check ", ".paths"},
		{"check line ", ".paths"},
		{"check --fa", "--fail-on"},
		{"check line --co", "--color --config"},
		{"check --fail-on ", "error warning note"},
		{"check --fail-on w", "warning"},
		{"check --fail-on=", "--fail-on=error --fail-on=warning --fail-on=note"},
		{"check --fail-on x", ""},
		{"check --jobs ", ".paths"},
		{"check --report s", "sarif="},
		{"check --report sarif=", ".paths"},
		{"check --report sarif=o", ".paths"},
		{"check --report=j", "--report=json= --report=junit="},
		{"check --quiet ", ".paths"},
		{"check --no-such=", ""},
		{"check -- --fa", ".paths"},
		{"export --format ", "csv json svg xlsx"},
		{"export --format csv,x", "csv,xlsx"},
		{"export --format=csv,x", "--format=csv,xlsx"},
		{"check --rule fabric/ti", "fabric/tight="},
		{"check --rule run/cr", ""}, // nobody can change it
		{"check --rule fabric/tight=", "fabric/tight=error fabric/tight=warning fabric/tight=note fabric/tight=off"},
		{"check --rule fabric/tight=off,fabric/generous=n", "fabric/tight=off,fabric/generous=note"},
		{"check --stdin", "--stdin-path"},
		{"watch --conf", "--config"},
		{"export line --out ", ".paths"},
		{"explain yield/no", "yield/no-slack yield/none"},
		{"explain yield/none ", ""},
		{"new tu", "tube"},
		{"new tube ", ".paths"},
		{"new --units ", "in cm"},
		{"new --id a half", "half-squares"},
		{"schema ", "plan project report"},
		{"completion ", "bash zsh fish"},
		{"version ", ""},
		{"version --", "--json --help"},
		{"-", "--version --help"},
		{"fmt --", "--check --exclude --help"},
	}
	for _, c := range cases {
		var got []string
		for _, o := range offers(strings.Split(c.typed, " ")) {
			got = append(got, o.word)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%q offers %v, wanted %s", c.typed, got, c.want)
		}
	}
	if got := offers([]string{"explain", ""}); len(got) != len(check.Rules()) {
		t.Errorf("%d rules are offered, not %d", len(got), len(check.Rules()))
	}
	if offers(nil) != nil {
		t.Error("something is offered for nothing")
	}
}

// Every flag whose help names few values offers just those.
func TestChoicesAreInHelp(t *testing.T) {
	for _, c := range commands() {
		c.flagSet(new(options)).VisitAll(func(f *pflag.Flag) {
			named := f.Annotations[choices]
			if few := f.Annotations[second]; len(few) > 0 {
				named = few
			}
			for _, w := range named {
				if !strings.Contains(f.Usage, strings.TrimSuffix(w, "=")) {
					t.Errorf("%s --%s offers %s, which its help does not name", c.name, f.Name, w)
				}
			}
		})
		if named := strings.Contains(c.args, "PATH") || strings.Contains(c.args, "PLAN") || strings.Contains(c.args, "RESULT"); c.paths != named && c.name != "init" {
			t.Errorf("%s: paths are %v, and its arguments %s", c.name, c.paths, c.args)
		}
	}
	names := []string{}
	for _, c := range commands() {
		names = append(names, c.name)
	}
	if slices.Sort(names); len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("two commands of one name: %v", names)
	}
}
