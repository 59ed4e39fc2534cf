package cutting

import (
	"math/rand"
	"strconv"
	"testing"
)

// BenchmarkStrips solves the invented instances, certificate included.
func BenchmarkStrips(b *testing.B) {
	for _, n := range readStrips(b) {
		b.Run(n.name, func(b *testing.B) {
			for b.Loop() {
				if r, err := Solve(n.problem, Limits{}); err != nil || r.Length != n.optimum {
					b.Fatal(r.Length, err)
				}
			}
		})
	}
}

// BenchmarkQuilts solves twenty random quilts of so many sizes; an operation is
// one of them.
func BenchmarkQuilts(b *testing.B) {
	for _, sizes := range []int{4, 6, 8, 12, 20} {
		r := rand.New(rand.NewSource(int64(sizes)))
		var all []Problem
		for range 20 {
			all = append(all, quiltLike(r, sizes))
		}
		b.Run("sizes="+strconv.Itoa(sizes), func(b *testing.B) {
			n := 0
			for b.Loop() {
				if _, err := Solve(all[n%len(all)], Limits{}); err != nil {
					b.Fatal(err)
				}
				n++
			}
		})
	}
}

// BenchmarkSheets solves the invented instances of fixed pieces.
func BenchmarkSheets(b *testing.B) {
	for _, n := range readSheets(b) {
		b.Run(n.name, func(b *testing.B) {
			for b.Loop() {
				if r, err := SolveSheets(n.problem, Limits{}); err != nil || r.Layout.Count != n.optimum {
					b.Fatal(r.Layout.Count, err)
				}
			}
		})
	}
}

// BenchmarkLengths solves random runs of kits in so many lengths; an operation is
// one of them.
func BenchmarkLengths(b *testing.B) {
	for _, sizes := range []int{3, 10, 24} {
		r := rand.New(rand.NewSource(int64(sizes)))
		var all []LengthProblem
		for range 20 {
			all = append(all, kitRuns(r, sizes))
		}
		b.Run("sizes="+strconv.Itoa(sizes), func(b *testing.B) {
			n := 0
			for b.Loop() {
				if _, err := SolveLengths(all[n%len(all)], Limits{}); err != nil {
					b.Fatal(err)
				}
				n++
			}
		})
	}
}

// BenchmarkPlain is what every figure costs before it is solved.
func BenchmarkPlain(b *testing.B) {
	all := readStrips(b)
	n := 0
	for b.Loop() {
		if _, err := Plain(all[n%len(all)].problem); err != nil {
			b.Fatal(err)
		}
		n++
	}
}
