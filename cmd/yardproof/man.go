package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

func manCommand() command {
	return command{
		name: "man", args: "[COMMAND]",
		summary: "print the manual page of yardproof or of a command",
		about: `The page is text that the program man formats and shows. Show one at once, or
keep them where man finds them:

  yardproof man check | man -l -
  yardproof man >~/.local/share/man/man1/yardproof.1
  yardproof man check >~/.local/share/man/man1/yardproof-check.1
`,
		takes: manOffers,
		run:   printMan,
	}
}

// manOffers are the commands that have a page.
func manOffers() []offer {
	var found []offer
	for _, c := range commands() {
		if !c.hidden {
			found = append(found, offer{c.name, c.summary})
		}
	}
	return found
}

func printMan(_ context.Context, s streams, _ *options, args []string) (int, error) {
	text := manOverview()
	switch {
	case len(args) > 1:
		return 0, misuse("man takes one command, not %d", len(args))
	case len(args) == 1:
		c, ok := findCommand(args[0])
		if !ok || c.hidden {
			return 0, misuse("there is no command %q", args[0])
		}
		text = c.man()
	}
	_, err := io.WriteString(s.stdout, text)
	return exitClean, err
}

// manPage is a manual page in the making, in the man(7) macros.
type manPage struct{ strings.Builder }

// begin writes the head of a page: its name, without a date, for the same
// program has the same page, and what it is.
func (p *manPage) begin(name, summary string) {
	version := buildInfo().Main.Version
	fmt.Fprintf(p, ".TH %s 1 \"\" \"%s\" \"yardproof\"\n", strings.ToUpper(name), roff(strings.TrimSpace("yardproof "+version)))
	p.section("NAME")
	fmt.Fprintf(p, "%s \\- %s\n", roff(name), roff(summary))
}

func (p *manPage) section(title string) { fmt.Fprintf(p, ".SH %s\n", title) }

// entry writes a term, which is in roff already, and what it means.
func (p *manPage) entry(term, meaning string) {
	fmt.Fprintf(p, ".TP\n%s\n%s\n", term, roff(oneLine(meaning)))
}

// paragraphs writes a text as help has it. Lines that are indented are kept as
// they are.
func (p *manPage) paragraphs(text string) {
	kept := false
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if indented := strings.HasPrefix(line, "  "); line != "" && indented != kept {
			p.WriteString(map[bool]string{true: ".RS 2\n.nf\n", false: ".fi\n.RE\n"}[indented])
			kept = indented
		}
		if line == "" {
			line = ".PP"
		} else {
			line = roff(strings.TrimPrefix(line, "  "))
		}
		p.WriteString(line + "\n")
	}
	if kept {
		p.WriteString(".fi\n.RE\n")
	}
}

// statuses writes exit statuses as help has them: a heading, and lines that
// begin with the number or go on.
func (p *manPage) statuses(text string) {
	p.section("EXIT STATUS")
	_, text, _ = strings.Cut(text, "\n")
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		if strings.HasPrefix(line, "  ") && !strings.HasPrefix(line, "   ") {
			fmt.Fprintf(p, ".TP\n.B %s\n", words[0])
			words = words[1:]
		}
		p.WriteString(roff(strings.Join(words, " ")) + "\n")
	}
}

func (p *manPage) flag(f *pflag.Flag) {
	value, usage := pflag.UnquoteUsage(f)
	term := `\fB` + roff("--"+f.Name) + `\fR`
	if f.NoOptDefVal == "" {
		term += `=\fI` + roff(value) + `\fR`
	}
	if d := strings.Trim(f.DefValue, "[]"); d != "" && d != "0" && d != "false" {
		usage += " (default " + d + ")"
	}
	p.entry(term, usage)
}

// manOverview is the page of the program.
func manOverview() string {
	var p manPage
	p.begin("yardproof", "prove quilt plans")
	p.section("SYNOPSIS")
	p.WriteString(".B yardproof\n.I COMMAND\n[FLAGS] ...\n.br\n.B yardproof \\-\\-version\n")
	p.section("DESCRIPTION")
	p.paragraphs(purpose)
	p.section("COMMANDS")
	var pages []string
	for _, c := range commands() {
		if !c.hidden {
			p.entry(`\fB`+roff("yardproof "+c.name)+`\fR `+roff(c.args), c.summary)
			pages = append(pages, ".BR "+roff("yardproof-"+c.name)+" (1)")
		}
	}
	p.entry(`\fByardproof help\fR [COMMAND|TOPIC]`, "how to use a command, or what can be said")
	p.section("TOPICS")
	for _, t := range helpTopics() {
		p.entry(`\fByardproof help `+t.word+`\fR`, t.about)
	}
	p.statuses(exitText)
	p.section("SEE ALSO")
	p.WriteString(strings.Join(pages, " ,\n") + "\n")
	return p.String()
}

// man is the page of a command.
func (c command) man() string {
	var p manPage
	flags := c.flagSet(new(options))
	p.begin("yardproof-"+c.name, c.summary)
	p.section("SYNOPSIS")
	fmt.Fprintf(&p, ".B yardproof %s\n", roff(c.name))
	if flags.HasFlags() {
		p.WriteString("[FLAGS]\n")
	}
	if c.args != "" {
		p.WriteString(roff(c.args) + "\n")
	}
	if c.about != "" {
		p.section("DESCRIPTION")
		p.paragraphs(c.about)
	}
	if flags.HasFlags() {
		p.section("OPTIONS")
		flags.VisitAll(p.flag)
	}
	if text := c.statuses(); text != "" {
		p.statuses(text)
	}
	p.section("SEE ALSO")
	p.WriteString(".BR yardproof (1)\n")
	return p.String()
}

// roff is a text that roff prints as it is. A hyphen is one that can be typed.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(text)
	if strings.HasPrefix(text, ".") {
		text = `\&` + text
	}
	return text
}
