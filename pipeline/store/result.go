package store

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/pipeline/internal/line"
	"yardproof/pipeline/report"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
)

// ResultFormat is the version of the JSON that a result is written as.
const ResultFormat = 1

// ResultSuffix ends the name of a file that holds a result.
const ResultSuffix = ".result.json"

//go:embed result.schema.json
var schemaText string

// ResultSchema is the JSON Schema (draft-07) of a result.
func ResultSchema() []byte { return []byte(schemaText) }

// Result is one plan's.
type Result struct {
	Format  int    `json:"format"`
	Version string `json:"version"` // of the program that made it
	File    string `json:"file"`    // the plan, as it was named or found
	Text    string `json:"text"`    // SHA-256 of the plan's bytes
	Basis   string `json:"basis"`   // names all that the rest follows from

	SKUs    []string     `json:"skus,omitempty"` // articles whose prices it depends on
	ID      string       `json:"id,omitempty"`
	IDAt    Span         `json:"id_at"`
	Title   string       `json:"title,omitempty"`
	Status  string       `json:"status,omitempty"`
	Sizes   []string     `json:"sizes,omitempty"`
	Decoded bool         `json:"decoded"`           // nothing of the plan was left unread
	Judged  bool         `json:"judged"`            // all rules were run
	Reading []Finding    `json:"reading,omitempty"` // of reading the plan, which no project changes
	Found   []Finding    `json:"found,omitempty"`   // of the rules, before the project's levels and exceptions
	Asked   []string     `json:"asked,omitempty"`   // names of the cutting problems that were asked
	Summary line.Summary `json:"summary"`

	Exported bool            `json:"exported"`
	Exports  []report.Export `json:"exports,omitempty"`

	// Sum comes last in a file of its own: the SHA-256 of its text, with zeros in the
	// place of the sum.
	Sum string `json:"sum,omitempty"`
}

// Span is a range of bytes of the plan.
type Span struct {
	Start int `json:"start"`
	End   int `json:"end"`
}

// Place is a value of the plan.
type Place struct {
	Span
	Pointer string `json:"pointer"` // RFC 6901
}

// Finding is a diag.Finding about the result's plan.
type Finding struct {
	Rule    string    `json:"rule"`
	Level   string    `json:"level"`
	Place   Place     `json:"at"`
	Sizes   []string  `json:"sizes,omitempty"`
	Message string    `json:"message"`
	Hint    string    `json:"hint,omitempty"`
	Ways    []Way     `json:"ways,omitempty"`
	Related []Related `json:"related,omitempty"`
	Follows []Finding `json:"follows,omitempty"`
}

// Related is a second place of the plan that a finding speaks of.
type Related struct {
	Place   Place  `json:"at"`
	Message string `json:"message"`
}

// Remembered turns findings about a plan into what is kept of them.
func Remembered(findings []diag.Finding) []Finding {
	var all []Finding
	for _, f := range findings {
		k := Finding{
			Rule: f.Rule, Level: f.Level.String(), Place: place(f.Place), Sizes: f.Sizes,
			Message: f.Message, Hint: f.Hint, Ways: rememberedWays(f.Ways), Follows: Remembered(f.Follows),
		}
		for _, r := range f.Related {
			k.Related = append(k.Related, Related{place(r.Place), r.Message})
		}
		all = append(all, k)
	}
	return all
}

func place(p diag.Place) Place { return Place{Span{p.Range.Start, p.Range.End}, p.Pointer} }

// Recalled turns what was kept into findings about a plan, of which the text and the
// id are known.
func Recalled(kept []Finding, file *source.File, plan string) []diag.Finding {
	var all []diag.Finding
	for _, k := range kept {
		level, _ := diag.ParseLevel(k.Level)
		f := diag.Finding{
			Rule: k.Rule, Level: level, Plan: plan, Place: k.Place.in(file), Sizes: k.Sizes,
			Message: k.Message, Hint: k.Hint, Ways: recalledWays(k.Ways, file), Follows: Recalled(k.Follows, file, plan),
		}
		for _, r := range k.Related {
			f.Related = append(f.Related, diag.Related{Place: r.Place.in(file), Message: r.Message})
		}
		all = append(all, f)
	}
	return all
}

func (p Place) in(f *source.File) diag.Place {
	r := source.Range{Start: p.Start, End: p.End}
	return diag.Place{
		File: f.Name, Range: r, Pointer: p.Pointer,
		Start: f.Position(r.Start), End: f.Position(r.End), Excerpt: f.Excerpt(r),
	}
}

// Encode is the result as JSON.
func (r *Result) Encode() []byte {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	encoder.Encode(r) // of these types into memory it cannot fail
	return b.Bytes()
}

// Standing is the result as the text of a file of its own. It ends with a sum, by
// which [ReadResult] sees whether the text was changed.
func (r *Result) Standing() []byte {
	whole := *r
	whole.Sum = noSum
	text := whole.Encode()
	at := len(text) - len(sumEnd) - len(noSum)
	sum := sha256.Sum256(text)
	hex.Encode(text[at:], sum[:])
	return text
}

var noSum = strings.Repeat("0", 2*sha256.Size)

// sumEnd is what follows the sum in such a file.
const sumEnd = "\"\n}\n"

// ReadResult reads a result from the text of such a file, if a given version of
// yardproof made it. Since nothing in it is derived again, a text that was changed
// is refused. The error is an OtherVersion, a PlacedError or another.
func ReadResult(name string, text []byte, version string) (*Result, error) {
	limits := jsontree.DefaultLimits()
	limits.MaxBytes, limits.MaxValues = MaxResultBytes, 1<<20
	tree, problems := jsontree.Parse(source.New(name, text), limits)
	if len(problems) > 0 {
		return nil, PlacedError{problems[0]}
	}
	made := ""
	if v := tree.Get("version"); v != nil && v.Kind == jsontree.String {
		made = v.Text
	}
	switch {
	case made == "":
		return nil, errors.New("it does not say which version of yardproof made it")
	case made != version:
		return nil, OtherVersion{made}
	case !untouched(text):
		return nil, errors.New("its text was changed since it was written")
	}
	return DecodeResult(text)
}

// MaxResultBytes is how large a result may be.
const MaxResultBytes = 64 << 20

// OtherVersion is the error of a result that another version of yardproof made.
type OtherVersion struct{ Made string }

func (o OtherVersion) Error() string { return "it was made by yardproof " + o.Made }

// PlacedError is an error at a place of the text.
type PlacedError struct{ Problem source.Problem }

func (e PlacedError) Error() string { return e.Problem.Message }

// untouched reports whether a text is as it was written.
func untouched(text []byte) bool {
	at := len(text) - len(sumEnd) - len(noSum)
	if at < 0 || string(text[len(text)-len(sumEnd):]) != sumEnd {
		return false
	}
	zeroed := slices.Clone(text)
	copy(zeroed[at:], noSum)
	sum := sha256.Sum256(zeroed)
	return hex.EncodeToString(sum[:]) == string(text[at:at+len(noSum)])
}

// DecodeResult reads a result. It refuses unknown members, so that a result of
// another version is not understood in part.
func DecodeResult(text []byte) (*Result, error) {
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	r := new(Result)
	if err := decoder.Decode(r); err != nil {
		return nil, diag.JSONFault(err)
	}
	if _, err := decoder.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("something follows after the result")
	}
	if r.Format != ResultFormat {
		return nil, fmt.Errorf("its format is %d, and this yardproof reads format %d", r.Format, ResultFormat)
	}
	return r, nil
}
