package main

import (
	"archive/tar"
	"bytes"
	"fmt"
	"io"
	"os"

	v1 "github.com/google/go-containerregistry/pkg/v1"
	"github.com/google/go-containerregistry/pkg/v1/empty"
	"github.com/google/go-containerregistry/pkg/v1/layout"
	"github.com/google/go-containerregistry/pkg/v1/mutate"
	"github.com/google/go-containerregistry/pkg/v1/tarball"
	"github.com/google/go-containerregistry/pkg/v1/types"
)

// nobody is the user that the image runs as: any number but 0 does, and this one
// is what images without a list of users have by custom.
const nobody = "65532:65532"

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: go run ./scripts/container DIST IMAGE")
		os.Exit(2)
	}
	if err := pack(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "container:", err)
		os.Exit(1)
	}
}

// pack writes an image layout of the archives in a folder to another, which must
// be new or empty.
func pack(dist, to string) error {
	all, err := archives(dist)
	if err != nil {
		return err
	}
	if entries, err := os.ReadDir(to); err == nil && len(entries) > 0 {
		return fmt.Errorf("the folder %s is not empty", to)
	}
	index := mutate.IndexMediaType(empty.Index, types.OCIImageIndex)
	for _, r := range all {
		if r.version != all[0].version {
			return fmt.Errorf("the archives are of two versions, %s and %s", all[0].version, r.version)
		}
		image, err := r.image()
		if err != nil {
			return err
		}
		index = mutate.AppendManifests(index, mutate.IndexAddendum{
			Add: image, Descriptor: v1.Descriptor{Platform: &v1.Platform{OS: "linux", Architecture: r.machine}},
		})
	}
	written, err := layout.Write(to, mutate.IndexMediaType(empty.Index, types.OCIImageIndex))
	if err != nil {
		return err
	}
	return written.AppendIndex(index, layout.WithAnnotations(map[string]string{"org.opencontainers.image.ref.name": all[0].version}))
}

// image is the image for one machine.
func (r released) image() (v1.Image, error) {
	files, err := r.files()
	if err != nil {
		return nil, err
	}
	layer, err := tarball.LayerFromOpener(func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(files)), nil }, tarball.WithMediaType(types.OCILayer))
	if err != nil {
		return nil, err
	}
	image := mutate.ConfigMediaType(mutate.MediaType(empty.Image, types.OCIManifestSchema1), types.OCIConfigJSON)
	if image, err = mutate.Append(image, mutate.Addendum{
		Layer: layer, History: v1.History{Created: v1.Time{Time: r.at}, CreatedBy: "scripts/container"},
	}); err != nil {
		return nil, err
	}
	config, err := image.ConfigFile()
	if err != nil {
		return nil, err
	}
	config = config.DeepCopy()
	config.OS, config.Architecture, config.Created = "linux", r.machine, v1.Time{Time: r.at}
	config.Config = v1.Config{
		Entrypoint: []string{"/yardproof"}, Cmd: []string{"help"}, User: nobody, WorkingDir: "/work",
		Labels: map[string]string{
			"org.opencontainers.image.title":    "yardproof",
			"org.opencontainers.image.version":  r.version,
			"org.opencontainers.image.licenses": "MIT",
		},
	}
	return mutate.ConfigFile(image, config)
}

// files are the files of the image, as one layer of it.
func (r released) files() ([]byte, error) {
	var out bytes.Buffer
	t := tar.NewWriter(&out)
	for _, f := range []struct {
		name  string
		mode  int64
		bytes []byte
	}{{"LICENSE", 0o644, r.licence}, {"yardproof", 0o755, r.program}} {
		header := &tar.Header{Typeflag: tar.TypeReg, Name: f.name, Mode: f.mode, Size: int64(len(f.bytes)), ModTime: r.at, Format: tar.FormatUSTAR}
		if err := t.WriteHeader(header); err != nil {
			return nil, err
		}
		if _, err := t.Write(f.bytes); err != nil {
			return nil, err
		}
	}
	err := t.Close()
	return out.Bytes(), err
}
