package store

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"hash"
	"strconv"
)

// Basis hashes everything that a result or a file follows from into one name. Each
// word is hashed with its length before it, so that no two lists of words give the
// same bytes.
type Basis struct{ hash hash.Hash }

// NewBasis is a basis to which nothing was added.
func NewBasis() Basis { return Basis{sha256.New()} }

// Add adds words.
func (b Basis) Add(words ...string) {
	for _, w := range words {
		b.hash.Write([]byte(strconv.Itoa(len(w)) + ":" + w))
	}
}

// Value adds any plain data, as JSON.
func (b Basis) Value(v any) {
	text, err := json.Marshal(v)
	if err != nil { // a value that has no JSON is never the same as another
		text = []byte(err.Error())
	}
	b.Add(string(text))
}

// Name is the name of all that was added.
func (b Basis) Name() string { return hex.EncodeToString(b.hash.Sum(nil)) }

// Sum is the SHA-256 (FIPS 180-4) of some bytes, in hexadecimal digits.
func Sum(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}
