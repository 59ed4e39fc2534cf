//go:build !unix

package main

import "github.com/rogpeppe/go-internal/testscript"

// systemCmds has none here: scripts that need them ask for [unix].
func systemCmds() map[string]func(*testscript.TestScript, bool, []string) { return nil }

func systemPrograms() map[string]func() { return nil }

func systemValues(*testscript.Env) {}

func permissionsHold() bool { return false }
