package main

import (
	"context"
	"embed"
)

// The scripts only ask yardproof itself what could come next, so that they
// never offer what the installed program does not know.
//
//go:embed completion
var completionScripts embed.FS

func completionCommand() command {
	return command{
		name: "completion", args: "bash|zsh|fish",
		summary: "print the script that completes words in a shell",
		about: `Commands, flags, formats, shapes and the names of rules are completed. To have
it in every new shell:

  bash   echo 'source <(yardproof completion bash)' >>~/.bashrc
  zsh    echo 'source <(yardproof completion zsh)' >>~/.zshrc
  fish   yardproof completion fish >~/.config/fish/completions/yardproof.fish
`,
		takes: plainOffers("bash", "zsh", "fish"),
		run:   printCompletion,
	}
}

func printCompletion(_ context.Context, s streams, _ *options, args []string) (int, error) {
	if len(args) != 1 {
		return 0, misuse("name one shell: bash, zsh or fish")
	}
	script, err := completionScripts.ReadFile("completion/yardproof." + args[0])
	if err != nil {
		return 0, misuse("there is no script for %q: name bash, zsh or fish", args[0])
	}
	_, err = s.stdout.Write(script)
	return exitClean, err
}
