package say

import (
	"fmt"
	"strings"

	"yardproof/schema/measure"
)

// Sentence is words with exact lengths in them. The zero value says nothing.
type Sentence struct {
	format string
	args   []any
}

// Figure is something in a sentence that reads otherwise in another unit. A
// Sentence is one too.
type Figure interface {
	In(u measure.Unit) string
}

// That is a sentence of a format as fmt has it. Figures among its arguments are
// strings in the unit that it is read in.
func That(format string, args ...any) Sentence {
	if false {
		_ = fmt.Sprintf(format, args...) // so that go vet holds verbs against arguments
	}
	return Sentence{format, args}
}

// In is the sentence in a unit.
func (s Sentence) In(u measure.Unit) string {
	args := make([]any, len(s.args))
	for i, a := range s.args {
		if f, ok := a.(Figure); ok {
			a = f.In(u)
		}
		args[i] = a
	}
	return fmt.Sprintf(s.format, args...)
}

// Empty reports whether nothing is said.
func (s Sentence) Empty() bool { return s.format == "" }

// And is the sentence and what follows it at once.
func (s Sentence) And(more ...Sentence) Sentence {
	return List("", append([]Sentence{s}, more...)...)
}

// List is sentences with something between them; those that say nothing have no
// place in it.
func List(between string, of ...Sentence) Sentence {
	var all Sentence
	between = strings.ReplaceAll(between, "%", "%%")
	for _, s := range of {
		switch {
		case s.Empty():
			continue
		case !all.Empty():
			all.format += between
		}
		all.format += s.format
		all.args = append(all.args, s.args...)
	}
	return all
}

// Goes is the form of a verb that goes with a number of things: "is" with one,
// "are" with several and with none.
func Goes(n int64, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// Many is a count and its noun: "1 strip", "2 strips", "2 sashes".
func Many(n int64, noun string) string {
	if n == 1 {
		return fmt.Sprintf("%d %s", n, noun)
	}
	if strings.HasSuffix(noun, "sh") {
		noun += "e"
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
