package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"syscall"

	"github.com/spf13/pflag"

	"yardproof/exporters"
)

// The exit statuses, the same for every command and format. The highest that
// holds is the one given.
const (
	exitClean    = 0 // nothing found at the level of --fail-on or above
	exitFindings = 1 // something was found
	exitUsage    = 2 // the command line makes no sense; nothing was done
	exitStopped  = 3 // could not finish: a path is missing, the system refused, interrupted, a crash
)

// streams are what a command reads from and writes to.
type streams struct {
	stdin          io.Reader
	stdout, stderr io.Writer
}

// command is one word that yardproof can be given.
type command struct {
	name    string
	args    string // what may follow it
	summary string
	about   string // paragraphs of its help
	flags   func(*pflag.FlagSet, *options)
	takes   func() []offer // words that its first argument may be
	paths   bool           // its arguments, or those after the first, are paths
	hidden  bool           // it is for scripts, and not in the overview
	exits   string         // its exit statuses; empty where they are those of check, or only 0 and 2
	run     func(context.Context, streams, *options, []string) (int, error)
}

// usageError is an error of the command line.
type usageError struct{ error }

func misuse(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// run is the whole program.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	s := streams{stdin, stdout, stderr}
	name := ""
	if len(args) > 0 {
		name, args = args[0], args[1:]
	}
	switch name {
	case "":
		io.WriteString(stderr, overview())
		return exitUsage
	case "help", "-h", "--help":
		return s.end("", help(s, args))
	case "-v", "--version":
		name = "version"
	}
	c, ok := findCommand(name)
	if !ok {
		return s.end("", misuse("there is no command %q", name))
	}
	status, err := c.start(ctx, s, args)
	if err != nil {
		return s.end(c.name, err)
	}
	return status
}

// start parses the command's flags and runs it.
func (c command) start(ctx context.Context, s streams, args []string) (int, error) {
	var o options
	flags := c.flagSet(&o)
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		return exitClean, c.help(s)
	case err != nil:
		return 0, usageError{err}
	}
	return c.run(ctx, s, &o, flags.Args())
}

// flagSet has the command's flags. It prints nothing by itself.
func (c command) flagSet(o *options) *pflag.FlagSet {
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	if c.flags != nil {
		c.flags(flags, o)
	}
	return flags
}

// end tells of an error, if there is one, and gives its exit status. Nobody is
// told that standard output is no longer read: that was the reader's wish.
func (s streams) end(command string, err error) int {
	var misused usageError
	switch {
	case err == nil || errors.Is(err, syscall.EPIPE):
		return exitClean
	case errors.As(err, &misused):
		fmt.Fprintf(s.stderr, "yardproof: %s\nTry `%s`.\n", exporters.OneLine(err.Error()), strings.TrimSpace("yardproof help "+command))
		return exitUsage
	}
	fmt.Fprintf(s.stderr, "yardproof: %s\n", exporters.OneLine(err.Error()))
	return exitStopped
}
