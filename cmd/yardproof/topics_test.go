package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"yardproof/schema"
	"yardproof/schema/jsontree"
	"yardproof/schema/source"
	"yardproof/schema/topics"
)

// example is a fenced block of a topic.
type example struct {
	where string // "parts, example 3"
	info  string // what stands behind the fence: "json project"
	text  string
}

var fenced = regexp.MustCompile("(?ms)^```(json|json project|csv [^\n]*)\n(.*?)^```$")

func examples(topic topics.Topic) []example {
	var all []example
	for i, b := range fenced.FindAllStringSubmatch(topic.Text, -1) {
		all = append(all, example{fmt.Sprintf("%s, example %d", topic.Name, i+1), b[1], b[2]})
	}
	return all
}

// object reads an example's members.
func (e example) object(t *testing.T) map[string]any {
	t.Helper()
	var members map[string]any
	if err := json.Unmarshal([]byte("{"+e.text+"}"), &members); err != nil {
		t.Fatalf("%s: %v", e.where, err)
	}
	return members
}

// TestTopicExamples writes every example of the help topics into the plan of
// README's five minutes, or into a project file beside it, and checks it.
func TestTopicExamples(t *testing.T) {
	base := readmePlan(t)
	edition := lineBefore(t, base)
	for _, topic := range topics.All() {
		t.Chdir(t.TempDir())
		laid(t, "prices.csv", []byte(priceList(t)))
		laid(t, "mill.xlsx", workbook(t, "Cotton", "sku,description,price\nW-400,Ochre check,7.90"))
		laid(t, "editions/spring.csv", edition)
		for _, e := range examples(topic) {
			plan, project := maps.Clone(base), map[string]any{"format": 1, "currency": "EUR", "labour_rate": "18.00", "prices": "prices.csv"}
			switch name, isFile := strings.CutPrefix(e.info, "csv "); {
			case isFile:
				laid(t, name, []byte(e.text))
				continue
			case e.info == "json project":
				maps.Copy(project, e.object(t))
			default:
				writeInto(t, plan, e)
			}
			laid(t, "yardproof.json", text(t, project))
			laid(t, "picnic.plan.json", text(t, plan))
			// Parts and fabrics of the five minutes may be left over.
			out, status := said("check", "--today", "2026-11-01", "--rule", "reference/unused-part=off,reference/unused-fabric=off", "picnic.plan.json")
			if status != exitClean {
				t.Errorf("%s: exit status %d\n%s", e.where, status, out)
			}
		}
	}
}

// writeInto writes an example into a plan: parts and fabrics are added, any other
// key takes the place of the plan's own, and where there are parts and no layout
// the last part is the block of a quilt of two by two.
func writeInto(t *testing.T, plan map[string]any, e example) {
	t.Helper()
	members := e.object(t)
	for key, value := range members {
		if key == "parts" || key == "fabrics" {
			both := maps.Clone(plan[key].(map[string]any))
			maps.Copy(both, value.(map[string]any))
			value = both
		}
		plan[key] = value
	}
	if members["parts"] != nil && members["layout"] == nil {
		block := [][]string{{lastPart(t, e)}}
		plan["layout"] = map[string]any{"grid": map[string]any{"rows": 2, "columns": 2, "blocks": block}}
	}
}

// lastPart is the name of the part that an example ends with.
func lastPart(t *testing.T, e example) string {
	t.Helper()
	tree, problems := jsontree.Parse(source.New(e.where, []byte("{"+e.text+"}")), jsontree.Limits{})
	if len(problems) > 0 {
		t.Fatalf("%s: %v", e.where, problems)
	}
	parts := tree.Get("parts").Members
	return parts[len(parts)-1].Key
}

// readmePlan is the plan of README's five minutes, without its printed figures and
// in the size "throw" only.
func readmePlan(t *testing.T) map[string]any {
	t.Helper()
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var plan map[string]any
	if err := json.Unmarshal([]byte(block.FindStringSubmatch(string(readme))[2]), &plan); err != nil {
		t.Fatal(err)
	}
	delete(plan, "printed")
	plan["sizes"] = map[string]any{"throw": map[string]any{}}
	return plan
}

// priceList is the one that the topic about price lists shows.
func priceList(t *testing.T) string {
	t.Helper()
	topic, _ := topics.Find("prices")
	for _, e := range examples(topic) {
		if e.info == "csv prices.csv" {
			return e.text
		}
	}
	t.Fatal("the topic prices shows no price list")
	return ""
}

