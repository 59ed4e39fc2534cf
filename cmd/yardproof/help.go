package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"yardproof/pipeline"
	"yardproof/schema/topics"
)

const exitText = `Exit status:
  0  nothing was found at the level of --fail-on or above
  1  something was found
` + exitRest

const exitRest = `  2  the command line makes no sense, and nothing was done
  3  the work could not be finished: a path is missing, the system refused,
     an interrupt, a crash, no plan found
`

// turns is the topic whose pictures the program draws.
const (
	turns        = "turns"
	turnsSummary = "How the parts of a plan lie before they are turned, drawn."
)

// helpTopics is what there is help for besides commands.
func helpTopics() []offer {
	var all []offer
	for _, t := range topics.All() {
		all = append(all, offer{t.Name, t.Summary})
	}
	return append(all, offer{turns, turnsSummary})
}

// topic is the text of a help topic.
func topic(name string) (string, bool) {
	if name == turns {
		return pipeline.Turns(), true
	}
	t, ok := topics.Find(name)
	return t.Text, ok
}

const purpose = `yardproof proves quilt plans: that every cut can be made, that the pieces add
up in every size, and that the fabric asked for is enough.
`

// overview lists the commands.
func overview() string {
	var s strings.Builder
	s.WriteString(purpose + "\nUsage:\n")
	for _, c := range commands() {
		if c.hidden {
			continue
		}
		fmt.Fprintf(&s, "  yardproof %-26s %s\n", strings.TrimSpace(c.name+" "+c.args), c.summary)
	}
	fmt.Fprintf(&s, "  yardproof %-26s %s\n\nTopics:\n", "help [COMMAND|TOPIC]", "how to use a command, or what can be said")
	for _, t := range helpTopics() {
		fmt.Fprintf(&s, "  yardproof %-26s %s\n", "help "+t.word, t.about)
	}
	s.WriteString("\n" + exitText)
	return s.String()
}

// help prints the help of a command, a topic, or the overview.
func help(s streams, args []string) error {
	switch len(args) {
	case 0:
		_, err := io.WriteString(s.stdout, overview())
		return err
	case 1:
		if c, ok := findCommand(args[0]); ok {
			return c.help(s)
		}
		if text, ok := topic(args[0]); ok {
			_, err := io.WriteString(s.stdout, text)
			return err
		}
		return misuse("there is no command or topic %q", args[0])
	}
	return misuse("help takes one command or topic, not %d", len(args))
}

func (c command) help(s streams) error {
	var b strings.Builder
	flags := c.flagSet(new(options))
	line := "yardproof " + c.name
	if flags.HasFlags() {
		line += " [FLAGS]"
	}
	fmt.Fprintf(&b, "%s\n\nUsage:\n  %s\n", sentence(c.summary), strings.TrimSpace(line+" "+c.args))
	if c.about != "" {
		b.WriteString("\n" + c.about)
	}
	if flags.HasFlags() {
		b.WriteString("\nFlags:\n" + described(flags))
	}
	if text := c.statuses(); text != "" {
		b.WriteString("\n" + text)
	}
	_, err := io.WriteString(s.stdout, b.String())
	return err
}

// statuses are the exit statuses of the command, where there is more to say of
// them than of any.
func (c command) statuses() string {
	if c.exits == "" && c.flags != nil {
		return exitText
	}
	return c.exits
}

func described(flags *pflag.FlagSet) string { return flags.FlagUsagesWrapped(80) }

// sentence makes a sentence of a summary.
func sentence(summary string) string { return strings.ToUpper(summary[:1]) + summary[1:] + "." }
