//go:build !windows

package store

import (
	"errors"
	"io"
	"os"

	"github.com/google/renameio/v2"
)

// swap writes a temporary file beside base and puts it in base's place once
// it is whole and on the disk. A file that is replaced keeps its permissions.
func swap(in *os.Root, base string, write func(io.Writer) error) error {
	pending, err := renameio.NewPendingFile(base,
		renameio.WithRoot(in), renameio.WithPermissions(0o666), renameio.WithExistingPermissions())
	if err != nil {
		return err
	}
	if err := write(pending); err != nil {
		return errors.Join(err, pending.Cleanup())
	}
	if err := pending.CloseAtomicallyReplace(); err != nil {
		return errors.Join(err, pending.Cleanup())
	}
	return nil
}
