package revision

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"strings"
)

// Error is what somebody can put right who asked for a revision: what is the
// matter, and what to do.
type Error struct{ Message, Hint string }

func (e *Error) Error() string { return e.Message + "; " + e.Hint }

// git runs the git program in a folder.
type git struct {
	ctx context.Context
	dir string // empty for that of the process
}

// in is git in a folder, or where the environment says which repository is
// meant, as that of a hook does, in the folder of the process: what it says may
// be relative to that.
func in(ctx context.Context, dir string) git {
	for _, name := range []string{"GIT_DIR", "GIT_WORK_TREE", "GIT_COMMON_DIR"} {
		if os.Getenv(name) != "" {
			return git{ctx, ""}
		}
	}
	return git{ctx, dir}
}

// command is a call of git that runs nothing of the repository's.
func (g git) command(args ...string) *exec.Cmd {
	safe := []string{
		"--no-pager", "--no-replace-objects", "--no-optional-locks",
		"-c", "core.hooksPath=" + os.DevNull, "-c", "core.fsmonitor=false",
	}
	c := exec.CommandContext(g.ctx, "git", append(safe, args...)...)
	c.Dir = g.dir
	c.Env = append(os.Environ(),
		"GIT_NO_LAZY_FETCH=1",     // from git 2.44 on; before that
		"GIT_ALLOW_PROTOCOL=none", // a fetch finds no transport
		"GIT_TERMINAL_PROMPT=0", "LC_ALL=C",
	)
	return c
}

// output is what a call prints. Its error is what git says.
func (g git) output(args ...string) (string, error) {
	c := g.command(args...)
	var out, said bytes.Buffer
	c.Stdout, c.Stderr = &out, &said
	err := c.Run()
	switch {
	case g.ctx.Err() != nil:
		return "", g.ctx.Err()
	case errors.Is(err, exec.ErrNotFound):
		return "", &Error{"there is no git program here", "install git"}
	case err != nil:
		return "", failure{args[0], firstLine(said.String()), err}
	}
	return out.String(), nil
}

// failure is a call of git that failed.
type failure struct {
	command, said string
	err           error
}

func (f failure) Error() string {
	if f.said == "" {
		return "git " + f.command + ": " + f.err.Error()
	}
	return "git " + f.command + ": " + f.said
}

func (f failure) Unwrap() error { return f.err }

func firstLine(said string) string {
	line, _, _ := strings.Cut(strings.TrimSpace(said), "\n")
	return strings.TrimPrefix(strings.TrimPrefix(line, "fatal: "), "error: ")
}

// top is the real path of the working tree.
func (g git) top(folder string) (string, error) {
	out, err := g.output("rev-parse", "--show-toplevel")
	if f, failed := errors.AsType[failure](err); failed {
		switch {
		case strings.Contains(f.said, "not a git repository"):
			return "", &Error{folder + " lies in no git repository", "name plans of one, or check all that there is to say of them"}
		case strings.Contains(f.said, "work tree"):
			return "", &Error{"the git repository of " + folder + " has no working tree", "name the plans of a clone that has one"}
		}
		return "", &Error{"git does not open the repository of " + folder + " (" + f.said + ")", "mend what it complains of"}
	}
	return strings.TrimSuffix(strings.TrimSuffix(out, "\n"), "\r"), err
}

// commit is the id of the commit that a revision names.
func (g git) commit(revision string) (string, error) {
	id, err := g.output("rev-parse", "--verify", "--end-of-options", revision+"^{commit}")
	if _, failed := errors.AsType[failure](err); failed {
		return "", g.unknown()
	}
	id = strings.TrimSpace(id)
	if err == nil && !isID(id) {
		err = errors.New("git rev-parse: this git is too old; version 2.30 or newer is needed")
	}
	return id, err
}

// unknown says why there may be no such revision.
func (g git) unknown() error {
	if _, err := g.output("rev-parse", "--verify", "--quiet", "HEAD^{commit}"); err != nil && g.ctx.Err() == nil {
		return &Error{"the repository has no commit yet", "commit first"}
	}
	if shallow, err := g.output("rev-parse", "--is-shallow-repository"); err == nil && strings.TrimSpace(shallow) == "true" {
		return &Error{"there is no such commit in this clone, which holds the last commits only", "clone without a depth, or run git fetch --unshallow"}
	}
	if err := g.ctx.Err(); err != nil {
		return err
	}
	return &Error{"git knows no such commit here", "name a branch, a tag or a commit; git fetch brings what only the server has"}
}

// isID reports whether a word is the id of an object, by either of git's hashes.
func isID(word string) bool {
	return (len(word) == 40 || len(word) == 64) && strings.Trim(word, "0123456789abcdef") == ""
}
