package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	v1 "github.com/google/go-containerregistry/pkg/v1"
	"github.com/google/go-containerregistry/pkg/v1/layout"
	"github.com/google/go-containerregistry/pkg/v1/mutate"
	"github.com/google/go-containerregistry/pkg/v1/validate"
)

var made = time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)

// archive is one of a release, with these files.
func archive(t *testing.T, files map[string]string) []byte {
	t.Helper()
	var out bytes.Buffer
	z := gzip.NewWriter(&out)
	w := tar.NewWriter(z)
	for name, text := range files {
		if err := w.WriteHeader(&tar.Header{Name: "folder/" + name, Size: int64(len(text)), Mode: 0o755, ModTime: made}); err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(w, text); err != nil {
			t.Fatal(err)
		}
	}
	if err := errors.Join(w.Close(), z.Close()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// lay makes a folder of archives with their sums.
func lay(t *testing.T, archives map[string][]byte) string {
	t.Helper()
	dir := t.TempDir()
	sums := ""
	for name, b := range archives {
		sums += fmt.Sprintf("%x  %s\n", sha256.Sum256(b), name)
		if err := os.WriteFile(filepath.Join(dir, name), b, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "SHA256SUMS"), []byte(sums), 0o666); err != nil {
		t.Fatal(err)
	}
	return dir
}

func program(machine string) map[string]string {
	return map[string]string{"yardproof": "program for " + machine, "LICENSE": "free", "README.md": "read"}
}

// images are those of a layout, by machine.
func images(t *testing.T, dir string) map[string]v1.Image {
	t.Helper()
	l, err := layout.FromPath(dir)
	if err != nil {
		t.Fatal(err)
	}
	outer, err := l.ImageIndex()
	if err != nil {
		t.Fatal(err)
	}
	manifest, err := outer.IndexManifest()
	if err != nil || len(manifest.Manifests) != 1 {
		t.Fatalf("%v: %+v", err, manifest)
	}
	if name := manifest.Manifests[0].Annotations["org.opencontainers.image.ref.name"]; name != "v0.1.0" {
		t.Errorf("its name is %q", name)
	}
	index, err := outer.ImageIndex(manifest.Manifests[0].Digest)
	if err != nil {
		t.Fatal(err)
	}
	// The library's own reading of the specification: sums, sizes and types.
	if err := validate.Index(index); err != nil {
		t.Error(err)
	}
	inner, err := index.IndexManifest()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]v1.Image{}
	for _, m := range inner.Manifests {
		if all[m.Platform.OS+"/"+m.Platform.Architecture], err = index.Image(m.Digest); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

func TestPack(t *testing.T) {
	dist := lay(t, map[string][]byte{
		"yardproof-v0.1.0-linux-amd64.tar.gz":  archive(t, program("amd64")),
		"yardproof-v0.1.0-linux-arm64.tar.gz":  archive(t, program("arm64")),
		"yardproof-v0.1.0-darwin-arm64.tar.gz": []byte("of another system"),
		"yardproof-v0.1.0-windows-amd64.zip":   []byte("of another system"),
	})
	to := filepath.Join(t.TempDir(), "image")
	if err := pack(dist, to); err != nil {
		t.Fatal(err)
	}
	all := images(t, to)
	if len(all) != 2 {
		t.Errorf("there are images for %v", all)
	}
	for _, machine := range []string{"amd64", "arm64"} {
		image := all["linux/"+machine]
		if image == nil {
			t.Fatalf("there is no image for %s", machine)
		}
		config, err := image.ConfigFile()
		if err != nil {
			t.Fatal(err)
		}
		c := config.Config
		if config.Architecture != machine || !config.Created.Equal(made) || c.User != "65532:65532" || c.WorkingDir != "/work" ||
			strings.Join(c.Entrypoint, " ") != "/yardproof" || c.Labels["org.opencontainers.image.version"] != "v0.1.0" {
			t.Errorf("%s: %+v", machine, config)
		}
		got := ""
		out := mutate.Extract(image)
		for r := tar.NewReader(out); ; {
			h, err := r.Next()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			text, _ := io.ReadAll(r)
			got += fmt.Sprintln(h.Name, h.FileInfo().Mode(), h.Uid, h.Gid, h.ModTime.Equal(made), string(text))
		}
		out.Close()
		if want := "LICENSE -rw-r--r-- 0 0 true free\nyardproof -rwxr-xr-x 0 0 true program for " + machine + "\n"; got != want {
			t.Errorf("%s holds\n%s", machine, got)
		}
	}
}

// The same archives give the same bytes.
func TestPackIsReproducible(t *testing.T) {
	dist := lay(t, map[string][]byte{"yardproof-v0.1.0-linux-amd64.tar.gz": archive(t, program("amd64"))})
	contents := func() string {
		to := t.TempDir()
		if err := pack(dist, to); err != nil {
			t.Fatal(err)
		}
		all := ""
		err := filepath.WalkDir(to, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			b, err := os.ReadFile(path)
			name, _ := filepath.Rel(to, path)
			all += fmt.Sprintf("%s %x\n", name, sha256.Sum256(b))
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	if a, b := contents(), contents(); a != b || strings.Count(a, "\n") < 6 {
		t.Errorf("two images differ:\n%s\n%s", a, b)
	}
}

func TestPackRefuses(t *testing.T) {
	whole := archive(t, program("amd64"))
	const name = "yardproof-v0.1.0-linux-amd64.tar.gz"
	exchanged := lay(t, map[string][]byte{name: whole})
	if err := os.WriteFile(filepath.Join(exchanged, name), archive(t, map[string]string{"yardproof": "another", "LICENSE": "free"}), 0o666); err != nil {
		t.Fatal(err)
	}
	elsewhere := t.TempDir()
	if err := os.WriteFile(filepath.Join(elsewhere, "SHA256SUMS"), []byte("00  ../yardproof-v0.1.0-linux-amd64.tar.gz\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	for dist, want := range map[string]string{
		exchanged: "is not the archive of the sum",
		elsewhere: "is not a sum and a name",
		lay(t, map[string][]byte{"yardproof-v0.1.0-darwin-arm64.tar.gz": whole}):               "no archive for Linux",
		lay(t, map[string][]byte{name: archive(t, map[string]string{"yardproof": "program"})}): "lacks the program or the licence",
		lay(t, map[string][]byte{name: whole[:40]}):                                            "EOF",
		lay(t, map[string][]byte{name: whole, "yardproof-v0.2.0-linux-arm64.tar.gz": whole}):   "of two versions",
		t.TempDir(): "SHA256SUMS",
	} {
		to := t.TempDir()
		if err := pack(dist, to); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v; wanted %q", err, want)
		}
		if entries, _ := os.ReadDir(to); len(entries) > 0 {
			t.Errorf("%s: something was written", want)
		}
	}
	if err := pack(lay(t, map[string][]byte{name: whole}), exchanged); err == nil || !strings.Contains(err.Error(), "is not empty") {
		t.Errorf("over other files: %v", err)
	}
}
