//go:build unix

package main

import (
	"os"
	"os/exec"
	"regexp"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// background is a command that a script has begun and not ended.
type background struct {
	cmd   *exec.Cmd
	ended chan error
	read  int // bytes of what it printed that until has passed
}

type backgroundKey struct{}

// begin [-terminal] COMMAND... begins a command; what it prints goes to the
// file "printed" as it comes.
func begin(ts *testscript.TestScript, _ bool, args []string) {
	terminal := args[0] == "-terminal"
	if terminal {
		args = args[1:]
	}
	cmd, _ := start(ts, args)
	to, err := os.Create(ts.MkAbs("printed"))
	ts.Check(err)
	cmd.Stdout, cmd.Stderr = to, to
	if terminal {
		onTerminal(ts, cmd, to)
	}
	ts.Check(cmd.Start())
	b := &background{cmd: cmd, ended: make(chan error, 1)}
	go func() { b.ended <- cmd.Wait() }()
	ts.Defer(func() {
		cmd.Process.Kill()
		to.Close()
	})
	ts.Value(backgroundKey{}).(map[string]*background)["it"] = b
}

// until PATTERN waits until what the command prints, from where the last until
// stopped, matches. It fails when the command ends first.
func until(ts *testscript.TestScript, _ bool, args []string) {
	pattern, err := regexp.Compile("(?m)" + args[0])
	ts.Check(err)
	b := ts.Value(backgroundKey{}).(map[string]*background)["it"]
	for {
		text := ts.ReadFile("printed")
		if at := pattern.FindStringIndex(text[b.read:]); at != nil {
			b.read += at[1]
			return
		}
		select {
		case err := <-b.ended:
			ts.Fatalf("it ended without printing %s: %v\n%s", args[0], err, text)
		case <-time.After(time.Millisecond):
		}
	}
}

// end N interrupts the command and demands its exit status.
func end(ts *testscript.TestScript, _ bool, args []string) {
	b := ts.Value(backgroundKey{}).(map[string]*background)["it"]
	ts.Check(b.cmd.Process.Signal(os.Interrupt))
	err := <-b.ended
	ts.Logf("%s", ts.ReadFile("printed"))
	checkStatus(ts, args[0], err)
}

// ended N waits for the end of the command and demands its exit status.
func endedBy(ts *testscript.TestScript, _ bool, args []string) {
	b := ts.Value(backgroundKey{}).(map[string]*background)["it"]
	err := <-b.ended
	ts.Logf("%s", ts.ReadFile("printed"))
	checkStatus(ts, args[0], err)
}
