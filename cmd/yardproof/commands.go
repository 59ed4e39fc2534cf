package main

// commands lists every command in the order of the overview.
func commands() []command {
	return []command{
		checkCommand(),
		exportCommand(),
		gatherCommand(),
		watchCommand(),
		whyCommand(),
		wordsCommand(),
		explainCommand(),
		initCommand(),
		newCommand(),
		formatCommand(),
		schemaCommand(),
		completionCommand(),
		completeCommand(),
		manCommand(),
		versionCommand(),
	}
}

func findCommand(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}
