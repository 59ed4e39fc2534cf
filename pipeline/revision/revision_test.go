package revision

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// repository is a folder under git, for a test to fill.
type repository struct {
	*testing.T
	dir string
}

func newRepository(t *testing.T) repository {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git here")
	}
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	t.Setenv("GIT_CONFIG_NOSYSTEM", "1")
	for _, who := range []string{"AUTHOR", "COMMITTER"} {
		t.Setenv("GIT_"+who+"_NAME", "a")
		t.Setenv("GIT_"+who+"_EMAIL", "a@example.org")
	}
	// Real, for that is what the top is.
	dir, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	r := repository{t, dir}
	r.git("init", "-q", "-b", "main")
	return r
}

// git runs git as anybody does, with all that the repository sets.
func (r repository) git(args ...string) string {
	r.Helper()
	return r.piped("", args...)
}

func (r repository) piped(stdin string, args ...string) string {
	r.Helper()
	c := exec.Command("git", args...)
	c.Dir, c.Stdin = r.dir, strings.NewReader(stdin)
	out, err := c.Output()
	if err != nil {
		if exit, ok := errors.AsType[*exec.ExitError](err); ok {
			r.Fatalf("git %s: %v\n%s", args, err, exit.Stderr)
		}
		r.Fatal(err)
	}
	return strings.TrimSpace(string(out))
}

func (r repository) write(name, text string) {
	r.Helper()
	path := filepath.Join(r.dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		r.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o777); err != nil {
		r.Fatal(err)
	}
}

func (r repository) commit() {
	r.Helper()
	r.git("add", ".")
	r.git("commit", "-q", "-m", "next")
}

func (r repository) open(revision string) *Tree {
	r.Helper()
	tree, err := Open(context.Background(), r.dir, revision)
	if err != nil {
		r.Fatal(err)
	}
	r.Cleanup(tree.Close)
	return tree
}

func (r repository) reads(t *Tree, name, want string) {
	r.Helper()
	if b, err := t.Read(name, 100); err != nil || string(b) != want {
		r.Errorf("%s is %q, %v; wanted %q", name, b, err, want)
	}
}

// What was committed is read, by every name that a revision has, and not what
// lies in the folder now.
func TestReadsWhatWasCommitted(t *testing.T) {
	r := newRepository(t)
	r.write("a.txt", "one")
	r.write("b/c/d.txt", "deep")
	r.write("b/empty", "")
	r.commit()
	r.git("tag", "first")
	r.write("a.txt", "two")
	r.commit()
	r.write("a.txt", "three")
	r.write("new", "new")
	if err := os.RemoveAll(filepath.Join(r.dir, "b")); err != nil {
		t.Fatal(err)
	}
	for revision, want := range map[string]string{"HEAD": "two", "main": "two", "first": "one", "HEAD^": "one", "main~1": "one", "HEAD^{/next}": "two", r.git("rev-parse", "first"): "one"} {
		tree := r.open(revision)
		r.reads(tree, "a.txt", want)
		r.reads(tree, "b/c/d.txt", "deep")
		r.reads(tree, "b/empty", "")
		if tree.Top() != r.dir || tree.Commit() != r.git("rev-parse", revision+"^{commit}") {
			t.Errorf("%s: %s in %s", revision, tree.Commit(), tree.Top())
		}
		if names := tree.Names(); !slices.Equal(names, []string{"a.txt", "b/c/d.txt", "b/empty"}) {
			t.Errorf("%s holds %q", revision, names)
		}
		for folder, want := range map[string][]string{"": {"a.txt", "b"}, "b": {"c", "empty"}, "b/c": {"d.txt"}} {
			if got, ok := tree.Folder(folder); !ok || !slices.Equal(got, want) {
				t.Errorf("%s: in %q there is %q", revision, folder, got)
			}
		}
		if _, err := tree.Read("new", 100); !errors.Is(err, fs.ErrNotExist) || tree.IsFile("new") || tree.IsFile("b") || tree.Err() != nil {
			t.Errorf("%s: %v, %v", revision, err, tree.Err())
		}
	}
}

