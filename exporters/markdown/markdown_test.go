package markdown

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	renderer "github.com/yuin/goldmark/renderer/html"
	"golang.org/x/net/html"

	"yardproof/exporters/internal/edge"
	"yardproof/exporters/internal/golden"
	"yardproof/exporters/internal/sample"
	"yardproof/exporters/internal/words"
	"yardproof/pipeline/diag"
	"yardproof/pipeline/report"
)

func written(t *testing.T, r *report.Run) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestWrite(t *testing.T)        { golden.Check(t, "run.md", []byte(written(t, sample.Line()))) }
func TestWriteEdge(t *testing.T)    { golden.Check(t, "edge.md", []byte(written(t, edge.Run()))) }
func TestWriteNothing(t *testing.T) { golden.Check(t, "empty.md", []byte(written(t, &report.Run{}))) }

// page is a comment as goldmark renders it, a general Markdown library, with
// the extensions of GitHub Flavored Markdown and HTML let through.
type page struct {
	elements map[string]int
	prose    []string // text outside of code
	code     []string // text of code and pre elements
	all      string
}

func render(t *testing.T, text string) page {
	t.Helper()
	md := goldmark.New(goldmark.WithExtensions(extension.GFM), goldmark.WithRendererOptions(renderer.WithUnsafe()))
	var b bytes.Buffer
	if err := md.Convert([]byte(text), &b); err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(&b)
	if err != nil {
		t.Fatal(err)
	}
	p := page{elements: map[string]int{}}
	p.walk(root, false)
	return p
}

func (p *page) walk(n *html.Node, code bool) {
	switch n.Type {
	case html.ElementNode:
		p.elements[n.Data]++
		code = code || n.Data == "code" || n.Data == "pre"
	case html.CommentNode:
		p.elements["comment"]++
	case html.TextNode:
		p.all += n.Data
		if code {
			p.code = append(p.code, n.Data)
		} else {
			p.prose = append(p.prose, n.Data)
		}
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		p.walk(c, code)
	}
}

// own are the elements that the format itself writes.
var own = []string{"html", "head", "body", "p", "strong", "span", "code", "pre", "details", "summary", "h3", "br", "table", "thead", "tbody", "tr", "th", "td"}

// obeyed is text that a service would act on after Markdown.
var obeyed = regexp.MustCompile(`(?i)@\w|#\d|gh-\d|://|www\.\w|\$|:\w+:`)

func checkPage(t *testing.T, p page) {
	t.Helper()
	for name, n := range p.elements {
		if !slices.Contains(own, name) {
			t.Errorf("%d elements %q", n, name)
		}
	}
	for _, text := range p.prose {
		if found := obeyed.FindString(text); found != "" && text != found[:1] {
			t.Errorf("%q of %q would be acted on", found, text)
		}
	}
}

func TestTextOfAPlanIsNotObeyed(t *testing.T) {
	p := render(t, written(t, edge.Run()))
	checkPage(t, p)
	// Two messages, two hints and the title in a heading and the table; in code
	// the related place and the consequence.
	want := words.OneLine(edge.Hostile)
	if n := strings.Count(p.all, want); n < 8 {
		t.Errorf("the text comes back whole %d times", n)
	}
	if p.elements["h3"] != 3 || p.elements["table"] != 1 || p.elements["details"] != 6 {
		t.Errorf("the page is taken apart: %v", p.elements)
	}
}

func FuzzTextIsNotObeyed(f *testing.F) {
	f.Add("plain", "a", "throw")
	f.Add(edge.Hostile, "`", "|")
	f.Add("``` a", "  ", "\\")
	f.Add("<!-- x", "![a][b]", "- [ ] x")
	f.Add("a_b_ __c__ ~~d~~ http://x.y:z@w <mailto:a@b.c>", "[^1]: x", "&copy;")
	f.Fuzz(func(t *testing.T, message, file, size string) {
		r := &report.Run{Plans: []report.Outcome{{
			File: file, ID: "x", Title: message, Sizes: []string{size},
			Findings: []diag.Finding{{
				Rule: "a/b", Level: diag.Error, Plan: "x", Sizes: []string{size}, Message: message, Hint: message,
				Place: diag.Place{File: file}, Related: []diag.Related{{Message: message}},
			}},
		}}}
		p := render(t, written(t, r))
		checkPage(t, p)
		if p.elements["h3"] != 1 || p.elements["table"] != 1 || p.elements["details"] != 1 || p.elements["tr"] != 2 || p.elements["td"] != 5 {
			t.Errorf("the page is taken apart: %v", p.elements)
		}
	})
}

var (
	shownMark = regexp.MustCompile(`(?m)^\*\*(error|warning|note)\*\* `)
	leftLine  = regexp.MustCompile(`(?m)^And (.*) more, which a comment has no room for\.\n$`)
	leftCount = regexp.MustCompile(`(\d+) (error|warning|note)`)
)

// tally counts what a comment shows and what it says that it leaves out.
func tally(text string) (shown, left map[string]int) {
	shown, left = map[string]int{}, map[string]int{}
	for _, m := range shownMark.FindAllStringSubmatch(text, -1) {
		shown[m[1]]++
	}
	if m := leftLine.FindStringSubmatch(text); m != nil {
		for _, c := range leftCount.FindAllStringSubmatch(m[1], -1) {
			left[c[2]], _ = strconv.Atoi(c[1])
		}
	}
	return shown, left
}

func TestNothingIsLeftOutInSilence(t *testing.T) {
	for _, r := range []*report.Run{sample.Line(), edge.Run(), edge.Many(1), edge.Many(60), edge.Many(600)} {
		want := words.Count(r.All())
		for _, limit := range []int{2500, 5000, 10_000, 20_000, 40_000, Limit} {
			text := comment(r, limit)
			if len(text) > limit || !utf8.ValidString(text) {
				t.Errorf("%d bytes of %d", len(text), limit)
			}
			shown, left := tally(text)
			worse := false // whether something worse was left out
			for _, l := range words.Levels() {
				if n := shown[l.String()] + left[l.String()]; n != want.Of(l) {
					t.Errorf("limit %d: %d of level %s, there are %d", limit, n, l, want.Of(l))
				}
				if worse && shown[l.String()] > 0 {
					t.Errorf("limit %d: level %s is shown and worse is left out", limit, l)
				}
				worse = worse || left[l.String()] > 0
			}
			if all := want.Errors + want.Warnings + want.Notes; limit == Limit && all < 200 && len(left) > 0 {
				t.Errorf("%v are left out of %d", left, all)
			}
		}
	}
	if _, left := tally(comment(edge.Many(600), Limit)); left["error"] == 0 {
		t.Error("600 plans fit, so the limit is not tried")
	}
}

func TestCode(t *testing.T) {
	for text, want := range map[string]string{
		"a":       "`a`",
		"a`b":     "``a`b``",
		"`a``":    "``` `a`` ```",
		"a\nb\\|": "`a b\\|`",
		" a ":     "`  a  `",
		" ":       "`   `",
		"":        "",
	} {
		if got := code(text); got != want {
			t.Errorf("code(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestShorten(t *testing.T) {
	whole := strings.Repeat("½", longest)
	if got := shorten(whole); got != whole {
		t.Errorf("a text of %d characters is cut", longest)
	}
	if got, want := shorten(whole+"ab"), whole+" ... (2 characters more)"; got != want {
		t.Errorf("cut to %q", got[len(got)-40:])
	}
}
