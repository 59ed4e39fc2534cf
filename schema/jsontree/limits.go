package jsontree

// Limits keep a hostile file from costing memory or time. They count what
// stands in the file, not seconds, so that equal input gives equal output. A
// field of 0 or less means its default.
type Limits struct {
	MaxBytes    int // size of the file
	MaxDepth    int // objects and arrays inside one another; the tokeniser stops at 10,000
	MaxValues   int // values in the file, objects and arrays included
	MaxNumber   int // characters of a number
	MaxExponent int // the figure after e, of either sign
	MaxProblems int // problems that are told one by one; the last says how many more there are
}

// DefaultLimits is far above any real plan: 8 MiB, depth 64, 250,000 values,
// numbers of 64 characters and exponents of 400, 100 problems. A schema
// validator that works with exact decimals may take seconds and gigabytes over
// a number beyond these.
func DefaultLimits() Limits {
	return Limits{MaxBytes: 8 << 20, MaxDepth: 64, MaxValues: 250_000, MaxNumber: 64, MaxExponent: 400, MaxProblems: 100}
}

func (l Limits) withDefaults() Limits {
	d := DefaultLimits()
	return Limits{
		MaxBytes:    positive(l.MaxBytes, d.MaxBytes),
		MaxDepth:    min(positive(l.MaxDepth, d.MaxDepth), tokeniserDepth),
		MaxValues:   positive(l.MaxValues, d.MaxValues),
		MaxNumber:   positive(l.MaxNumber, d.MaxNumber),
		MaxExponent: positive(l.MaxExponent, d.MaxExponent),
		MaxProblems: positive(l.MaxProblems, d.MaxProblems),
	}
}

// tokeniserDepth is where the tokeniser itself refuses, one less to be ours to tell.
const tokeniserDepth = 9_999

func positive(n, otherwise int) int {
	if n > 0 {
		return n
	}
	return otherwise
}
