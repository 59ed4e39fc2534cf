package main

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestPathsShown: whatever separates folders on this system, what is shown has
// slashes, so that reports of two systems are the same. Where paths have
// slashes anyway this holds only the names; the tests are built for Windows,
// too, and mean more there.
func TestPathsShown(t *testing.T) {
	t.Chdir(t.TempDir())
	line := filepath.Join("our", "line")
	plan := filepath.Join(line, "deep", "tube.plan.json")
	cases := []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"init", line}, exitClean, "our/line/plans/slack-water.plan.json\n"},
		{[]string{"init", line}, exitStopped, "there is already our/line/README.md, our/line/yardproof.json"},
		{[]string{"new", "tube", plan}, exitClean, "our/line/deep/tube.plan.json\n"},
		{[]string{"new", "tube", plan}, exitStopped, "there is already our/line/deep/tube.plan.json"},
		{[]string{"new", "tube", filepath.Join(line, "a.json")}, exitUsage, `"our/line/a.json" is not a plan`},
		{[]string{"watch", filepath.Join(line, "gone")}, exitStopped, "watch our/line/gone: "},
		{[]string{"check", filepath.Join(line, "gone")}, exitStopped, "our/line/gone: error: "},
	}
	for _, c := range cases {
		out, status := said(c.args...)
		if status != c.status || !strings.Contains(out, c.want) {
			t.Errorf("%v: exit status %d:\n%s\nwanted %d and %s", c.args, status, out, c.status, c.want)
		}
	}
	text, err := os.ReadFile(plan)
	if err != nil {
		t.Fatal(err)
	}
	crooked := strings.Replace(string(text), `"format": 1`, `"format":  2`, 1)
	if err := os.WriteFile(plan, []byte(crooked), 0o666); err != nil {
		t.Fatal(err)
	}
	if out, _ := said("check", line); !strings.Contains(out, "our/line/deep/tube.plan.json:2:14: error: ") {
		t.Errorf("check says\n%s", out)
	}
	if out, _ := said("fmt", "--check", line); out != "our/line/deep/tube.plan.json\n" {
		t.Errorf("fmt says\n%s", out)
	}
}

// TestSchemaIsNotFetched: a plan and a project file may say where editors find
// their schemas, and nothing is asked for there.
func TestSchemaIsNotFetched(t *testing.T) {
	asked := 0
	server := httptest.NewServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { asked++ }))
	defer server.Close()
	t.Chdir(t.TempDir())
	if out, status := said("init", "."); status != exitClean {
		t.Fatal(out)
	}
	for _, at := range []string{server.URL + "/plan.schema.json", "file:///gone/plan.schema.json", "../schemas/gone.json"} {
		for _, path := range []string{"yardproof.json", "plans/slack-water.plan.json"} {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			named := strings.Replace(string(text), "{\n", "{\n  \"$schema\": \""+at+"\",\n", 1)
			if err := os.WriteFile(path, []byte(named), 0o666); err != nil {
				t.Fatal(err)
			}
			if out, status := said("check", "--fail-on", "note", "."); status != exitClean {
				t.Errorf("%s names %s: exit status %d\n%s", path, at, status, out)
			}
			if err := os.WriteFile(path, text, 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	if asked > 0 {
		t.Errorf("it was asked for %d times", asked)
	}
}
