package words

type span struct{ from, to int }

// longestSentence is how many tokens are read together at most: no sentence is as
// long, and what is one all the same is still read quickly.
const longestSentence = 160

// sentences parts tokens at the ends of sentences and at semicolons.
func sentences(t []token) []span {
	var out []span
	from := 0
	for i := range t {
		end := t[i].is(";", "!", "?", "•") && t[i].kind == mark
		if t[i].is(".") && (i+1 == len(t) || t[i+1].loose) && !shortened(t, i) {
			end = true
		}
		if end || i+1-from >= longestSentence {
			out = append(out, span{from, i + 1})
			from = i + 1
		}
	}
	if from < len(t) {
		out = append(out, span{from, len(t)})
	}
	return out
}

// shortened reports whether the point at i ends a shortened word and no sentence.
func shortened(t []token, i int) bool {
	if i == 0 || i+1 >= len(t) || t[i].loose {
		return false
	}
	switch t[i-1].text {
	case "approx", "no", "nos", "fig", "figs", "p", "pp", "vs", "incl", "nr", "ca":
		return true
	}
	return false
}

// leadOf is how many tokens of a sentence lead up to a colon, 0 where there is
// none or where it is a time of day.
func leadOf(t []token) int {
	for i := range t {
		if t[i].is(":") && i > 0 && (i+1 == len(t) || t[i+1].loose || t[i].at.Empty()) && (i+1 == len(t) || t[i+1].kind != digits || t[i+1].loose || t[i-1].kind != digits) {
			return i
		}
	}
	return 0
}
