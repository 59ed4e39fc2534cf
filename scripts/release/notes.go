package main

import (
	"debug/buildinfo"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
)

// notesName is the file of the release notes, which is no archive and has no sum.
const notesName = "RELEASE-NOTES.md"

// longestPart is how many bytes name a part of the program at most; what is
// longer before a colon is a sentence.
const longestPart = 40

// writeNotes writes the release notes, where there is a repository to make them
// of.
func writeNotes(dir, program string) error {
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return err
	}
	if !slices.ContainsFunc(info.Settings, func(s debug.BuildSetting) bool { return s.Key == "vcs.revision" }) {
		return nil
	}
	text, err := notes(nameable(info.Main.Version), ".")
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, notesName), []byte(text), 0o666)
}

// notes tell what the commits of a repository since the last release change for
// a reader. A commit is one line, "package: what changes".
func notes(version, repository string) (string, error) {
	git := func(args ...string) (string, error) {
		return said("git", append([]string{"--no-pager", "-C", repository}, args...)...)
	}
	commits := "HEAD"
	last, err := git("describe", "--tags", "--abbrev=0", "--match", "v*", "HEAD^")
	if last = strings.TrimSpace(last); err == nil && last != "" {
		commits = last + "..HEAD"
	} else {
		last = ""
	}
	out, err := git("log", "--no-merges", "--reverse", "-z", "--format=%s", commits, "--")
	if err != nil {
		return "", err
	}
	var text strings.Builder
	fmt.Fprintf(&text, "# yardproof %s\n\n", version)
	shallow, _ := git("rev-parse", "--is-shallow-repository")
	switch {
	case last == "" && strings.TrimSpace(shallow) == "true":
		text.WriteString("What the last commits have changed, by the part of the program. Those before them, and the last release, are not in this clone: make releases from a clone without a depth.\n")
	case last == "":
		text.WriteString("The first release. What went into it, by the part of the program:\n")
	default:
		fmt.Fprintf(&text, "What has changed since %s, by the part of the program:\n", last)
	}
	changes := map[string][]string{}
	for subject := range strings.SplitSeq(strings.TrimSuffix(out, "\x00"), "\x00") {
		part, what, ok := strings.Cut(subject, ": ")
		if !ok || len(part) > longestPart {
			part, what = "other", subject
		}
		if what != "" {
			changes[part] = append(changes[part], what)
		}
	}
	for _, part := range slices.Sorted(maps.Keys(changes)) {
		fmt.Fprintf(&text, "\n## %s\n\n", plain(part))
		for _, what := range changes[part] {
			fmt.Fprintf(&text, "- %s\n", plain(what))
		}
	}
	text.WriteString(`
## Which archive this is

    sha256sum --check --ignore-missing SHA256SUMS

The same commit and compiler give the same bytes: the archives can be built again, and compared.
`)
	return text.String(), nil
}

// plain is a text that Markdown shows as it is, but for code in backquotes.
func plain(text string) string {
	return strings.NewReplacer("\\", "\\\\", "*", "\\*", "_", "\\_", "[", "\\[", "]", "\\]", "<", "&lt;", ">", "&gt;", "&", "&amp;", "#", "\\#").Replace(text)
}
