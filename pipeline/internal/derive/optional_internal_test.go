package derive

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"yardproof/schema/plan"
)

// beyond are the methods that rooms have beyond those of every room, by operation: what
// only some operations have an answer to. One that is missing, or a wrong name, shows here.
func beyond() map[string]string {
	return map[string]string{
		"Cut":            "SizeAt",
		"WholeStrip":     "Striping Strips",
		"StripSet":       "Degrees Notes Striping Strips TellCount TellSize TellYield",
		"Tube":           "Cautions Faults Kinds Notes TellCount TellSize TellYield",
		"HalfSquares":    "Cautions CutFor SizeAt TellCount TellSize",
		"TriangleSquare": "CutFor Faults TellSize",
		"Hourglass":      "Fit TellCount TellSize",
		"FlyingGeese":    "Faults Fit TellCount TellSize",
		"FlipCorners":    "Carries Cells Faults Fit Places TellCount TellSize",
		"SquareInSquare": "Fit TellCount TellSize",
		"Logs":           "Fit TellCount TellSize",
		"Shape":          "Cautions Degrees Faults Fit Striping TellCount TellYield",
		"Template":       "Faults Fit TellCount TellSize",
		"Mosaic":         "Faults",
		"Rows":           "Cells Places Rows TellSize",
		"Trim":           "Carries Cells Notes Places SizeAt",
		"Bordered":       "Carries Cells Places",
		"Setting":        "Cells Grid Places",
		"Recut":          "Carries Faults Places TellSize",
		"Loop":           "Faults Notes TellYield",
		"Chain":          "Faults Striping Strips TellCount",
		"NotDerived":     "",
	}
}

// TestOptionalMethods holds the rooms against that list.
func TestOptionalMethods(t *testing.T) {
	all := []plan.Operation{
		plan.Cut{}, plan.WholeStrip{}, plan.StripSet{}, plan.Tube{}, plan.HalfSquares{}, plan.TriangleSquare{}, plan.Hourglass{},
		plan.FlyingGeese{}, plan.FlipCorners{}, plan.SquareInSquare{}, plan.Logs{}, plan.Shape{}, plan.Template{}, plan.Mosaic{},
		plan.Rows{}, plan.Trim{}, plan.Bordered{}, plan.Setting{}, plan.Recut{}, plan.Loop{}, plan.Chain{}, plan.NotDerived{},
	}
	if makers := reflect.TypeFor[plan.Maker]().NumMethod(); len(all) != makers || len(beyond()) != makers {
		t.Fatalf("%d operations, %d of them in the list, and %d that can be made", len(all), len(beyond()), makers)
	}
	every := methods(reflect.TypeFor[Operation]())
	for _, op := range all {
		o := opening{s: &Size{}, p: &Part{}}
		op.Make(&o)
		more := slices.DeleteFunc(methods(reflect.TypeOf(o.room)), func(m string) bool { return slices.Contains(every, m) })
		name := reflect.TypeOf(op).Name()
		if got := strings.Join(more, " "); got != beyond()[name] {
			t.Errorf("%s has %q, the list %q", name, got, beyond()[name])
		}
	}
}

// methods are the exported methods of a type, sorted.
func methods(of reflect.Type) (all []string) {
	for i := range of.NumMethod() {
		all = append(all, of.Method(i).Name)
	}
	return all
}
