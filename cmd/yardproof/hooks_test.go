package main

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"
)

// hook is what the test reads of a hook: one key a line, as the file is written.
type hook struct {
	args         []string // the words of its command
	files        *regexp.Regexp
	takesChanged bool // the names of the changed files follow
}

func hooks(t *testing.T) map[string]hook {
	t.Helper()
	text, err := os.ReadFile("../../.pre-commit-hooks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]hook{}
	for _, block := range strings.Split(string(text), "- id: ")[1:] {
		values := map[string]string{}
		for line := range strings.Lines("id: " + block) {
			key, value, ok := strings.Cut(strings.TrimSpace(line), ": ")
			if !ok {
				t.Errorf("no key and value: %s", line)
			}
			values[key] = value
		}
		h := hook{takesChanged: values["pass_filenames"] != "false"}
		words := strings.Fields(values["entry"])
		if len(words) < 2 || words[0] != "yardproof" || values["language"] != "golang" || values["name"] == "" {
			t.Errorf("%s is not whole: %v", values["id"], values)
			continue
		}
		var more []string
		if a := values["args"]; a != "" {
			if err := json.Unmarshal([]byte(a), &more); err != nil {
				t.Errorf("%s: %v", values["id"], err)
			}
		}
		h.args = append(words[1:], more...)
		h.files = regexp.MustCompile(strings.Trim(values["files"], "'"))
		found[values["id"]] = h
	}
	return found
}

// TestHooks does as the program that runs such hooks does: a hook runs when the
// name of a changed file matches, from the repository's root, and a change that
// it makes or a status but 0 stops the commit.
func TestHooks(t *testing.T) {
	all := hooks(t)
	check, style := all["yardproof-check"], all["yardproof-fmt"]
	if len(all) != 2 || check.takesChanged || !style.takesChanged {
		t.Fatalf("the hooks are %v", all)
	}
	for name, want := range map[string][2]bool{
		"plans/a.plan.json": {true, true}, "a.plan.json": {true, true}, "yardproof.json": {true, true}, "line/yardproof.json": {true, true},
		"lists/prices.csv": {true, false}, "mill.xlsx": {true, false}, "my-yardproof.json": {false, false}, "README.md": {false, false}, "a.plan.jsonc": {false, false},
	} {
		if got := [2]bool{check.files.MatchString(name), style.files.MatchString(name)}; got != want {
			t.Errorf("%s: the hooks run: %v, wanted %v", name, got, want)
		}
	}
	t.Chdir(t.TempDir())
	if out, status := said("init", "."); status != exitClean {
		t.Fatal(out)
	}
	const plan = "plans/ferry-steps.plan.json"
	styled, err := os.ReadFile(plan)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		old, new string
		status   int
	}{
		{`"format": 1`, `"format":  1`, exitClean},
		{`"step": 30`, `"step": 31`, exitFindings},
	} {
		text := strings.Replace(string(styled), c.old, c.new, 1)
		if text == string(styled) {
			t.Fatalf("the plan has no %s", c.old)
		}
		if err := os.WriteFile(plan, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		if out, status := said(check.args...); status != c.status {
			t.Errorf("%s: %v gives %d\n%s", c.new, check.args, status, out)
		}
		if out, status := said(append(style.args, plan)...); status != exitClean {
			t.Errorf("%s: %v gives %d\n%s", c.new, style.args, status, out)
		}
		if now, _ := os.ReadFile(plan); c.status == exitClean && string(now) != string(styled) {
			t.Errorf("%s is not put in style:\n%s", c.new, now)
		}
	}
}
