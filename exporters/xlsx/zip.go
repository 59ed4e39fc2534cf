package xlsx

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/klauspost/compress/flate"
	"github.com/xuri/excelize/v2"
)

// bytes is the finished workbook. The library hands its parts over in no certain
// order and would note the time: they are packed sorted, all of one time.
func (b *book) bytes() ([]byte, error) {
	b.sortTypes()
	b.hatch()
	b.file.SetZipWriter(func(to io.Writer) excelize.ZipWriter { return parts{to, map[string]*bytes.Buffer{}} })
	packed, err := b.file.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return packed.Bytes(), b.file.Close()
}

// zipDate is the earliest time that the format of the archive has.
func zipDate() time.Time { return time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC) }

// parts are the files of an archive, which is written when it is closed.
type parts struct {
	to    io.Writer
	files map[string]*bytes.Buffer
}

// Create adds a part, to be written to before the archive is closed.
func (p parts) Create(name string) (io.Writer, error) {
	p.files[name] = &bytes.Buffer{}
	return p.files[name], nil
}

// AddFS is for files of the disk, which workbooks have none of.
func (parts) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes the archive.
func (p parts) Close() error {
	out := zip.NewWriter(p.to)
	out.RegisterCompressor(zip.Deflate, deflate())
	for _, name := range slices.Sorted(maps.Keys(p.files)) {
		method := zip.Deflate
		if strings.HasSuffix(name, ".png") {
			method = zip.Store // deflated already
		}
		to, err := out.CreateHeader(&zip.FileHeader{Name: name, Method: method, Modified: zipDate()})
		if err != nil {
			return err
		}
		if _, err := to.Write(p.files[name].Bytes()); err != nil {
			return err
		}
	}
	return out.Close()
}

// deflate makes one compressor serve for all files of an archive, which are
// written one after the other.
func deflate() zip.Compressor {
	var one *flate.Writer
	return func(to io.Writer) (io.WriteCloser, error) {
		if one == nil {
			var err error
			one, err = flate.NewWriter(to, flate.DefaultCompression)
			return one, err
		}
		one.Reset(to)
		return one, nil
	}
}
