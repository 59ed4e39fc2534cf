package main

import (
	"crypto/sha256"
	"debug/buildinfo"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"
)

// target is a system that programs are built for.
type target struct{ system, machine string }

func (t target) String() string { return t.system + "-" + t.machine }

// targets are those asked for by name, or all if none is.
func targets(names []string) ([]target, error) {
	var chosen []target
	for _, system := range []string{"darwin", "linux", "windows"} {
		for _, machine := range []string{"amd64", "arm64"} {
			t := target{system, machine}
			if len(names) == 0 || slices.Contains(names, t.String()) {
				chosen = append(chosen, t)
			}
		}
	}
	if len(names) > 0 && len(chosen) != len(names) {
		return nil, fmt.Errorf("not all of %s are built", strings.Join(names, ", "))
	}
	return chosen, nil
}

func main() {
	if len(os.Args) < 2 {
		fmt.Fprintln(os.Stderr, "usage: go run ./scripts/release DIR [SYSTEM-MACHINE...]")
		os.Exit(2)
	}
	if err := release(os.Args[1], os.Args[2:]); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release writes archives and their sums to a folder, which must be new or
// empty: what is published is what lies there.
func release(dir string, names []string) error {
	chosen, err := targets(names)
	if err != nil {
		return err
	}
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return fmt.Errorf("the folder %s is not empty", dir)
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	scratch, err := os.MkdirTemp("", "release")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	here := target{runtime.GOOS, runtime.GOARCH}
	program := filepath.Join(scratch, "here"+here.ending())
	if err := here.build(program); err != nil {
		return fmt.Errorf("%s: %w", here, err)
	}
	pages, err := manual(program)
	if err != nil {
		return err
	}
	if err := writeNotes(dir, program); err != nil {
		return err
	}
	var sums strings.Builder
	for _, t := range chosen {
		name, archive, err := t.pack(scratch, pages)
		if err != nil {
			return fmt.Errorf("%s: %w", t, err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), archive, 0o666); err != nil {
			return err
		}
		// As sha256sum writes and checks it.
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(archive), name)
		fmt.Println(name)
	}
	return os.WriteFile(filepath.Join(dir, "SHA256SUMS"), []byte(sums.String()), 0o666)
}

// pack builds the program for a target and gives its archive, with the manual
// pages.
func (t target) pack(scratch string, pages []file) (name string, archive []byte, err error) {
	program := filepath.Join(scratch, t.String())
	if err := t.build(program); err != nil {
		return "", nil, err
	}
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return "", nil, err
	}
	folder := "yardproof-" + nameable(info.Main.Version) + "-" + t.String()
	files, err := t.contents(program, folder)
	if err != nil {
		return "", nil, err
	}
	if t.system != "windows" { // which has no man
		for _, p := range pages {
			p.name = folder + "/man/man1/" + p.name
			files = append(files, p)
		}
	}
	if t.system == "windows" {
		archive, err = zipped(files, madeAt(info))
		return folder + ".zip", archive, err
	}
	archive, err = tarred(files, madeAt(info))
	return folder + ".tar.gz", archive, err
}

func (t target) build(program string) error {
	// -s and -w leave out what only a debugger reads.
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=auto", "-ldflags=-s -w -buildid=", "-o", program, "./cmd/yardproof")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+t.system, "GOARCH="+t.machine, "GOFLAGS=", "GOAMD64=v1", "GOARM64=v8.0")
	cmd.Stdout, cmd.Stderr = os.Stderr, os.Stderr
	return cmd.Run()
}

// ending is what the name of a program ends in.
func (t target) ending() string {
	if t.system == "windows" {
		return ".exe"
	}
	return ""
}

// contents are the files of an archive, by name.
func (t target) contents(program, folder string) ([]file, error) {
	exe := "yardproof" + t.ending()
	var files []file
	for _, f := range []struct {
		name, from string
		run        bool
	}{{"LICENSE", "LICENSE", false}, {"README.md", "README.md", false}, {exe, program, true}} {
		b, err := os.ReadFile(f.from)
		if err != nil {
			return nil, err
		}
		files = append(files, file{folder + "/" + f.name, b, f.run})
	}
	return files, nil
}

// nameable is a version as a part of a file's name.
func nameable(version string) string {
	version = strings.Trim(version, "()")
	if version == "" {
		return "devel"
	}
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>| `, r) {
			return '-'
		}
		return r
	}, version)
}

// madeAt is the time of the commit, which every file of an archive carries.
// Without one it is the earliest time that both kinds of archive can hold.
func madeAt(info *buildinfo.BuildInfo) time.Time {
	for _, s := range info.Settings {
		if s.Key == "vcs.time" {
			if at, err := time.Parse(time.RFC3339, s.Value); err == nil {
				return at.UTC()
			}
		}
	}
	return time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)
}
