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
	"runtime/debug"
	"slices"
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
