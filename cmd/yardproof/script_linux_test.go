package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"syscall"
	"unsafe"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/sys/unix"
)

// runUnprivileged runs a command without the right to pass over permissions,
// which root has and an ordinary user has not. A right that is taken from this
// thread cannot be given back to it, so the thread is thrown away.
func runUnprivileged(cmd *exec.Cmd) error {
	if os.Getuid() != 0 {
		return cmd.Run()
	}
	ended := make(chan error)
	go func() {
		runtime.LockOSThread() // and never unlocked: the thread ends with the goroutine
		for _, right := range []uintptr{unix.CAP_DAC_OVERRIDE, unix.CAP_DAC_READ_SEARCH} {
			if err := unix.Prctl(unix.PR_CAPBSET_DROP, right, 0, 0, 0); err != nil {
				ended <- fmt.Errorf("root cannot give up its rights here: %w", err)
				return
			}
		}
		ended <- cmd.Run()
	}()
	return <-ended
}

// terminalRun N COMMAND... runs a command with both of its outputs on a
// terminal, and demands its exit status. What it showed goes to the file
// "printed".
func terminalRun(ts *testscript.TestScript, _ bool, args []string) {
	cmd, _ := start(ts, args[1:])
	ours, theirs, err := openTerminal()
	ts.Check(err)
	defer ours.Close()
	cmd.Stdout, cmd.Stderr = theirs, theirs
	ts.Check(cmd.Start())
	ts.Check(theirs.Close())
	var shown bytes.Buffer
	io.Copy(&shown, ours) // ends with an error once the command has closed its side
	err = cmd.Wait()
	ts.Check(os.WriteFile(ts.MkAbs("printed"), shown.Bytes(), 0o666))
	ts.Logf("%s", shown.String())
	checkStatus(ts, args[0], err)
}

// onTerminal puts a command's outputs on a terminal, and writes what it shows
// there to a file.
func onTerminal(ts *testscript.TestScript, cmd *exec.Cmd, to *os.File) {
	ours, theirs, err := openTerminal()
	ts.Check(err)
	cmd.Stdout, cmd.Stderr = theirs, theirs
	ts.Defer(func() { ours.Close(); theirs.Close() })
	go io.Copy(to, ours) // until it is closed
}

// openTerminal is a pseudo-terminal of 80 columns: our side and the command's.
func openTerminal() (ours, theirs *os.File, err error) {
	ours, err = os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		return nil, nil, err
	}
	fd := int(ours.Fd())
	if err := unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0); err != nil {
		return nil, nil, err
	}
	number, err := unix.IoctlGetInt(fd, unix.TIOCGPTN)
	if err != nil {
		return nil, nil, err
	}
	if err := unix.IoctlSetWinsize(fd, unix.TIOCSWINSZ, &unix.Winsize{Row: 24, Col: 80}); err != nil {
		return nil, nil, err
	}
	theirs, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	return ours, theirs, err
}

// systemPrograms are those of scripts that need what only this system has.
func systemPrograms() map[string]func() { return map[string]func(){"lockless": lockless} }

// lockless COMMAND... becomes a command to which every file system is one
// without locks: the kernel answers so.
func lockless() {
	runtime.LockOSThread()
	filter := []unix.SockFilter{
		{Code: unix.BPF_LD | unix.BPF_W | unix.BPF_ABS, K: 0}, // the number of the call
		{Code: unix.BPF_JMP | unix.BPF_JEQ | unix.BPF_K, Jf: 1, K: unix.SYS_FLOCK},
		{Code: unix.BPF_RET | unix.BPF_K, K: unix.SECCOMP_RET_ERRNO | uint32(unix.ENOLCK)},
		{Code: unix.BPF_RET | unix.BPF_K, K: unix.SECCOMP_RET_ALLOW},
	}
	program := unix.SockFprog{Len: uint16(len(filter)), Filter: &filter[0]}
	path, err := exec.LookPath(os.Args[1])
	if err == nil {
		err = unix.Prctl(unix.PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0)
	}
	if err == nil {
		err = unix.Prctl(unix.PR_SET_SECCOMP, unix.SECCOMP_MODE_FILTER, uintptr(unsafe.Pointer(&program)), 0, 0)
	}
	if err == nil {
		err = syscall.Exec(path, os.Args[1:], os.Environ())
	}
	fmt.Fprintln(os.Stderr, "lockless:", err)
	os.Exit(100)
}
