package main

import (
	"fmt"
	"os/exec"
	"strings"
)

// manual has the manual pages that a program prints of itself, by the names
// that man looks for: one of the program and one of each command.
func manual(program string) ([]file, error) {
	overview, err := said(program, "man")
	if err != nil {
		return nil, err
	}
	pages := []file{{name: "yardproof.1", bytes: []byte(overview)}}
	offered, err := said(program, "complete", "man", "")
	if err != nil {
		return nil, err
	}
	for line := range strings.Lines(offered) {
		name, _, _ := strings.Cut(strings.TrimSpace(line), "\t")
		page, err := said(program, "man", name)
		if err != nil {
			return nil, err
		}
		pages = append(pages, file{name: "yardproof-" + name + ".1", bytes: []byte(page)})
	}
	return pages, nil
}

// said is what a program prints.
func said(program string, args ...string) (string, error) {
	out, err := exec.Command(program, args...).Output()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w", program, strings.Join(args, " "), err)
	}
	return string(out), nil
}
