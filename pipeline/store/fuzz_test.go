package store

import (
	"os"
	"path/filepath"
	"testing"
)

// FuzzLedger takes any bytes for what an output folder remembers and for a
// journal in it: a run opens the folder or says why not, and what it removes or
// writes lies in the folder and is as it was remembered.
func FuzzLedger(f *testing.F) {
	sum := Sum([]byte("mine"))
	f.Add([]byte(`{"format":1,"plans":[{"path":"../gone.plan.json","exports":[{"format":"csv","basis":"x","files":[{"name":"../precious","sha256":"`+sum+`"},{"name":"kept","sha256":"00"}]}]}],
		"left":[{"name":"./precious","sha256":"`+sum+`"}]}`), []byte(sum+" ../precious\n"+sum+" kept/../../precious\n{\"path\":\"a\",\"exports\":[{\"format\":\"csv\",\"files\":[{\"name\":\"/precious\"}]}]}\n"))
	f.Add([]byte(`{"format":1}`), []byte("0 kept\n{"))
	f.Fuzz(func(t *testing.T, ledger, journal []byte) {
		dir := t.TempDir()
		out := filepath.Join(dir, "out")
		put(t, filepath.Join(dir, "precious"), "mine")
		put(t, filepath.Join(out, "kept"), "somebody's")
		put(t, filepath.Join(out, LedgerName), string(ledger))
		put(t, filepath.Join(out, journalPrefix+"0"+journalSuffix), string(journal))
		l, err := takeLedger(t.Context(), out, access{})
		if err == nil {
			if _, err := l.Finish(t.Context(), true); err != nil {
				t.Logf("finish: %v", err)
			}
			if err := l.Close(); err != nil {
				t.Fatal(err)
			}
		}
		wantFile(t, filepath.Join(dir, "precious"), "mine")
		if text, err := os.ReadFile(filepath.Join(out, "kept")); err != nil && !l.owned["kept"][Sum([]byte("somebody's"))] || err == nil && string(text) != "somebody's" {
			t.Errorf("a file of somebody else's was touched: %v", err)
		}
	})
}
