package xlsx

import (
	"archive/zip"
	"bytes"
	"cmp"
	"io"
	"slices"
	"strings"
	"time"
)

// bytes is the finished workbook. The library packs its parts in no certain
// order, so they are packed again: sorted all of one time.
func (b *book) bytes() ([]byte, error) {
	b.sortTypes()
	b.hatch()
	packed, err := b.file.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	if err := b.file.Close(); err != nil {
		return nil, err
	}
	return repack(packed.Bytes())
}

// zipDate is the earliest time that the format of the archive has.
func zipDate() time.Time { return time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC) }

func repack(packed []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		return nil, err
	}
	slices.SortFunc(in.File, func(a, b *zip.File) int { return cmp.Compare(a.Name, b.Name) })
	var b bytes.Buffer
	out := zip.NewWriter(&b)
	for _, part := range in.File {
		if err := copyPart(out, part); err != nil {
			return nil, err
		}
	}
	err = out.Close()
	return b.Bytes(), err
}

func copyPart(out *zip.Writer, part *zip.File) error {
	from, err := part.Open()
	if err != nil {
		return err
	}
	defer from.Close()
	method := zip.Deflate
	if strings.HasSuffix(part.Name, ".png") {
		method = zip.Store // deflated already
	}
	to, err := out.CreateHeader(&zip.FileHeader{Name: part.Name, Method: method, Modified: zipDate()})
	if err != nil {
		return err
	}
	_, err = io.Copy(to, from)
	return err
}
