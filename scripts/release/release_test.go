package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"debug/buildinfo"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"
)

func sample() []file {
	return []file{
		{"y-1/yardproof", bytes.Repeat([]byte("program"), 1000), true},
		{"y-1/LICENSE", []byte("free"), false},
		{"y-1/README.md", []byte("read"), false},
	}
}

const wanted = "y-1/LICENSE -rw-r--r-- 4\ny-1/README.md -rw-r--r-- 4\ny-1/yardproof -rwxr-xr-x 7000\n"

// The order of the files and the zone of the clock leave no trace.
func TestArchivesAreTheSame(t *testing.T) {
	at := time.Date(2026, 3, 4, 5, 6, 7, 89, time.UTC)
	for name, pack := range map[string]func([]file, time.Time) ([]byte, error){"tar": tarred, "zip": zipped} {
		first, err := pack(sample(), at)
		if err != nil {
			t.Fatal(err)
		}
		turned := sample()
		slices.Reverse(turned)
		second, err := pack(turned, at.In(time.FixedZone("", 7200)).Add(time.Microsecond))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) {
			t.Errorf("%s: two archives differ", name)
		}
		later, _ := pack(sample(), at.Add(2*time.Second))
		if bytes.Equal(first, later) {
			t.Errorf("%s: the time is not in it", name)
		}
	}
}

func TestTarred(t *testing.T) {
	at := time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)
	b, err := tarred(sample(), at)
	if err != nil {
		t.Fatal(err)
	}
	z, err := gzip.NewReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if !z.ModTime.IsZero() || z.Name != "" || z.OS != 255 {
		t.Errorf("the header of the compression says %+v", z.Header)
	}
	got := ""
	for r := tar.NewReader(z); ; {
		h, err := r.Next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		got += fmt.Sprintln(h.Name, h.FileInfo().Mode(), h.Size)
		if !h.ModTime.Equal(at) || h.Uid+h.Gid != 0 || h.Uname+h.Gname != "" {
			t.Errorf("%s is of %v, %d %d %s %s", h.Name, h.ModTime, h.Uid, h.Gid, h.Uname, h.Gname)
		}
	}
	if got != wanted {
		t.Errorf("it holds\n%s", got)
	}
}

func TestZipped(t *testing.T) {
	at := time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)
	b, err := zipped(sample(), at)
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	got := ""
	for _, f := range z.File {
		got += fmt.Sprintln(f.Name, f.Mode(), f.UncompressedSize64)
		if !f.Modified.Equal(at) {
			t.Errorf("%s is of %v", f.Name, f.Modified)
		}
	}
	if got != wanted {
		t.Errorf("it holds\n%s", got)
	}
}

func TestNameable(t *testing.T) {
	for version, want := range map[string]string{
		"": "devel", "(devel)": "devel", "v1.2.3": "v1.2.3",
		"v0.0.0-20260304050607-0123456789ab+dirty": "v0.0.0-20260304050607-0123456789ab+dirty",
		"v1/2": "v1-2",
	} {
		if got := nameable(version); got != want {
			t.Errorf("%q is %q, wanted %q", version, got, want)
		}
	}
}

func TestTargets(t *testing.T) {
	all, err := targets(nil)
	if got := fmt.Sprint(all); err != nil || got != "[darwin-amd64 darwin-arm64 linux-amd64 linux-arm64 windows-amd64 windows-arm64]" {
		t.Errorf("all are %s (%v)", got, err)
	}
	if some, err := targets([]string{"windows-arm64", "linux-amd64"}); err != nil || len(some) != 2 {
		t.Errorf("two are %v (%v)", some, err)
	}
	if _, err := targets([]string{"linux-amd64", "plan9-386"}); err == nil {
		t.Error("what is not built is taken")
	}
}

func TestMadeAt(t *testing.T) {
	info := &buildinfo.BuildInfo{Settings: []debug.BuildSetting{{Key: "vcs.time", Value: "2026-03-04T07:06:07+02:00"}}}
	if got := madeAt(info); !got.Equal(time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)) || got.Location() != time.UTC {
		t.Errorf("made at %v", got)
	}
	info.Settings[0].Value = "yesterday"
	if got := madeAt(info); got.Year() != 1980 {
		t.Errorf("without a time it is made at %v", got)
	}
}

// The notes tell of the commits since the last release, by part, as Markdown
// shows them, whatever a commit is called.
func TestNotes(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git here")
	}
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	dir := t.TempDir()
	git := func(args ...string) {
		t.Helper()
		c := exec.Command("git", append([]string{"-C", dir, "-c", "user.name=a", "-c", "user.email=a@example.org"}, args...)...)
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
	}
	commit := func(subject string) { git("commit", "-q", "--allow-empty", "-m", subject) }
	git("init", "-q")
	commit("check: the first thing")
	commit("export: sheets")
	first, err := notes("v0.1.0", dir)
	if want := "# yardproof v0.1.0\n\nThe first release. What went into it, by the part of the program:\n\n## check\n\n- the first thing\n\n## export\n\n- sheets\n\n## Which"; err != nil || !strings.HasPrefix(first, want) {
		t.Errorf("%v\n%s", err, first)
	}
	git("tag", "v0.1.0")
	if tagged, err := notes("v0.1.0", dir); err != nil || tagged != first {
		t.Errorf("%v: the tag of the release itself changes its notes:\n%s", err, tagged)
	}
	commit("line workbook: a <b> and `code` _x_ [y](z)")
	commit("without a part")
	commit("check: another")
	git("tag", "not-a-release")
	second, err := notes("v0.2.0", dir)
	want := "# yardproof v0.2.0\n\nWhat has changed since v0.1.0, by the part of the program:\n\n## check\n\n- another\n\n" +
		"## line workbook\n\n- a &lt;b&gt; and `code` \\_x\\_ \\[y\\](z)\n\n## other\n\n- without a part\n\n## Which"
	if err != nil || !strings.HasPrefix(second, want) {
		t.Errorf("%v\n%s\nwanted\n%s", err, second, want)
	}
	if strings.Contains(second, "sheets") {
		t.Error("a change of the release before is told again")
	}
	shallow := filepath.Join(t.TempDir(), "shallow")
	git("clone", "-q", "--depth", "1", "file://"+filepath.ToSlash(dir), shallow)
	third, err := notes("v0.2.0", shallow)
	if err != nil || !strings.Contains(third, "a clone without a depth") || strings.Contains(third, "first release") {
		t.Errorf("%v: of a clone that is cut off\n%s", err, third)
	}
}
