package exporters

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// page is what a terminal of so many rows shows after what was written to it:
// the few control functions that Screen uses, as ECMA-48 has them.
type page struct {
	rows    map[int]string
	touched int // rows drawn by the last reading
}

func (p *page) read(t *testing.T, written string) {
	t.Helper()
	p.touched = 0
	if strings.Contains(written, clearPage) {
		p.rows = map[int]string{}
		written = written[strings.Index(written, clearPage)+len(clearPage):]
	}
	for part := range strings.SplitSeq(written, clearRest) {
		if part == "" {
			continue
		}
		var row int
		if _, err := fmt.Sscanf(part, "\x1b[%d;1H", &row); err != nil {
			t.Fatalf("not a row: %q", part)
		}
		p.rows[row] = part[strings.Index(part, "H")+1:]
		p.touched++
	}
}

func TestScreen(t *testing.T) {
	var out bytes.Buffer
	s, err := OpenScreen(&out)
	if err != nil || out.String() != secondPage {
		t.Fatalf("opening wrote %q (%v)", &out, err)
	}
	var p page
	draw := func(text, last string, width, height int) {
		t.Helper()
		out.Reset()
		if err := s.Draw(text, last, width, height); err != nil {
			t.Fatal(err)
		}
		p.read(t, out.String())
	}
	want := func(touched int, rows ...string) {
		t.Helper()
		if p.touched != touched {
			t.Errorf("%d rows were drawn, not %d", p.touched, touched)
		}
		for i, row := range rows {
			if p.rows[i+1] != row {
				t.Errorf("row %d shows %q, not %q", i+1, p.rows[i+1], row)
			}
		}
	}
	draw("one\ntwo\nthree\n", "status", 10, 6)
	want(4, "one", "two", "three", "", "", "status")
	draw("one\ntwo\nthree\n", "status", 10, 6)
	want(0, "one", "two", "three", "", "", "status")
	draw("one\n2\nthree\n", "status 2", 10, 6)
	want(2, "one", "2", "three", "", "", "status 2")
	draw("one\n", "status 2", 10, 6)
	want(2, "one", "", "", "", "", "status 2")
	draw("0123456789abc\n", "longer than the window", 10, 6)
	want(3, "0123456789", "abc", "", "", "", "longer tha")
	draw("1\n2\n3\n4\n5\n6\n7\n", "", 10, 6)
	want(6, "1", "2", "3", "4", "... and 3 ", "")
	draw("1\n", "s", 20, 3) // another window: all of it anew
	want(2, "1", "", "s")
	out.Reset()
	if err := s.Close(); err != nil || out.String() != firstPage {
		t.Errorf("closing wrote %q (%v)", &out, err)
	}
}
