//go:build unix

package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"syscall"
	"time"
	"yardproof/pipeline/store"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/sys/unix"
)

// systemCmds are the script commands that need what not every system has.
func systemCmds() map[string]func(*testscript.TestScript, bool, []string) {
	return map[string]func(*testscript.TestScript, bool, []string){
		"fifo":         fifo,
		"interrupted":  interrupted,
		"unread":       unread,
		"whole":        whole,
		"unprivileged": unprivileged,
		"terminal":     terminalRun,
		"begin":        begin,
		"until":        until,
		"end":          end,
		"ended":        endedBy,
		"hold":         hold,
		"letgo":        letGo,
	}
}

// systemValues are what those commands remember in a script.
func systemValues(e *testscript.Env) {
	e.Values[backgroundKey{}] = map[string]*background{}
	e.Values[heldKey{}] = map[string]*os.File{}
}

// hold FOLDER HOLDER locks an output folder as another run would that says this
// of itself, in which \x1b is an escape.
func hold(ts *testscript.TestScript, _ bool, args []string) {
	holder, err := strconv.Unquote(`"` + args[1] + `"`)
	ts.Check(err)
	file, err := os.OpenFile(filepath.Join(ts.MkAbs(args[0]), store.LockName), os.O_RDWR|os.O_CREATE, 0o666)
	ts.Check(err)
	ts.Defer(func() { file.Close() })
	ts.Check(unix.Flock(int(file.Fd()), unix.LOCK_EX|unix.LOCK_NB))
	ts.Check(os.WriteFile(filepath.Join(ts.MkAbs(args[0]), ".yardproof.holder"), []byte(holder), 0o666))
	ts.Value(heldKey{}).(map[string]*os.File)["it"] = file
}

// letgo unlocks the folder that is held.
func letGo(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Check(ts.Value(heldKey{}).(map[string]*os.File)["it"].Close())
}

type heldKey struct{}

// fifo FILE makes a named pipe.
func fifo(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(syscall.Mkfifo(ts.MkAbs(args[0]), 0o666))
}

// start makes a command that runs as the script's own commands do.
func start(ts *testscript.TestScript, args []string) (*exec.Cmd, *bytes.Buffer) {
	path := ""
	for _, dir := range filepath.SplitList(ts.Getenv("PATH")) {
		if p := filepath.Join(dir, args[0]); path == "" {
			if _, err := os.Stat(p); err == nil {
				path = p
			}
		}
	}
	if path == "" {
		ts.Fatalf("no command %s", args[0])
	}
	cmd := exec.Command(path, args[1:]...)
	cmd.Dir = ts.MkAbs(".")
	cmd.Env = []string{"PATH=" + ts.Getenv("PATH"), "HOME=" + ts.Getenv("HOME"), "NO_COLOR=", "TERM=xterm",
		// A program built by go test -cover warns on standard error without it.
		"GOCOVERDIR=" + ts.Getenv("TMPDIR")}
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	return cmd, &out
}

// interrupted N PATTERN COMMAND... runs a command, sends it SIGINT when the
// first file of a name like the pattern appears, and demands its exit status.
// What it printed goes to the file "printed".
func interrupted(ts *testscript.TestScript, _ bool, args []string) {
	cmd, out := start(ts, args[2:])
	ts.Check(cmd.Start())
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	for !exists(ts.MkAbs(args[1])) {
		select {
		case err := <-ended:
			ts.Fatalf("it ended before it could be interrupted: %v\n%s", err, out)
		case <-time.After(time.Millisecond):
		}
	}
	ts.Check(cmd.Process.Signal(os.Interrupt))
	err := <-ended
	ts.Check(os.WriteFile(ts.MkAbs("printed"), out.Bytes(), 0o666))
	ts.Logf("%s", out)
	checkStatus(ts, args[0], err)
}

func exists(pattern string) bool {
	files, _ := filepath.Glob(pattern)
	return len(files) > 0
}

// unread N COMMAND... runs a command whose standard output nobody reads, and
// demands its exit status. What it wrote on standard error goes to the file
// "printed".
func unread(ts *testscript.TestScript, _ bool, args []string) {
	cmd, out := start(ts, args[1:])
	r, w, err := os.Pipe()
	ts.Check(err)
	ts.Check(r.Close())
	cmd.Stdout = w
	err = cmd.Run()
	w.Close()
	ts.Check(os.WriteFile(ts.MkAbs("printed"), out.Bytes(), 0o666))
	checkStatus(ts, args[0], err)
}

// whole FOLDER demands that every file below a folder is a complete workbook or
// JSON document, that there is at least one, and that no temporary file is left.
func whole(ts *testscript.TestScript, _ bool, args []string) {
	files := contents(ts, args[0])
	if len(files) == 0 {
		ts.Fatalf("%s holds no files", args[0])
	}
	delete(files, store.LockName)
	for name, b := range files {
		if err := complete(name, b); err != nil {
			ts.Fatalf("%s: %v", name, err)
		}
	}
}

func complete(name string, b []byte) error {
	switch filepath.Ext(name) {
	case ".xlsx":
		_, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
		return err
	case ".json":
		if !json.Valid(b) {
			return fmt.Errorf("not JSON: %d bytes", len(b))
		}
		return nil
	}
	return fmt.Errorf("a file of this name was not to be written")
}

// unprivileged N COMMAND... runs a command for which permissions hold, and
// demands its exit status. What it printed goes to the file "printed".
func unprivileged(ts *testscript.TestScript, _ bool, args []string) {
	cmd, out := start(ts, args[1:])
	err := runUnprivileged(cmd)
	ts.Check(os.WriteFile(ts.MkAbs("printed"), out.Bytes(), 0o666))
	ts.Logf("%s", out)
	checkStatus(ts, args[0], err)
}

// permissionsHold reports whether commands can be run that permissions hold for.
func permissionsHold() bool {
	return runUnprivileged(exec.Command(os.Args[0], "-test.list", "^$")) == nil
}
