package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, commandsOfScripts())
}

// commandsOfScripts are the programs that scripts can run.
func commandsOfScripts() map[string]func() {
	programs := map[string]func(){"yardproof": main}
	for name, program := range systemPrograms() {
		programs[name] = program
	}
	return programs
}

// TestScript runs every script: what a person sees who types these commands.
func TestScript(t *testing.T) {
	cmds := map[string]func(*testscript.TestScript, bool, []string){
		"exits":     exits,
		"copies":    copies,
		"hostile":   hostile,
		"same":      same,
		"nothing":   nothing,
		"contains":  contains,
		"edit":      edit,
		"nul":       nul,
		"old":       old,
		"touched":   touched,
		"untouched": untouched,
		"versions":  versions,
	}
	for name, cmd := range systemCmds() {
		cmds[name] = cmd
	}
	module, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	root := func(path ...string) string { return filepath.Join(append([]string{module}, path...)...) }
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("..", "..", "testdata", "script"),
		Cmds:                cmds,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Condition: func(cond string) (bool, error) {
			if cond == "permissions" {
				return permissionsHold(), nil
			}
			return false, fmt.Errorf("unknown condition %s", cond)
		},
		Setup: func(e *testscript.Env) error {
			e.Setenv("NO_COLOR", "")
			e.Setenv("README", root("README.md"))
			e.Setenv("MATRIX", root("scripts", "ci-examples", "matrix.yml"))
			e.Setenv("ACTION", root("scripts", "action"))
			e.Setenv("TERM", "xterm")
			systemValues(e)
			return nil
		},
	})
}

// exits N COMMAND... runs a command and demands its exit status. What it
// printed can then be looked at with stdout and stderr.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N command...")
	}
	checkStatus(ts, args[0], ts.Exec(args[1], args[2:]...))
}

func checkStatus(ts *testscript.TestScript, want string, err error) {
	status := 0
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit):
		status = exit.ExitCode()
	case err != nil:
		ts.Fatalf("could not run: %v", err)
	}
	if strconv.Itoa(status) != want {
		ts.Fatalf("the exit status is %d, not %s", status, want)
	}
}

// copies N TEMPLATE FOLDER writes N plans, the template's NAME replaced by a
// name of each.
func copies(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[0])
	ts.Check(err)
	template := ts.ReadFile(args[1])
	folder := ts.MkAbs(args[2])
	ts.Check(os.MkdirAll(folder, 0o777))
	for i := range n {
		name := fmt.Sprintf("plan-%04d", i)
		text := strings.ReplaceAll(template, "NAME", name)
		ts.Check(os.WriteFile(filepath.Join(folder, name+".plan.json"), []byte(text), 0o666))
	}
}

// edit FILE OLD NEW replaces a text of a file, which must be there, by another.
func edit(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s does not contain %s", args[0], args[1])
	}
	text = strings.ReplaceAll(text, args[1], args[2])
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o666))
}

// nul FILE TEXT... writes texts, each ended by a NUL.
func nul(ts *testscript.TestScript, _ bool, args []string) {
	text := strings.Join(args[1:], "\x00") + "\x00"
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o666))
}

// hostile KIND FILE writes a file that is too large or too strange to stand in
// a script, or such files in a folder.
func hostile(ts *testscript.TestScript, _ bool, args []string) {
	write, ok := hostileKinds()[args[0]]
	if !ok {
		ts.Fatalf("no hostile kind %q", args[0])
	}
	ts.Check(write(ts.MkAbs(args[1])))
}

func hostileKinds() map[string]func(path string) error {
	text := func(s string) func(string) error {
		return func(path string) error { return os.WriteFile(path, []byte(s), 0o666) }
	}
	const tiny = `{ "format": 1, "id": "tiny" }`
	return map[string]func(string) error{
		"empty":          text(""),
		"blank":          text(" \n\t\r\n"),
		"bom":            text("\xEF\xBB\xBF" + tiny),
		"utf-16":         text(utf16LE(tiny)),
		"invalid utf-8":  text("{ \"title\": \"caf\xE9\" }"),
		"nul":            text("{ \"title\": \"a\x00b\" }"),
		"nested arrays":  text(strings.Repeat("[", 100_000) + strings.Repeat("]", 100_000)),
		"open arrays":    text(strings.Repeat("[", 100_000)),
		"million digits": text(`{ "format": ` + strings.Repeat("7", 1_000_000) + ` }`),
		"200 MB":         sparse(200 << 20),
		"named ::error::": func(folder string) error {
			return errors.Join(text(tiny)(filepath.Join(folder, "a\n::error::b.plan.json")), text(tiny)(filepath.Join(folder, "::error::b.plan.json")))
		},
	}
}

