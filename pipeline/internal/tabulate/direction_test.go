package tabulate_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"yardproof/pipeline/internal/tabulate"
	"yardproof/pipeline/report"
	"yardproof/schema/measure"
)

// inexact makes each length of a plan that is typed in inches 0.01 mm longer, which
// no decimal of four places and no fraction of an inch holds. Seams stay as they are.
func inexact(text string) string {
	return regexp.MustCompile(`("stitch": )?"(\d+ )?\d+(/\d+)?"`).ReplaceAllStringFunc(text, func(said string) string {
		l, err := measure.ParseLength(strings.Trim(said, `"`), measure.In)
		if err != nil || l < measure.Inch/2 {
			return said
		}
		return `"` + (l+measure.Millimetre/100).Surd().Decimal(measure.Cm, 6) + ` cm"`
	})
}

// upward is what stands before a length that is to be cut, bought or covered, there
// what stands before one that there is. Of what is left over the plan holds no
// length: see anyYield.
var (
	upward = regexp.MustCompile(`(?:[Ss]quares?|segments of|rings of|cut|strip|rectangles?|columns?|at least|takes?|needs?|each|long,|by geometry|lengths of|round the quilt, needs|logs|of strips|down to|[Uu]se|panel, full width, each|into pieces of) ((?:about [0-9.]+ x )?about [0-9.]+ (?:in|cm))(?:[^ 0-9]| [^o]|$)`)
	there  = regexp.MustCompile(`(?:usable width(?: of|,)|trimmed to|trim (?:the edges )?to|they give|give|loops? of continuous bias,|off a roll) ((?:about [0-9.]+ x )?about [0-9.]+ (?:in|cm))`)
	about  = regexp.MustCompile(`about ([0-9.]+)`)
)

// Every text of the tables and pictures of the demo line, with all lengths between the
// lines of a ruler: what is to be cut, bought or covered is some exact length of the
// plan, or a little more, and what there is such a one, or a little less.
func TestTextsRoundToTheSafeSide(t *testing.T) {
	up, down := 0, 0
	files, _ := filepath.Glob("../../../testdata/line/*.plan.json")
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		in := read(f, []byte(inexact(string(text))))
		if in == nil {
			continue
		}
		sheets := tabulate.Plan(*in)
		exact := exactLengths(reflect.ValueOf(in.Sizes), reflect.ValueOf(sheets))
		for _, text := range textsOf(sheets) {
			for _, m := range upward.FindAllStringSubmatch(text, -1) {
				up++
				if !exact.hold(t, m[1], measure.Up) {
					t.Errorf("%s: %q in %q is no length of the plan rounded up", filepath.Base(f), m[1], text)
				}
			}
			for _, m := range there.FindAllStringSubmatch(text, -1) {
				down++
				if !exact.hold(t, m[1], measure.Down) {
					t.Errorf("%s: %q in %q is no length of the plan rounded down", filepath.Base(f), m[1], text)
				}
			}
		}
	}
	if up < 500 || down < 30 {
		t.Errorf("only %d and %d texts were looked at", up, down)
	}
}

// textsOf are all words of some sheets.
func textsOf(sheets []report.Sheet) (all []string) {
	for _, s := range sheets {
		for _, table := range s.Tables {
			all = append(all, table.Lead...)
			all = append(all, table.Foot...)
			for _, r := range table.Rows {
				for _, c := range r.Cells {
					all = append(all, c.Text)
				}
			}
		}
		for _, p := range s.Pictures {
			for _, k := range p.Legend {
				all = append(all, k.Name)
			}
			for _, panel := range p.Panels {
				for _, shape := range panel.Shapes {
					all = append(all, shape.Labels...)
				}
			}
		}
	}
	return all
}

// lengths are exact lengths by their inches.
type lengths struct {
	inches []float64
	exact  map[float64]measure.Surd
}

// exactLengths are all lengths that some values hold.
func exactLengths(all ...reflect.Value) *lengths {
	l := &lengths{exact: map[float64]measure.Surd{}}
	seen := map[uintptr]bool{}
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch {
		case v.Type() == reflect.TypeFor[measure.Length]():
			l.add(measure.Length(v.Int()).Surd())
			return
		case v.Type() == reflect.TypeFor[measure.Surd]():
			if v.CanInterface() {
				l.add(v.Interface().(measure.Surd))
			}
			return
		}
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() && !seen[v.Pointer()] {
				seen[v.Pointer()] = true
				walk(v.Elem())
			}
		case reflect.Interface:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		}
	}
	for _, v := range all {
		walk(v)
	}
	for x := range l.exact {
		l.inches = append(l.inches, x)
	}
	slices.Sort(l.inches)
	return l
}

func (l *lengths) add(x measure.Surd) { l.exact[x.Float(measure.In)] = x }

// hold reports whether a printed length, or each of two, is one of them rounded so.
func (l *lengths) hold(t *testing.T, printed string, toward measure.Toward) bool {
	t.Helper()
	unit := printed[strings.LastIndex(printed, " "):]
	for _, m := range about.FindAllStringSubmatch(printed, -1) {
		if !l.holdsOne(ofText(t, fmt.Sprint("about ", m[1], unit)), toward) {
			return false
		}
	}
	return true
}

func (l *lengths) holdsOne(x measure.Surd, toward measure.Toward) bool {
	at := x.Float(measure.In)
	const place = 2e-4 // twice the last place of an inch
	i, _ := slices.BinarySearch(l.inches, at-place)
	for ; i < len(l.inches) && l.inches[i] < at+place; i++ {
		over := x.Sub(l.exact[l.inches[i]])
		if math.Abs(over.Float(measure.In)) < place/2 && (over.Sign() == 0 || (over.Sign() > 0) == (toward == measure.Up)) {
			return true
		}
	}
	return false
}
