package main

import (
	"runtime/debug"
	"testing"
)

func TestVersionOf(t *testing.T) {
	cases := []struct {
		name string
		info debug.BuildInfo
		want string
	}{
		{"nothing known", debug.BuildInfo{}, "(no version)"},
		{"installed at a version", debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v0.3.1"}}, "v0.3.1, go1.26.8"},
		{
			"built from a checkout",
			debug.BuildInfo{
				GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"},
				Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef"}, {Key: "vcs.modified", Value: "true"}},
			},
			"(devel), commit 0123456789ab, with changes, go1.26.8",
		},
		{
			"built from a clean checkout",
			debug.BuildInfo{Main: debug.Module{Version: "(devel)"}, Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "0123"}, {Key: "vcs.modified", Value: "false"}}},
			"(devel), commit 0123",
		},
	}
	for _, c := range cases {
		if got := versionOf(&c.info); got != c.want {
			t.Errorf("%s: %q, wanted %q", c.name, got, c.want)
		}
	}
}
