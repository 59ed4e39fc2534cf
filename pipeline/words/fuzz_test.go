package words

import "testing"

// FuzzCheck reads any text: what is found lies in it, in order and nowhere twice.
func FuzzCheck(f *testing.F) {
	for _, s := range samples(f) {
		f.Add(s.text)
	}
	f.Add("| a | b |\n|---|\n| 1/0 | 12345678901234567890 |")
	f.Add("\xff\xfe 2½\x00″ (3, 4\r\n#\n*\n- 1)\n")
	p, sizes := demo(f, "thursday-market")
	r := NewReader(p, sizes)
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, n := range r.Check(text, never) {
			if n.At.Start < end || n.At.End <= n.At.Start || n.At.End > len(text) {
				t.Fatalf("a number at %v, of a text of %d bytes, after one that ends at %d", n.At, len(text), end)
			}
			end = n.At.End
		}
	})
}
