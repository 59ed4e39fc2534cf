//go:build windows

package store

import (
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"strconv"
)

// swap writes a temporary file beside base and puts it in base's place once
// it is whole.
//
// renameio has nothing for this system, where a rename is not promised to be
// atomic; it still leaves either the old file or the new one.
func swap(in *os.Root, base string, write func(io.Writer) error) error {
	temporary := "." + base + strconv.FormatUint(rand.Uint64(), 10)
	f, err := in.OpenFile(temporary, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	err = errors.Join(write(f), f.Close())
	if err == nil {
		err = in.Rename(temporary, base)
	}
	if err != nil {
		return errors.Join(err, in.Remove(temporary))
	}
	return nil
}
