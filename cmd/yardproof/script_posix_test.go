//go:build unix && !linux

package main

import (
	"errors"
	"os"
	"os/exec"

	"github.com/rogpeppe/go-internal/testscript"
)

// runUnprivileged runs a command as an ordinary user, if this is one.
func runUnprivileged(cmd *exec.Cmd) error {
	if os.Getuid() == 0 {
		return errors.New("root reads everything")
	}
	return cmd.Run()
}

func onTerminal(ts *testscript.TestScript, _ *exec.Cmd, _ *os.File) {
	ts.Fatalf("terminals on Linux only: ask for [linux]")
}

// terminalRun needs a pseudo-terminal, which each system opens another way.
func terminalRun(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Fatalf("terminal runs on Linux only: ask for [linux]")
}

// systemPrograms has none here: scripts that need them ask for [linux].
func systemPrograms() map[string]func() { return nil }
