package sheet

import (
	"bytes"
	"errors"
)

// The workbooks of another kind that a mill may send: what is wrong with them
// is not the text in them.
var (
	ErrLocked = errors.New("it is a workbook that is locked with a password")
	ErrOld    = errors.New("it is a workbook of the old format (.xls)")
	ErrBinary = errors.New("it is a workbook of the binary format (.xlsb)")
	ErrOpen   = errors.New("it is an OpenDocument sheet (.ods)")
)

// foreign says what kind of workbook bytes are that is not read, nil if they are
// none.
func foreign(b []byte) error {
	switch {
	case bytes.HasPrefix(b, []byte(compound)) && bytes.Contains(b, wide("EncryptedPackage")):
		return ErrLocked
	case bytes.HasPrefix(b, []byte(compound)):
		return ErrOld
	case oldest(b):
		return ErrOld
	case !bytes.HasPrefix(b, []byte("PK\x03\x04")):
		return nil
	case bytes.Contains(b[:min(len(b), 100)], []byte("mimetypeapplication/vnd.oasis.opendocument.spreadsheet")):
		return ErrOpen
	case bytes.Contains(b, []byte("xl/workbook.bin")):
		return ErrBinary
	}
	return nil
}

// IsForeign tells of an error of Text whether the workbook is of another kind.
func IsForeign(err error) bool {
	for _, kind := range []error{ErrLocked, ErrOld, ErrBinary, ErrOpen} {
		if errors.Is(err, kind) {
			return true
		}
	}
	return false
}

// compound begins a compound file ([MS-CFB], section 2.2), in which workbooks
// of the old format and locked ones are kept; the names of its parts are
// UTF-16.
const compound = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"

func wide(text string) []byte {
	var b []byte
	for _, c := range []byte(text) {
		b = append(b, c, 0)
	}
	return b
}

// oldest tells of a file that is nothing but the records of one sheet, as
// versions 2 to 4 of the old format are: a first record of six or four bytes
// that says "beginning of file" ([MS-XLS], section 2.4.21, for the record; the
// older numbers are from memory).
func oldest(b []byte) bool {
	for _, begin := range []string{"\x09\x00\x04\x00", "\x09\x02\x06\x00", "\x09\x04\x06\x00"} {
		if bytes.HasPrefix(b, []byte(begin)) {
			return true
		}
	}
	return false
}
