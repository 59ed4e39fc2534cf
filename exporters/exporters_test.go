package exporters

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"yardproof/exporters/internal/sample"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store"
)

func TestFormatsAreSortedAndFound(t *testing.T) {
	var reports, exports []string
	for _, f := range Reports() {
		reports = append(reports, f.Name)
		if found, ok := Report(f.Name); !ok || found.Name != f.Name || f.Summary == "" || f.Write == nil {
			t.Errorf("report format %s is not whole", f.Name)
		}
	}
	for _, f := range Exports() {
		exports = append(exports, f.Name)
		if found, ok := Export(f.Name); !ok || found.Name != f.Name || f.Summary == "" || f.Plan == nil || f.Line == nil {
			t.Errorf("export format %s is not whole", f.Name)
		}
	}
	if !slices.IsSorted(reports) || !slices.IsSorted(exports) {
		t.Errorf("not sorted: %v %v", reports, exports)
	}
	if _, ok := Report("nothing"); ok {
		t.Error("an unknown report format was found")
	}
	if _, ok := Export("nothing"); ok {
		t.Error("an unknown export format was found")
	}
}

func TestReportsEndTheirLastLineAndRepeat(t *testing.T) {
	for _, f := range Reports() {
		var first, second bytes.Buffer
		if err := f.Write(&first, sample.Line(), Options{}); err != nil {
			t.Fatal(err)
		}
		if err := f.Write(&second, sample.Line(), Options{}); err != nil {
			t.Fatal(err)
		}
		if !strings.HasSuffix(first.String(), "\n") {
			t.Errorf("%s does not end its last line", f.Name)
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%s differs from run to run", f.Name)
		}
	}
}

func names(files []report.File) []string {
	var all []string
	for _, f := range files {
		all = append(all, f.Name)
	}
	return all
}

func TestExportsNameTheirFiles(t *testing.T) {
	want := map[string][2]string{
		"csv": {
			"harbour-steps/cut-list.csv harbour-steps/fabrics.csv harbour-steps/tools.csv harbour-steps/inputs.csv harbour-steps/costing.csv harbour-steps/cutting-room.csv harbour-steps/cutting-room-backing.csv harbour-steps/cutting-room-cautions.csv",
			"line/kits.csv",
		},
		"json": {"harbour-steps/harbour-steps.json", "line.json"},
		"svg":  {"harbour-steps/quilt-throw.svg harbour-steps/units-throw.svg harbour-steps/units-throw-2.svg", ""},
		"xlsx": {"harbour-steps/harbour-steps.xlsx harbour-steps/harbour-steps-papers.xlsx", "line.xlsx"},
	}
	for _, f := range Exports() {
		plan, err := f.Plan(sample.Plan())
		if err != nil {
			t.Fatal(err)
		}
		line, err := f.Line(sample.Line())
		if err != nil {
			t.Fatal(err)
		}
		got := [2]string{strings.Join(names(plan), " "), strings.Join(names(line), " ")}
		if got != want[f.Name] {
			t.Errorf("%s names %q, want %q", f.Name, got, want[f.Name])
		}
		for _, file := range append(plan, line...) {
			if fault := store.NameFault(file.Name); fault != "" || len(file.Bytes) == 0 {
				t.Errorf("%s: %s, %d bytes", file.Name, fault, len(file.Bytes))
			}
		}
	}
}

// A run that only checks has no sheets, and a plan that could not be read has
// no id.
func TestExportsOfNothing(t *testing.T) {
	for _, f := range Exports() {
		if files, err := f.Line(&report.Run{}); err != nil || len(files) != 0 {
			t.Errorf("%s of a line without sheets: %v %v", f.Name, names(files), err)
		}
		nameless := sample.Plan()
		nameless.ID = ""
		if files, err := f.Plan(nameless); err == nil {
			t.Errorf("%s of a plan without an id: %v", f.Name, names(files))
		}
	}
}
