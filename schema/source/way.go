package source

import (
	"slices"
	"strings"
)

// Kind is what a way out is to whoever reads it.
type Kind int

// The kinds of ways out.
const (
	// Mend is a set of edits after which the problem is gone.
	Mend Kind = iota + 1
	// Choice is such a set among others as good: only who wrote the file knows
	// which is meant.
	Choice
	// Example shows what could be written. Its value is made up.
	Example
	// Advice cannot be written into a file: to use another ruler, to ask the supplier.
	Advice
)

func (k Kind) String() string {
	switch k {
	case Mend:
		return "mend"
	case Choice:
		return "choice"
	case Example:
		return "example"
	case Advice:
		return "advice"
	}
	return "no kind"
}

// ParseKind reads a kind's word.
func ParseKind(word string) (Kind, bool) {
	for _, k := range []Kind{Mend, Choice, Example, Advice} {
		if k.String() == word {
			return k, true
		}
	}
	return 0, false
}

// Act is what an edit does to a JSON text.
type Act int

// The acts.
const (
	Put    Act = iota + 1 // another value in the place of one
	Add                   // a new member of an object, or a new item at the end of an array
	Remove                // a member or an item taken away
	Rename                // another key for a member
	Mark                  // punctuation: bytes that belong to no one value
)

func (a Act) String() string {
	switch a {
	case Put:
		return "put"
	case Add:
		return "add"
	case Remove:
		return "remove"
	case Rename:
		return "rename"
	case Mark:
		return "mark"
	}
	return "no act"
}

// ParseAct reads an act's word.
func ParseAct(word string) (Act, bool) {
	for _, a := range []Act{Put, Add, Remove, Rename, Mark} {
		if a.String() == word {
			return a, true
		}
	}
	return 0, false
}

// Edit is one change of a file's text. Package schema/amend makes edits that
// keep the file's style, and applies them.
type Edit struct {
	File  string // as findings show it; empty for the file of the problem itself
	Act   Act
	Range Range  // the bytes to be replaced; empty where text is only added
	Text  string // what takes their place

	// Verb and Shown are for the sentence: "print", and the text that a person
	// copies, which is exactly what the file takes, quotation marks included.
	Verb  string
	Shown string
}

// With is the edit with another verb.
func (e Edit) With(verb string) Edit {
	e.Verb = verb
	return e
}

// Trial is what is known of a way out from having tried it.
type Trial int

// The states of a way out. Advice and examples stay unasked.
const (
	Unasked  Trial = iota
	Holds          // applied to the text, the problem is gone and nothing as grave is new
	Fails          // it does not; such a way is told to nobody
	NotTried       // it would have taken more work than a plan is allowed
)

// String is the word of a state; empty where nothing was asked.
func (t Trial) String() string {
	switch t {
	case Holds:
		return "holds"
	case Fails:
		return "fails"
	case NotTried:
		return "not tried"
	}
	return ""
}

// ParseTrial reads a state's word.
func ParseTrial(word string) (Trial, bool) {
	for _, t := range []Trial{Unasked, Holds, Fails, NotTried} {
		if t.String() == word {
			return t, true
		}
	}
	return 0, false
}

// Way is one way out of a problem. A problem's ways are in order, the likeliest
// first; each is a whole: all of its edits belong together.
type Way struct {
	Kind  Kind
	Edits []Edit // none of advice
	Also  []Edit // that have to follow, such as a printed figure that changes too
	Says  string // of advice the sentence, as a verb phrase; else what is said in place of the edits' own words
	Note  string // what follows after the edits' words: "which give 182 in"
	Trial Trial
}

// All are all edits of the way, those that follow last.
func (w Way) All() []Edit { return slices.Concat(w.Edits, w.Also) }

// Sentence is the way as a verb phrase, made of its edits.
func (w Way) Sentence() string {
	text := w.Says
	if text == "" {
		text = wordsOf(w.Edits)
	}
	if w.Note != "" {
		text += ", " + w.Note
	}
	if len(w.Also) > 0 {
		text += ", and with it " + wordsOf(w.Also)
	}
	return text
}

// wordsOf strings the words of edits together. A verb that several have in a
// row is said once.
func wordsOf(edits []Edit) string {
	var parts []string
	verb := ""
	for _, e := range edits {
		word := strings.TrimSpace(e.Verb + " " + e.Shown)
		if e.Verb == verb && len(parts) > 0 {
			word = e.Shown
		}
		if verb = e.Verb; !slices.Contains(parts, word) {
			parts = append(parts, word)
		}
	}
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// Hint is the sentence of ways out in their order. Those that failed are left
// out, and those that were not tried are marked so.
func Hint(ways []Way) string {
	var parts []string
	long, untried := false, false
	for _, w := range ways {
		if w.Trial == Fails {
			continue
		}
		text := w.Sentence()
		if text == "" || slices.Contains(parts, text) {
			continue
		}
		untried = untried || w.Trial == NotTried
		long = long || strings.ContainsAny(text, ",;:")
		parts = append(parts, text)
	}
	n := len(parts)
	var text string
	switch {
	case n == 0:
		return ""
	case n == 1:
		text = parts[0]
	case long:
		text = strings.Join(parts[:n-1], "; ") + "; or " + parts[n-1]
	default:
		text = strings.Join(parts[:n-1], ", ") + ", or " + parts[n-1]
	}
	if untried {
		text += " (not tried)"
	}
	return text
}