func TestIsTracked(t *testing.T) {
	r := newRepository(t)
	r.write("kept", "1")
	r.write("*", "2")
	r.commit()
	r.write("added", "3")
	r.git("add", "added")
	r.write("loose", "4")
	tree := r.open("HEAD")
	for name, want := range map[string]bool{"kept": true, "added": true, "loose": false, "*": true, "k*": false, ":(top)kept": false} {
		if got, err := tree.IsTracked(name); got != want || err != nil {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
}

// A content is told by its id, in repositories of either hash; git has said what
// the ids are.
func TestIs(t *testing.T) {
	r := newRepository(t)
	for _, hash := range []string{"sha1", "sha256"} {
		r.dir = filepath.Join(r.dir, hash)
		if err := os.Mkdir(r.dir, 0o777); err != nil {
			t.Fatal(err)
		}
		r.git("init", "-q", "--object-format="+hash)
		r.write("a", "one\n")
		r.write("empty", "")
		r.commit()
		tree := r.open("HEAD")
		for name, content := range map[string]string{"a": "one\n", "empty": ""} {
			if !tree.Is(name, []byte(content)) || tree.Is(name, []byte(content+" ")) {
				t.Errorf("%s: %s is not told by its content", hash, name)
			}
		}
		if tree.Is("gone", nil) || tree.Is("a", nil) {
			t.Errorf("%s: what is not there is told by its content", hash)
		}
	}
}

// What is too large is seen to be, and is not read.
func TestTooLarge(t *testing.T) {
	r := newRepository(t)
	r.write("ten", "0123456789")
	r.commit()
	tree := r.open("HEAD")
	for most, want := range map[int]string{10: "0123456789", 9: strings.Repeat(" ", 10)} {
		if b, err := tree.Read("ten", most); err != nil || string(b) != want {
			t.Errorf("at most %d: %q, %v", most, b, err)
		}
	}
}

// Links and submodules are not among the files, and neither is what would lie
// outside the top, which git refuses to commit but not to hold.
func TestOnlyFilesInside(t *testing.T) {
	r := newRepository(t)
	r.write("file", "text")
	r.commit()
	blob, commit := r.git("rev-parse", "HEAD:file"), r.git("rev-parse", "HEAD")
	link := r.piped("/etc/passwd", "hash-object", "-w", "--stdin")
	inner := r.piped("100644 blob "+blob+"\tx\n", "mktree")
	outer := r.piped("100644 blob "+blob+"\tfile\n120000 blob "+link+"\tlink\n160000 commit "+commit+"\tmodule\n040000 tree "+inner+"\tin\n", "mktree")
	for _, name := range []string{"..", ".", "a\\..\\..\\b", "/"} {
		// Written as bytes, for no command makes such a tree.
		id := make([]byte, len(blob)/2)
		for i := range id {
			id[i] = unhex(blob[2*i])<<4 | unhex(blob[2*i+1])
		}
		bad := r.piped("100644 "+name+"\x00"+string(id), "hash-object", "-w", "-t", "tree", "--literally", "--stdin")
		tree := r.open(r.git("commit-tree", "-m", "bad", bad))
		if names := tree.Names(); len(names) > 0 && filepath.Separator == '\\' || len(names) > 1 || len(names) == 1 && !filepath.IsLocal(names[0]) {
			t.Errorf("%q: the revision holds %q", name, names)
		}
	}
	tree := r.open(r.git("commit-tree", "-m", "good", outer))
	if names := tree.Names(); !slices.Equal(names, []string{"file", "in/x"}) {
		t.Errorf("the revision holds %q", names)
	}
}

func unhex(c byte) byte {
	if c >= 'a' {
		return c - 'a' + 10
	}
	return c - '0'
}

// Every program that a repository's settings can name is a trap here. That the
// traps are traps, plain git shows.
func TestNothingOfTheRepositoryIsRun(t *testing.T) {
	if filepath.Separator != '/' {
		t.Skip("the traps are shell scripts")
	}
	r := newRepository(t)
	sprung := filepath.Join(t.TempDir(), "sprung")
	trap := filepath.Join(t.TempDir(), "trap")
	if err := os.WriteFile(trap, []byte("#!/bin/sh\necho \"$0 $*\" >>"+sprung+"\n"), 0o777); err != nil {
		t.Fatal(err)
	}
	r.write("a.plan.json", "one")
	r.write(".gitattributes", "* diff=trap filter=trap\n")
	r.commit()
	for key, value := range map[string]string{
		"core.fsmonitor": trap, "core.pager": trap, "core.sshCommand": trap, "core.editor": trap, "core.askPass": trap, "core.gitProxy": trap,
		"diff.external": trap, "diff.trap.textconv": trap, "diff.trap.command": trap,
		"filter.trap.smudge": trap, "filter.trap.clean": trap, "filter.trap.process": trap,
		"credential.helper": trap, "gpg.program": trap, "alias.rev-parse": "!" + trap, "alias.trap": "!" + trap,
		"pager.ls-tree": trap, "pager.rev-parse": trap, "interactive.diffFilter": trap, "log.showSignature": "true",
		"remote.origin.url": "ext::" + trap, "remote.origin.promisor": "true", "remote.origin.uploadpack": trap,
		"extensions.partialClone": "origin", "core.repositoryFormatVersion": "1", "protocol.ext.allow": "always",
	} {
		r.git("config", key, value)
	}
	for _, hook := range []string{"post-checkout", "post-index-change", "pre-auto-gc", "reference-transaction", "post-rewrite", "fsmonitor-watchman"} {
		text, err := os.ReadFile(trap)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(r.dir, ".git", "hooks", hook), text, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	// A lost file, which git would fetch from the server.
	lost := r.git("rev-parse", "HEAD:a.plan.json")
	r.write("a.plan.json", "two")
	for command, args := range map[string][]string{"the watcher": {"status"}, "the conversion": {"diff"}, "the alias": {"trap"}} {
		exec.Command("git", append([]string{"-C", r.dir}, args...)...).Run()
		if _, err := os.Stat(sprung); err != nil {
			t.Fatalf("%s is no trap: %v", command, err)
		}
		os.Remove(sprung)
	}
	tree := r.open("HEAD")
	r.reads(tree, "a.plan.json", "one")
	if _, err := tree.IsTracked("a.plan.json"); err != nil {
		t.Error(err)
	}
	if err := os.Remove(filepath.Join(r.dir, ".git", "objects", lost[:2], lost[2:])); err != nil {
		t.Fatal(err)
	}
	exec.Command("git", "-C", r.dir, "cat-file", "blob", lost).Run()
	if _, err := os.Stat(sprung); err != nil {
		t.Fatalf("the server is no trap: %v", err)
	}
	os.Remove(sprung)
	again := r.open("HEAD")
	if b, err := again.Read("a.plan.json", 100); err == nil {
		t.Errorf("what is lost is read: %q", b)
	}
	if text, err := os.ReadFile(sprung); err == nil {
		t.Errorf("these were run:\n%s", text)
	}
}

// A replaced object is read as it was committed.
func TestReplacedObjects(t *testing.T) {
	r := newRepository(t)
	r.write("a", "one")
	r.commit()
	other := r.piped("other", "hash-object", "-w", "--stdin")
	r.git("replace", r.git("rev-parse", "HEAD:a"), other)
	if r.git("show", "HEAD:a") != "other" {
		t.Fatal("nothing is replaced")
	}
	r.reads(r.open("HEAD"), "a", "one")
}

// Which repository it is, a hook's environment says, which may be relative to
// where the hook runs.
func TestEnvironmentOfAHook(t *testing.T) {
	r := newRepository(t)
	r.write("plans/a", "hooked")
	r.commit()
	other := newRepository(t)
	other.write("a", "other")
	other.commit()
	t.Chdir(r.dir)
	t.Setenv("GIT_DIR", ".git")
	t.Setenv("GIT_INDEX_FILE", ".git/index")
	for _, folder := range []string{".", "plans", filepath.Join(r.dir, "plans"), other.dir} {
		tree, err := Open(t.Context(), folder, "HEAD")
		if err != nil {
			t.Fatal(err)
		}
		r.reads(tree, "plans/a", "hooked")
		if tracked, err := tree.IsTracked("plans/a"); !tracked || err != nil || tree.Top() != r.dir {
			t.Errorf("%s: tracked %v, %v, in %s", folder, tracked, err, tree.Top())
		}
		tree.Close()
	}
}

// A file that is lost, an interrupt and a closed tree are errors that stay.
func TestTroubles(t *testing.T) {
	r := newRepository(t)
	r.write("a", "one")
	r.write("b", "two")
	r.commit()
	lost := r.git("rev-parse", "HEAD:a")
	if err := os.Remove(filepath.Join(r.dir, ".git", "objects", lost[:2], lost[2:])); err != nil {
		t.Fatal(err)
	}
	tree := r.open("HEAD")
	r.reads(tree, "b", "two")
	_, err := tree.Read("a", 100)
	if missing, ok := errors.AsType[*Error](err); !ok || !strings.Contains(missing.Message, "does not hold it") || tree.Err() == nil {
		t.Errorf("%v, %v", err, tree.Err())
	}
	ctx, stop := context.WithCancel(t.Context())
	interrupted, err := Open(ctx, r.dir, "HEAD")
	if err != nil {
		t.Fatal(err)
	}
	r.reads(interrupted, "b", "two")
	stop()
	if _, err := interrupted.Read("b", 100); !errors.Is(err, context.Canceled) || !errors.Is(interrupted.Err(), context.Canceled) {
		t.Errorf("after an interrupt: %v", err)
	}
	interrupted.Close()
	if _, err := Open(ctx, r.dir, "HEAD"); !errors.Is(err, context.Canceled) {
		t.Errorf("opened after an interrupt: %v", err)
	}
	closed := r.open("HEAD")
	closed.Close()
	if _, err := closed.Read("b", 100); err == nil {
		t.Error("a closed tree is read")
	}
}

// What was asked for wrongly is told with what to do.
func TestRefusals(t *testing.T) {
	r := newRepository(t)
	refused := func(dir, revision, want string) {
		t.Helper()
		_, err := Open(t.Context(), dir, revision)
		if e, ok := errors.AsType[*Error](err); !ok || !strings.Contains(e.Message, want) || e.Hint == "" {
			t.Errorf("%q: %v; wanted %q", revision, err, want)
		}
	}
	refused(r.dir, "HEAD", "no commit yet")
	r.write("a", "one")
	r.commit()
	for _, revision := range []string{"", "gone", "HEAD..main", "--all", "-h", "HEAD:a", "HEAD^{tree}", "HEAD\n", strings.Repeat("0", 40)} {
		refused(r.dir, revision, "no such commit")
	}
	refused(t.TempDir(), "HEAD", "no git repository")
	if err := os.WriteFile(filepath.Join(r.dir, ".git", "config"), []byte("[core\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	refused(r.dir, "HEAD", "bad config line 1")
	t.Setenv("PATH", "")
	refused(r.dir, "HEAD", "no git program")
}