func utf16LE(s string) string {
	b := []byte{0xFF, 0xFE}
	for _, r := range s {
		b = append(b, byte(r), byte(r>>8))
	}
	return string(b)
}

// sparse makes a file of a size that takes no room on most disks.
func sparse(size int64) func(string) error {
	return func(path string) error {
		f, err := os.Create(path)
		if err != nil {
			return err
		}
		_, err = f.WriteString("{")
		return errors.Join(err, f.Truncate(size), f.Close())
	}
}

// same A B demands that two folders hold the same files, byte for byte, and at
// least one.
func same(ts *testscript.TestScript, neg bool, args []string) {
	a, b := contents(ts, args[0]), contents(ts, args[1])
	if len(a) == 0 {
		ts.Fatalf("%s holds no files", args[0])
	}
	differs := len(a) != len(b)
	for name := range a {
		if !bytes.Equal(a[name], b[name]) {
			ts.Logf("%s differs", name)
			differs = true
		}
	}
	if differs != neg {
		ts.Fatalf("the same is %v, wanted %v", !differs, !neg)
	}
}

func contents(ts *testscript.TestScript, folder string) map[string][]byte {
	files := map[string][]byte{}
	root := ts.MkAbs(folder)
	ts.Check(filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		files[name], err = os.ReadFile(path)
		return err
	}))
	return files
}

// nothing FOLDER demands that a folder holds no file at any depth.
func nothing(ts *testscript.TestScript, _ bool, args []string) {
	for name := range contents(ts, args[0]) {
		ts.Fatalf("%s holds %s", args[0], name)
	}
}

// contains FILE TEXT... demands texts in a file, such as a part of a workbook
// that a pattern cannot be written for.
func contains(ts *testscript.TestScript, neg bool, args []string) {
	text := ts.ReadFile(args[0])
	for _, want := range args[1:] {
		if strings.Contains(text, want) == neg {
			ts.Fatalf("contains %q is %v in %s", want, !neg, args[0])
		}
	}
}

// old FOLDER makes all files of a folder a day old, so that touched can tell
// which are written.
func old(ts *testscript.TestScript, _ bool, args []string) {
	yesterday := time.Now().Add(-24 * time.Hour)
	for name := range contents(ts, args[0]) {
		ts.Check(os.Chtimes(filepath.Join(ts.MkAbs(args[0]), name), yesterday, yesterday))
	}
}

// touched FOLDER FILE... demands that exactly these files were written since
// old.
func touched(ts *testscript.TestScript, _ bool, args []string) {
	want := map[string]bool{}
	for _, name := range args[1:] {
		want[filepath.FromSlash(name)] = true
	}
	for name := range contents(ts, args[0]) {
		info, err := os.Stat(filepath.Join(ts.MkAbs(args[0]), name))
		ts.Check(err)
		if fresh := time.Since(info.ModTime()) < 12*time.Hour; fresh != want[name] {
			ts.Fatalf("%s was written: %v", name, fresh)
		}
	}
}

// untouched FOLDER demands that no file was written since old.
func untouched(ts *testscript.TestScript, _ bool, args []string) { touched(ts, false, args[:1]) }

// versions FOLDER makes all results of a folder those of another yardproof.
func versions(ts *testscript.TestScript, _ bool, args []string) {
	version := regexp.MustCompile(`"version": "[^"]*"`)
	for name, text := range contents(ts, args[0]) {
		text = version.ReplaceAll(text, []byte(`"version": "v9.9.9"`))
		ts.Check(os.WriteFile(filepath.Join(ts.MkAbs(args[0]), name), text, 0o666))
	}
}
