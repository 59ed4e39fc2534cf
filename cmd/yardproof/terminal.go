package main

import (
	"io"
	"os"

	"github.com/mattn/go-isatty"
	"golang.org/x/term"
)

// terminal is the file of a stream that is a terminal, nil for any other.
func terminal(stream any) *os.File {
	f, ok := stream.(*os.File)
	if ok && (isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd())) {
		return f
	}
	return nil
}

// useColor understands --color. NO_COLOR and TERM=dumb are heeded only where
// the flag leaves the choice open.
func useColor(when string, stdout io.Writer) (bool, error) {
	switch when {
	case "always":
		return true, nil
	case "never":
		return false, nil
	case "auto":
		return terminal(stdout) != nil && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb", nil
	}
	return false, misuse("--color %q is not auto, always or never", when)
}

// columns is the width of a terminal, 0 of any other stream.
func columns(stream io.Writer) int {
	width, _ := window(stream)
	return width
}

// window is the columns and rows of a terminal, 0 of any other stream.
func window(stream io.Writer) (width, height int) {
	f := terminal(stream)
	if f == nil {
		return 0, 0
	}
	width, height, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0, 0
	}
	return width, height
}
