package main

import (
	"fmt"
	"os"
	"path/filepath"

	"yardproof/scripts/crossing/crossed"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: crossing FOLDER")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "crossing:", err)
		os.Exit(3)
	}
}

// write lays all plans into a folder, which is made where there is none.
func write(dir string) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	for _, p := range crossed.Plans() {
		if err := os.WriteFile(filepath.Join(dir, p.Name()+".plan.json"), []byte(p.Text), 0o666); err != nil {
			return err
		}
	}
	return nil
}
