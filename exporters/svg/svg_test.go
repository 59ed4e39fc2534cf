package svg_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/exporters/svg"
	"yardproof/pipeline/report"
)

func TestGolden(t *testing.T) {
	golden.Check(t, "quilt.svg", svg.Bytes(sample.Picture(), true))
	golden.Check(t, "units-unproved.svg", svg.Bytes(sample.Units(), false))
}

// parsed reads a file as XML does, strictly, and returns how often each
// element is there and all text.
func parsed(t *testing.T, b []byte) (elements map[string]int, text string) {
	t.Helper()
	elements = map[string]int{}
	d := xml.NewDecoder(bytes.NewReader(b))
	ids := map[string]bool{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			return elements, text
		}
		if err != nil {
			t.Fatalf("%v in %.300s", err, b)
		}
		switch token := token.(type) {
		case xml.StartElement:
			elements[token.Name.Local]++
			for _, a := range token.Attr {
				harmless(t, a)
				if a.Name.Local == "id" && ids[a.Value] {
					t.Errorf("the id %s is there twice", a.Value)
				}
				ids[a.Value] = true
			}
		case xml.CharData:
			text += string(token)
		case xml.Directive, xml.ProcInst, xml.Comment:
			t.Errorf("there is a %T", token)
		}
	}
}

// harmless: nothing is fetched or run, and no number is none.
func harmless(t *testing.T, a xml.Attr) {
	t.Helper()
	name := a.Name.Local
	if name == "href" || strings.HasPrefix(name, "on") || name == "style" || strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
		t.Errorf("attribute %s=%q", name, a.Value)
	}
	if strings.Contains(a.Value, "url(") && !strings.HasPrefix(a.Value, "url(#hatch") {
		t.Errorf("attribute %s=%q", name, a.Value)
	}
}

// A file is well-formed, says what it shows, and keeps hostile text as text.
func TestWellFormed(t *testing.T) {
	hostile := sample.Picture()
	hostile.Title, hostile.About, hostile.Legend[0].Name = edge.Hostile, edge.Hostile, edge.Hostile
	for _, p := range []report.Picture{sample.Picture(), sample.Units(), hostile, {}} {
		elements, text := parsed(t, svg.Bytes(p, true))
		if elements["svg"] != 1 || elements["title"] != 1 || elements["desc"] != 1 || elements["script"] != 0 || elements["image"] != 0 {
			t.Errorf("%v", elements)
		}
		if p.Title == edge.Hostile && !strings.Contains(text, "<script>alert(1)</script>") {
			t.Error("text was lost")
		}
	}
	elements, _ := parsed(t, svg.Bytes(sample.Picture(), true))
	if elements["pattern"] < 6 || elements["path"] < 30 || elements["text"] < 20 {
		t.Errorf("%v", elements)
	}
}

func TestUnprovedSaysSo(t *testing.T) {
	for _, proved := range []bool{false, true} {
		if _, text := parsed(t, svg.Bytes(sample.Units(), proved)); strings.Contains(text, "NOT PROVED") == proved {
			t.Errorf("proved %t: %.100s", proved, text)
		}
	}
}

func TestSameBytes(t *testing.T) {
	first := svg.Bytes(sample.Picture(), true)
	for range 20 {
		if !bytes.Equal(first, svg.Bytes(sample.Picture(), true)) {
			t.Fatal("two runs gave different bytes")
		}
	}
}

// Pictures of one ID get files of their own, also where a disk takes upper and
// lower case for one.
func TestNames(t *testing.T) {
	sheets := []report.Sheet{
		{Pictures: []report.Picture{{ID: "a"}, {ID: "b"}, {ID: "A"}, {ID: "a-2"}}},
		{Pictures: []report.Picture{{ID: "a"}, {ID: "b"}}},
	}
	var names []string
	for _, n := range svg.Name(sheets) {
		names = append(names, n.Name)
	}
	if got := strings.Join(names, " "); got != "a b A-2 a-2-2 a-3 b-2" {
		t.Errorf("names %s", got)
	}
}
