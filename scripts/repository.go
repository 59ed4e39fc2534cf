package scripts

import (
	"embed"
	"fmt"
)

// File is one file of a new pattern repository.
type File struct {
	Name  string // slash path in the repository
	Bytes []byte
}

// Their names here have no points before them, or they would mean something
// to this repository.
//
//go:embed repository ci-examples
var originals embed.FS

// Repository is what a new pattern repository holds, but for the schemas.
func Repository() ([]File, error) {
	var files []File
	for _, f := range [][2]string{
		{"README.md", "repository/README.md"},
		{"yardproof.json", "repository/yardproof.json"},
		{"prices.csv", "repository/prices.csv"},
		{"plans/slack-water.plan.json", "repository/plans/slack-water.plan.json"},
		{"plans/ferry-steps.plan.json", "repository/plans/ferry-steps.plan.json"},
		{"ci/fetch-yardproof", "ci-examples/fetch-yardproof"},
		{".github/workflows/plans.yml", "ci-examples/github-workflow.yml"},
		{".gitlab-ci.yml", "ci-examples/gitlab-ci.yml"},
		{".githooks/pre-commit", "repository/pre-commit"},
		{".vscode/settings.json", "repository/vscode-settings.json"},
		{".gitattributes", "repository/gitattributes"},
		{".gitignore", "repository/gitignore"},
	} {
		b, err := originals.ReadFile(f[1])
		if err != nil {
			return nil, fmt.Errorf("read the original of %s: %w", f[0], err)
		}
		files = append(files, File{f[0], b})
	}
	return files, nil
}
