package diag

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"
	"strings"
)

// Identity is what makes a finding the same one from run to run, though lines
// move, numbers change and files are renamed.
type Identity struct {
	Rule    string
	Plan    string // its id
	File    string // only where there is no plan's id
	Pointer string
	Sizes   []string
	Number  int // of several that are the same in all of this, which; from 1
}

// Identities gives findings their identities. Ask it of all findings of a run
// in the one order, for of several about the same subject the first keeps the
// number 1, and so on.
type Identities struct{ seen map[string]int }

// Of is the identity of the next finding.
func (s *Identities) Of(f Finding) Identity {
	i := Identity{Rule: f.Rule, Plan: f.Plan, Pointer: f.Place.Pointer, Sizes: f.Sizes}
	if f.Plan == "" {
		i.File = f.Place.File
	}
	if s.seen == nil {
		s.seen = map[string]int{}
	}
	subject := i.subject()
	s.seen[subject]++
	i.Number = s.seen[subject]
	return i
}

func (i Identity) subject() string {
	of := i.Plan
	if of == "" {
		of = i.File
	}
	return strings.Join(append([]string{i.Rule, of, i.Pointer}, i.Sizes...), "\x00")
}

// Fingerprint is a short name of the identity, the same on every system: 32
// hexadecimal digits.
func (i Identity) Fingerprint() string {
	subject := i.subject()
	if i.Number > 1 {
		subject += "\x00\x00" + strconv.Itoa(i.Number)
	}
	sum := sha256.Sum256([]byte(subject))
	return hex.EncodeToString(sum[:16])
}
