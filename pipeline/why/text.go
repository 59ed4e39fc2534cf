package why

import (
	"fmt"
	"strings"
)

// Text is the answers as a tree of lines; file names the plan at the places in it.
func Text(all []Answer, file string) string {
	var b strings.Builder
	for i, a := range all {
		if i > 0 {
			b.WriteString("\n")
		}
		a.write(&b, file, "")
	}
	return b.String()
}

func (a Answer) write(b *strings.Builder, file, indent string) {
	fmt.Fprintf(b, "%s%s: %s%s\n", indent, a.title(), a.Value, a.place(file))
	if a.Formula != "" {
		fmt.Fprintf(b, "%s  = %s%s\n", indent, a.Formula, a.above())
	}
	for _, t := range a.Terms {
		t.write(b, file, indent+"  ")
	}
}

// title is what the number is called, after its size or its symbol.
func (a Answer) title() string {
	switch {
	case a.Size != "":
		return a.Size + ": " + a.Name
	case a.Symbol != "" && a.Name != "" && !strings.HasPrefix(a.Name, a.Symbol+","):
		return a.Symbol + ", " + a.Name
	case a.Name == "":
		return a.Symbol
	}
	return a.Name
}

func (a Answer) place(file string) string {
	if a.Line == 0 {
		return ""
	}
	return fmt.Sprintf(" (%s:%d:%d)", file, a.Line, a.Column)
}

func (a Answer) above() string {
	if !a.Told {
		return ""
	}
	return ", as above"
}

// Markdown is the answers as nested lists.
func Markdown(all []Answer, file string) string {
	var b strings.Builder
	for _, a := range all {
		a.list(&b, file, "")
	}
	return b.String()
}

func (a Answer) list(b *strings.Builder, file, indent string) {
	fmt.Fprintf(b, "%s- %s: **%s**%s", indent, plain(a.title()), plain(a.Value), plain(a.place(file)))
	if a.Formula != "" {
		fmt.Fprintf(b, " = %s%s", plain(a.Formula), a.above())
	}
	b.WriteString("\n")
	for _, t := range a.Terms {
		t.list(b, file, indent+"  ")
	}
}

// plain is a text of which Markdown makes nothing.
func plain(text string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "]", `\]`, "<", `\<`, ">", `\>`, "#", `\#`, "|", `\|`, "&", `\&`, "~", `\~`).Replace(text)
}