// lineBefore is the line's table of an export of the plan.
func lineBefore(t *testing.T, plan map[string]any) []byte {
	t.Helper()
	t.Chdir(t.TempDir())
	laid(t, "picnic.plan.json", text(t, plan))
	laid(t, "yardproof.json", []byte(`{ "format": 1, "currency": "EUR" }`))
	if out, status := said("export", "--draft", "--format", "csv", "--out", "out", "picnic.plan.json"); status != exitClean {
		t.Fatalf("exit status %d\n%s", status, out)
	}
	b, err := os.ReadFile(filepath.Join("out", "line", "line.csv"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func laid(t *testing.T, name string, b []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, b, 0o666); err != nil {
		t.Fatal(err)
	}
}

func text(t *testing.T, value any) []byte {
	t.Helper()
	b, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestTopicsInReadme: README lists the topics as the overview does, and no topic has
// the name of a command.
func TestTopicsInReadme(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(readme), "<!-- topics -->\n")
	table, _, ok := strings.Cut(rest, "<!-- end of topics -->")
	var want strings.Builder
	for _, topic := range helpTopics() {
		fmt.Fprintf(&want, "| `%s` | %s |\n", topic.word, topic.about)
		if _, found := findCommand(topic.word); found {
			t.Errorf("%s is a command and a topic", topic.word)
		}
	}
	if !ok || table != want.String() {
		t.Errorf("README lists\n%s\nand there are\n%s", table, want.String())
	}
}

// TestTopicsShowEveryKey: each key of the schemas of a plan and a project file stands
// in an example.
func TestTopicsShowEveryKey(t *testing.T) {
	for _, name := range []string{"plan", "project"} {
		written, _ := schema.Text(name)
		var root map[string]any
		if err := json.Unmarshal(written, &root); err != nil {
			t.Fatal(err)
		}
		k := keys{root, map[string]bool{}}
		k.list("", root)
		for _, topic := range topics.All() {
			for _, e := range examples(topic) {
				if e.info == "json" && name == "plan" || e.info == "json project" && name == "project" {
					k.show("", e.object(t))
				}
			}
		}
		for _, key := range slices.Sorted(maps.Keys(k.missing)) {
			t.Errorf("no example of a topic shows %s of the %s", key, name)
		}
	}
}

// keys are the keys of a schema that no example has shown yet, by where the schema
// describes them.
type keys struct {
	root    map[string]any
	missing map[string]bool
}

// list adds every key that the schema at a path, or below it, describes.
func (k keys) list(path string, node any) {
	n, _ := node.(map[string]any)
	properties, _ := n["properties"].(map[string]any)
	for name := range properties {
		k.missing[path+"/properties/"+name] = true
	}
	for word, below := range n {
		k.list(path+"/"+word, below)
	}
}

// show takes away the keys that a value shows of what the schema at a path describes.
func (k keys) show(path string, value any) {
	node := k.at(path)
	if ref, ok := node["$ref"].(string); ok {
		path = strings.TrimPrefix(ref, "#")
		node = k.at(path)
	}
	properties, _ := node["properties"].(map[string]any)
	switch v := value.(type) {
	case map[string]any:
		for name, member := range v {
			if below := path + "/properties/" + name; properties[name] != nil {
				delete(k.missing, below)
				k.show(below, member)
			} else if _, ok := node["additionalProperties"].(map[string]any); ok {
				k.show(path+"/additionalProperties", member)
			}
		}
	case []any:
		for _, item := range v {
			k.show(path+"/items", item)
		}
	}
}

// at is the schema at a path, nothing where there is none.
func (k keys) at(path string) map[string]any {
	node := k.root
	for _, word := range strings.FieldsFunc(path, func(r rune) bool { return r == '/' }) {
		node, _ = node[word].(map[string]any)
	}
	return node
}

// workbook is an Office Open XML workbook (ECMA-376) with one sheet, of a text in
// CSV without quotation marks.
func workbook(t *testing.T, sheet, csv string) []byte {
	t.Helper()
	var rows strings.Builder
	for _, line := range strings.Split(csv, "\n") {
		rows.WriteString("<row>")
		for _, value := range strings.Split(line, ",") {
			fmt.Fprintf(&rows, `<c t="inlineStr"><is><t>%s</t></is></c>`, value)
		}
		rows.WriteString("</row>")
	}
	const (
		main  = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
		kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
		part  = "application/vnd.openxmlformats-officedocument.spreadsheetml."
		links = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="%s/%s" Target="%s"/></Relationships>`
	)
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, file := range [][2]string{
		{"[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
			`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
			`<Override PartName="/xl/workbook.xml" ContentType="` + part + `sheet.main+xml"/>` +
			`<Override PartName="/xl/worksheets/sheet1.xml" ContentType="` + part + `worksheet+xml"/></Types>`},
		{"_rels/.rels", fmt.Sprintf(links, kinds, "officeDocument", "xl/workbook.xml")},
		{"xl/workbook.xml", `<workbook ` + main + ` xmlns:r="` + kinds + `"><sheets><sheet name="` + sheet + `" sheetId="1" r:id="r1"/></sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", fmt.Sprintf(links, kinds, "worksheet", "worksheets/sheet1.xml")},
		{"xl/worksheets/sheet1.xml", `<worksheet ` + main + `><sheetData>` + rows.String() + `</sheetData></worksheet>`},
	} {
		w, err := z.Create(file[0])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(file[1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
