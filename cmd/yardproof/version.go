package main

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"
)

func versionCommand() command {
	return command{
		name:    "version",
		summary: "print the version",
		about:   "`yardproof --version` and `yardproof -v` do the same.\n",
		flags:   asJSONFlag("print it as JSON"),
		exits:   printsOnly,
		run:     version,
	}
}

func version(_ context.Context, s streams, o *options, args []string) (int, error) {
	if len(args) > 0 {
		return 0, misuse("version takes no arguments")
	}
	if o.asJSON {
		return exitClean, s.json(releaseOf(buildInfo()))
	}
	_, err := fmt.Fprintln(s.stdout, "yardproof "+versionOf(buildInfo()))
	return exitClean, err
}

// buildInfo is what the build says of itself, nothing where it says nothing.
func buildInfo() *debug.BuildInfo {
	if info, ok := debug.ReadBuildInfo(); ok {
		return info
	}
	return &debug.BuildInfo{}
}

// identityOf is what tells this program from any that might find something
// else: its version or, for a build that has none of its own, the program's
// very bytes.
func identityOf(info *debug.BuildInfo) string {
	version := info.Main.Version
	if version != "" && version != "(devel)" && !strings.Contains(version, "+dirty") {
		return version
	}
	self, err := os.Executable()
	if err != nil {
		return ""
	}
	f, err := os.Open(self)
	if err != nil {
		return ""
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return ""
	}
	return strings.TrimSpace(version + " " + hex.EncodeToString(h.Sum(nil)[:12]))
}

// release is what a build says of itself, for programs.
type release struct {
	Name     string `json:"name"`
	Version  string `json:"version"` // empty when the build has none
	Commit   string `json:"commit"`  // empty when it is not known
	Modified bool   `json:"modified"`
	Go       string `json:"go"`
}

func releaseOf(info *debug.BuildInfo) release {
	r := release{Name: "yardproof", Version: info.Main.Version, Go: info.GoVersion}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			r.Commit = s.Value
		case "vcs.modified":
			r.Modified = s.Value == "true"
		}
	}
	return r
}

// versionOf is what a build says of itself: its version, the commit it was made
// from, and the compiler.
func versionOf(info *debug.BuildInfo) string {
	r := releaseOf(info)
	words := []string{cmp.Or(r.Version, "(no version)")}
	if r.Commit != "" {
		words = append(words, "commit "+r.Commit[:min(len(r.Commit), 12)])
	}
	if r.Modified {
		words = append(words, "with changes")
	}
	if r.Go != "" {
		words = append(words, r.Go)
	}
	return strings.Join(words, ", ")
}
