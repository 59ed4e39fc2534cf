package source

import (
	"fmt"
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
	Thing string // what it is of: "strip sets"

	// Start and End are those of Range, as editors count; set once the edit was tried.
	Start, End Position
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
	Note  string // what follows after the edits' words: ", which give 182 in"
	Trial Trial
	Else  bool // told only where there is no other way
}

// All are all edits of the way, those that follow last.
func (w Way) All() []Edit { return slices.Concat(w.Edits, w.Also) }

// Sentence is the way as a verb phrase, made of its edits.
func (w Way) Sentence() string {
	text, verb := w.Says, ""
	if text == "" {
		text, verb = wordsOf(w.Edits, "")
	}
	switch {
	case strings.HasPrefix(w.Note, ","):
		text += w.Note
	case w.Note != "":
		text += " " + w.Note
	}
	switch n := len(w.Also); {
	case n > mostTold:
		text += fmt.Sprintf(", and with it %d figures more", n)
	case n > 0:
		also, _ := wordsOf(w.Also, verb)
		text += ", and with it " + also
	}
	return text
}

// mostTold is how many edits that have to follow a sentence tells one by one.
const mostTold = 3

// wordsOf strings the words of edits together, after a verb that was said. One that
// several have in a row is said once.
func wordsOf(edits []Edit, verb string) (text, last string) {
	var parts, said []string
	for _, e := range edits {
		word := strings.TrimSpace(e.Shown + " " + e.Thing)
		if slices.Contains(said, e.Verb+" "+word) {
			continue
		}
		said = append(said, e.Verb+" "+word)
		if e.Verb != verb {
			word = strings.TrimSpace(e.Verb) + " " + word
		}
		verb, parts = e.Verb, append(parts, word)
	}
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1], verb
	}
	return strings.Join(parts, ""), verb
}

// Told are the ways that a reader is told of: not those that failed, and those that are
// only for want of another where there is no other.
func Told(ways []Way) []Way {
	told := slices.DeleteFunc(slices.Clone(ways), func(w Way) bool { return w.Trial == Fails })
	if other := slices.ContainsFunc(told, func(w Way) bool { return !w.Else }); other {
		told = slices.DeleteFunc(told, func(w Way) bool { return w.Else })
	}
	return told
}

// Hint is the sentence of ways out in their order: of choices that they are, of
// examples too. Those that were not tried are marked so.
func Hint(ways []Way) string {
	var parts []string
	untried := false
	ways = Told(ways)
	for i := 0; i < len(ways); i++ {
		w := ways[i]
		untried = untried || w.Trial == NotTried
		text := w.Sentence()
		switch w.Kind {
		case Choice:
			var which []string
			for ; i < len(ways) && ways[i].Kind == Choice; i++ {
				which = append(which, ways[i].Sentence())
			}
			i--
			text = either(which)
		case Example:
			text = "for example " + text
		}
		if text != "" && !slices.Contains(parts, text) {
			parts = append(parts, text)
		}
	}
	text := alternatives(parts)
	if untried {
		text += " (not tried)"
	}
	return text
}

// either are choices in words. What all begin with is said once.
func either(which []string) string {
	if len(which) < 2 {
		return strings.Join(which, "")
	}
	verb, _, _ := strings.Cut(which[0], " ")
	var rest []string
	for _, text := range which {
		after, same := strings.CutPrefix(text, verb+" ")
		if !same {
			return "either " + strings.Join(which, " or ")
		}
		rest = append(rest, after)
	}
	return verb + " either " + strings.Join(rest, " or ")
}

// alternatives strings together what can be done, one or the other.
func alternatives(parts []string) string {
	n := len(parts)
	switch {
	case n < 2:
		return strings.Join(parts, "")
	case slices.ContainsFunc(parts, func(text string) bool { return strings.ContainsAny(text, ",;:") }):
		return strings.Join(parts[:n-1], "; ") + "; or " + parts[n-1]
	}
	return strings.Join(parts[:n-1], ", ") + ", or " + parts[n-1]
}
