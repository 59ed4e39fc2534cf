// Package topics holds the reference of what a plan, a price list and a project
// file can say, and of what yardproof writes: Markdown, a file a topic, with an
// example for every key.
//
// A fenced block of JSON in a topic is a piece of a plan, one marked "json project"
// of a project file, and one marked "csv NAME" is the file of that name. Tests try
// each of them. The package must not know what a key means.
package topics

import (
	"embed"
	"fmt"
	"strings"
)

//go:embed *.md
var files embed.FS

// Topic is one page of the reference.
type Topic struct {
	Name    string // as it is asked for: "lengths"
	Summary string // a sentence
	Text    string // Markdown
}

// names are the topics in the order in which they are read.
var names = []string{
	"plan", "lengths", "fabrics", "parts", "units", "layout", "finish", "sizes",
	"printed", "kits", "prices", "project", "adopting", "reports", "outputs",
}

// All lists the topics in the order in which they are read.
func All() []Topic {
	all := make([]Topic, len(names))
	for i, name := range names {
		text, err := files.ReadFile(name + ".md")
		if err != nil {
			panic(fmt.Sprintf("topics: %v", err)) // it is embedded
		}
		all[i] = Topic{name, summary(string(text)), string(text)}
	}
	return all
}

// Find is the topic of a name.
func Find(name string) (Topic, bool) {
	for _, t := range All() {
		if t.Name == name {
			return t, true
		}
	}
	return Topic{}, false
}

// summary is the paragraph below the title.
func summary(text string) string {
	_, below, _ := strings.Cut(text, "\n\n")
	paragraph, _, _ := strings.Cut(below, "\n\n")
	return strings.ReplaceAll(paragraph, "\n", " ")
}
