package main

import (
	"io"
	"os"
	"time"

	"github.com/mattn/go-isatty"
	"github.com/schollz/progressbar/v3"
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

// longBatch is how many plans make a batch worth a progress bar.
const longBatch = 40

// redraw is how often the bar may be drawn anew.
const redraw = 100 * time.Millisecond

// progress shows a bar for long batches, on a terminal only.
func progress(stderr io.Writer, quiet bool) func(done, total int) {
	f := terminal(stderr)
	if f == nil || quiet {
		return nil
	}
	var bar *progressbar.ProgressBar
	return func(done, total int) {
		if total < longBatch {
			return
		}
		if bar == nil {
			bar = progressbar.NewOptions(total,
				progressbar.OptionSetWriter(f), progressbar.OptionSetDescription("plans"),
				progressbar.OptionShowCount(),
				progressbar.OptionThrottle(redraw), progressbar.OptionClearOnFinish())
		}
		bar.Set(done)
	}
}
