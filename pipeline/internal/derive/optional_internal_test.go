package derive

import (
	"flag"
	"fmt"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"yardproof/schema/plan"
)

// The flag is set once, by the testing package, before any test runs.
var update = flag.Bool("update", false, "record anew which room has which optional methods")

// TestOptionalMethods holds the methods that rooms have beyond those of every room,
// what only some operations have an answer to, against testdata/optional.golden. One
// that is missing, or a wrong name, shows there.
func TestOptionalMethods(t *testing.T) {
	const recorded = "testdata/optional.golden"
	every := methods(reflect.TypeFor[Operation]())
	var got strings.Builder
	for _, op := range recipes() {
		o := opening{s: &Size{}, p: &Part{}}
		op.Make(&o)
		more := slices.DeleteFunc(methods(reflect.TypeOf(o.room)), func(m string) bool { return slices.Contains(every, m) })
		fmt.Fprintln(&got, strings.Join(append([]string{reflect.TypeOf(op).Name() + ":"}, more...), " "))
	}
	if *update {
		if err := os.WriteFile(recorded, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(recorded)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("rooms have\n%sand %s has\n%s-update records it anew", got.String(), recorded, want)
	}
}

// recipes are an empty recipe of every operation that can be made, by name.
func recipes() (all []plan.Operation) {
	makers := reflect.TypeFor[plan.Maker]()
	for i := range makers.NumMethod() {
		all = append(all, reflect.Zero(makers.Method(i).Type.In(0)).Interface().(plan.Operation))
	}
	return all
}

// methods are the exported methods of a type, sorted.
func methods(of reflect.Type) (all []string) {
	for i := range of.NumMethod() {
		all = append(all, of.Method(i).Name)
	}
	return all
}
