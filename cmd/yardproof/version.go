package main

import (
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
		run:     version,
	}
}

func version(_ context.Context, s streams, _ *options, args []string) (int, error) {
	if len(args) > 0 {
		return 0, misuse("version takes no arguments")
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

// versionOf is what a build says of itself: its version, the commit it was made
// from, and the compiler.
func versionOf(info *debug.BuildInfo) string {
	words := []string{"(no version)"}
	if info.Main.Version != "" {
		words[0] = info.Main.Version
	}
	settings := map[string]string{}
	for _, s := range info.Settings {
		settings[s.Key] = s.Value
	}
	if commit := settings["vcs.revision"]; commit != "" {
		words = append(words, "commit "+commit[:min(len(commit), 12)])
	}
	if settings["vcs.modified"] == "true" {
		words = append(words, "with changes")
	}
	if info.GoVersion != "" {
		words = append(words, info.GoVersion)
	}
	return strings.Join(words, ", ")
}
