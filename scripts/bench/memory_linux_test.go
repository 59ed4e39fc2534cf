package bench

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// BenchmarkMemory is the peak memory of the program itself, checking 100 and
// 2,000 plans with one job a processor, and what each plan above 100 adds.
func BenchmarkMemory(b *testing.B) {
	program := built(b)
	few, many := lay(b, 100), lay(b, 2000)
	var least, most int
	for b.Loop() {
		least, most = max(least, peak(b, program, "check", few)), max(most, peak(b, program, "check", many))
	}
	b.ReportMetric(float64(least), "KB-at-100")
	b.ReportMetric(float64(most), "KB-at-2000")
	b.ReportMetric(float64(most-least)/1900, "KB/plan")
}

// BenchmarkLineMemory is the peak memory of an export of 1,000 plans, with
// their workbooks and the one of the line; it takes minutes, and with -short
// there are 20.
func BenchmarkLineMemory(b *testing.B) {
	plans := 1000
	if testing.Short() {
		plans = 20
	}
	program, dir, most := built(b), lay(b, plans), 0
	for b.Loop() {
		most = max(most, peak(b, program, "export", dir, "--out", filepath.Join(b.TempDir(), "out")))
	}
	b.ReportMetric(float64(most), fmt.Sprintf("KB-at-%d", plans))
}

// built is the program itself.
func built(b *testing.B) string {
	b.Helper()
	program := filepath.Join(b.TempDir(), "yardproof")
	if out, err := exec.Command("go", "build", "-o", program, "yardproof/cmd/yardproof").CombinedOutput(); err != nil {
		b.Fatalf("go build: %v\n%s", err, out)
	}
	return program
}

// peak is the most memory that a run held, in KB. It is watched while the
// program runs: what wait4 tells afterwards counts the memory of this very
// process, from which the program was forked.
func peak(b *testing.B, program string, args ...string) (most int) {
	b.Helper()
	cmd := exec.Command(program, append(args, "--quiet")...)
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	ended := make(chan error)
	go func() { ended <- cmd.Wait() }()
	for {
		select {
		case err := <-ended:
			if err != nil {
				b.Fatalf("%v: %.400s", err, out.String())
			}
			return most
		case <-time.After(2 * time.Millisecond):
			most = max(most, highWater(cmd.Process.Pid, program))
		}
	}
}

// highWater is the peak memory of a process so far, in KB; 0 while it is not
// yet the program, and when it is gone.
func highWater(pid int, program string) (kb int) {
	if exe, err := os.Readlink(fmt.Sprintf("/proc/%d/exe", pid)); err != nil || exe != program {
		return 0
	}
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	if _, text, found := bytes.Cut(status, []byte("VmHWM:")); found {
		fmt.Sscan(string(text), &kb)
	}
	return kb
}
