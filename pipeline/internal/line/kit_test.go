package line

import (
	"bytes"
	"encoding/json"
	"math/big"
	"strings"
	"testing"

	"yardproof/pipeline/internal/costing"
)

// kept is a kit as results of earlier versions hold it, of invented numbers.
const kept = `{"currency":"EUR","own_margin":true,` +
	`"goods":[{"fabric":"Red & <white>","sku":"A","article":"Plain","unit":"yd"},{"fabric":"Ground","unit":"yd"}],"things":[{"fabric":"Label","unit":"each"}],` +
	`"costing":{"suffix":".cot","digits":2,` +
	`"materials":[{"quantity":{"name":"q1","value":"2/3"},"price":{"name":"p1","value":"9"}},{"quantity":{"name":"q2","value":"1"},"price":{"name":"p2","value":"8"}}],` +
	`"things":[{"quantity":{"name":"q3","value":"4"},"price":{"name":"p3","value":"1/4"}}],` +
	`"minutes":{"name":"m","value":"25"},"rate":{"name":"r","value":"18"},"packaging":{"name":"k","value":"2"},"pattern":{"name":"n","value":"3"},` +
	`"spoilage":{"name":"s","value":"0"},"fee_share":{"name":"fs","value":"0"},"fee_each":{"name":"fe","value":"0"},"trade":{"name":"t","value":"1/2"},` +
	`"fixed":{"name":"f","value":"480"},"margin":{"name":"g","value":"1/2"},"asked":{"name":"a","value":"57"},"run":{"name":"u","value":"20"},"bought":{"name":"b","value":"0"}}}`

// What is kept of a kit is the same to the byte in every version, and each line
// has its own numbers.
func TestKitIsKeptAsItWas(t *testing.T) {
	var k Kit
	if err := json.Unmarshal([]byte(kept), &k); err != nil {
		t.Fatal(err)
	}
	if l := k.Fabrics[1]; l.Fabric != "Ground" || l.Quantity.Name != "q2" || l.Price.Value.Cmp(big.NewRat(8, 1)) != 0 || k.Things[0].Quantity.Name != "q3" {
		t.Errorf("%+v, %+v", l, k.Things[0])
	}
	if k.Inputs.Suffix != ".cot" || k.Inputs.Digits != 2 || k.Inputs.Bought.Name != "b" {
		t.Errorf("%+v", k.Inputs)
	}
	var b bytes.Buffer
	plain := json.NewEncoder(&b)
	plain.SetEscapeHTML(false)
	if err := plain.Encode(k); err != nil || b.String() != kept+"\n" {
		t.Errorf("%v\n%s\n%s", err, b.String(), kept)
	}
	escaped, err := json.Marshal(&k)
	if want := strings.NewReplacer("&", `\u0026`, "<", `\u003c`, ">", `\u003e`).Replace(kept); err != nil || string(escaped) != want {
		t.Errorf("%v\n%s\n%s", err, escaped, want)
	}
	bare, err := json.Marshal(Kit{Inputs: costing.Inputs{Digits: 2}})
	if err != nil || strings.Contains(string(bare), "goods") || strings.Contains(string(bare), "things") || strings.Contains(string(bare), "materials") || !strings.HasPrefix(string(bare), `{"own_margin":false,"costing":{"suffix":"","digits":2,"minutes"`) {
		t.Errorf("%v %s", err, bare)
	}
}

// A kit that lost a line or a number, or has a member of another version, is not
// half understood.
func TestKitRefuses(t *testing.T) {
	for was, is := range map[string]string{
		`,{"fabric":"Ground","unit":"yd"}`:             ``,
		`"things":[{"fabric":"Label","unit":"each"}],`: ``,
		`"own_margin":true`:                            `"own_margin":true,"speed":1`,
		`"digits":2`:                                   `"digits":2,"speed":1`,
		`"name":"q1"`:                                  `"name":"q1","speed":1`,
		`"unit":"yd"`:                                  `"unit":"yd","speed":1`,
		`"value":"25"`:                                 `"value":25.5`,
	} {
		broken := strings.Replace(kept, was, is, 1)
		if broken == kept {
			t.Fatalf("nothing to break: %s", was)
		}
		var k Kit
		if err := json.Unmarshal([]byte(broken), &k); err == nil {
			t.Errorf("%q in place of %q is understood: %+v", is, was, k)
		}
	}
}

// What comes on top of a price is kept beside it.
func TestLandedIsKept(t *testing.T) {
	landed := strings.Replace(kept, `"price":{"name":"p1","value":"9"}}`, `"price":{"name":"p1","value":"9"},"landed":{"share":{"name":"s1","value":"1/5"}}}`, 1)
	landed = strings.Replace(landed, `"price":{"name":"p2","value":"8"}}`, `"price":{"name":"p2","value":"8"},"landed":{"share":{"name":"s2","value":"1/5"},"each":{"name":"e2","value":"1/2"}}}`, 1)
	var k Kit
	if err := json.Unmarshal([]byte(landed), &k); err != nil {
		t.Fatal(err)
	}
	if first, second := k.Fabrics[0].Landed, k.Fabrics[1].Landed; first == nil || first.Each.Name != "" || second == nil || second.Each.Value.Cmp(big.NewRat(1, 2)) != 0 || k.Things[0].Landed != nil {
		t.Errorf("%+v, %+v", first, second)
	}
	var b bytes.Buffer
	plain := json.NewEncoder(&b)
	plain.SetEscapeHTML(false)
	if err := plain.Encode(k); err != nil || b.String() != landed+"\n" {
		t.Errorf("%v\n%s\n%s", err, b.String(), landed)
	}
}
