package cutting

// sums knows which lengths are sums of strip heights.
type sums struct{ reachable []bool }

// mostSums bounds the table; longer plans are taken to reach every length.
const mostSums = 1 << 18

func newSums(heights []int64, upTo int64) sums {
	if upTo > mostSums {
		return sums{}
	}
	r := make([]bool, upTo+1)
	r[0] = true
	for n := range r {
		for _, h := range heights {
			if h > int64(n) {
				break
			}
			r[n] = r[n] || r[int64(n)-h]
		}
	}
	return sums{r}
}

// below is the largest reachable length under n, or -1.
func (s sums) below(n int64) int64 {
	n--
	for n >= 0 && n < int64(len(s.reachable)) && !s.reachable[n] {
		n--
	}
	return n
}

// from is the least reachable length of n or more.
func (s sums) from(n int64) int64 {
	for n < int64(len(s.reachable)) && !s.reachable[n] {
		n++
	}
	return n
}
