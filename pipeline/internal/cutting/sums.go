package cutting

import "slices"

// sums knows which lengths are sums of strip heights, up to a length.
type sums struct {
	reached []int64 // ascending; empty where nothing is known
	upTo    int64
}

// mostSums bounds the list; where there are more, every length is taken to be
// reached.
const mostSums = 1 << 16

// newSums lists the sums in rising order: the next one is the least that some
// height adds to an earlier one.
func newSums(heights []int64, upTo int64) sums {
	reached := []int64{0}
	at := make([]int, len(heights)) // by height: the first sum it has not yet been added to
	for {
		next := upTo + 1
		for k, h := range heights {
			if h > 0 {
				next = min(next, reached[at[k]]+h)
			}
		}
		if next > upTo {
			return sums{reached, upTo}
		}
		if len(reached) == mostSums {
			return sums{}
		}
		reached = append(reached, next)
		for k, h := range heights {
			for h > 0 && reached[at[k]]+h <= next {
				at[k]++
			}
		}
	}
}

// below is the largest reachable length under n, or -1.
func (s sums) below(n int64) int64 {
	if len(s.reached) == 0 || n > s.upTo+1 {
		return n - 1
	}
	i, _ := slices.BinarySearch(s.reached, n)
	if i == 0 {
		return -1
	}
	return s.reached[i-1]
}

// from is the least reachable length of n or more.
func (s sums) from(n int64) int64 {
	if len(s.reached) == 0 {
		return n
	}
	if i, _ := slices.BinarySearch(s.reached, n); i < len(s.reached) {
		return s.reached[i]
	}
	return max(n, s.upTo+1)
}
