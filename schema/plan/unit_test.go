package plan_test

import (
	"strings"
	"testing"

	"yardproof/schema/plan"
)

// oneUnit is an invented plan of one kind of unit.
func oneUnit(operation string) string {
	return `{
  "format": 1, "id": "units", "title": "Units", "units": "in", "seam": { "allowance": "1/4" },
  "fabrics": { "ink": { "yardage": {} }, "milk": { "yardage": {} } },
  "parts": { "plain": { "cut": { "fabric": "ink", "square": 4 } }, "unit": { ` + operation + ` } },
  "layout": { "grid": { "rows": 1, "columns": 1, "blocks": [["unit", "plain"]] } },
  "sizes": { "only": {} }
}`
}

// TestUnits: what units cannot be is told where it is written; what they can
// be is read without a word.
func TestUnits(t *testing.T) {
	for operation, want := range map[string]string{
		`"hourglass": { "half_squares": ["ink", "milk"], "square": "5 1/4" }`:                                                                            "",
		`"hourglass": { "half_squares": ["ink", "milk"], "trim": "4 1/2" }`:                                                                              "",
		`"hourglass": { "half_squares": ["ink", "milk"] }`:                                                                                               plan.Missing + " /parts/unit/hourglass",
		`"hourglass": { "half_squares": "plain", "trim": 4, "trim_down_to": "1/8" }`:                                                                     plan.NotAllowed + " /parts/unit/hourglass/trim_down_to",
		`"hourglass": { "half_squares": "plain", "trim_down_to": "1/8" }`:                                                                                "",
		`"cut": { "fabric": "ink", "square": 5, "halved": "once", "used": 2 }`:                                                                           "",
		`"cut": { "fabric": "ink", "square": 5, "halved": "once", "used": 3 }`:                                                                           plan.OutOfRange + " /parts/unit/cut/used",
		`"cut": { "fabric": "ink", "square": 5, "halved": "twice", "used": 4 }`:                                                                          "",
		`"hourglass": { "half_squares": "plain" }`:                                                                                                       "",
		`"hourglass": { "half_squares": "plain", "square": 5 }`:                                                                                          plan.OutOfRange + " /parts/unit/hourglass/square",
		`"flying_geese": { "goose": "ink", "sky": "milk", "finished": [6, 3], "at_a_time": 4, "cut": { "goose": "7 1/4" } }`:                             "",
		`"flying_geese": { "goose": "ink", "sky": "milk", "finished": [6, 3], "at_a_time": 4, "cut": { "goose": [7, 4] } }`:                              plan.OutOfRange + " /parts/unit/flying_geese/cut/goose/0",
		`"flying_geese": { "goose": "ink", "sky": "milk", "finished": [6, 3], "at_a_time": 4, "bonus": "kept" }`:                                         plan.OutOfRange + " /parts/unit/flying_geese/bonus",
		`"flying_geese": { "goose": "ink", "sky": "milk", "finished": [6, 3], "bonus": "kept", "cut": { "goose": ["6 1/2", "3 1/2"] } }`:                 "",
		`"square_in_square": { "centre": "ink", "corners": "milk", "finished": 6, "bonus": "kept" }`:                                                     plan.OutOfRange + " /parts/unit/square_in_square/bonus",
		`"square_in_square": { "centre": "ink", "corners": "milk", "finished": 6, "method": "flip", "bonus": "kept" }`:                                   "",
		`"flip_corners": { "body": "plain", "bonus": "kept", "corners": { "bottom left": { "fabric": "milk", "square": 2 } } }`:                          "",
		`"flip_corners": { "body": "plain", "corners": { "bottom left": { "fabric": "milk", "square": 0 } } }`:                                           plan.BadLength + " /parts/unit/flip_corners/corners/bottom left/square",
		`"logs": { "centre": { "fabric": "ink", "finished": 2 }, "log": 1, "rounds": 4, "fabrics": { "rounds": ["milk"] } }`:                             "",
		`"logs": { "centre": { "fabric": "ink", "finished": 2 }, "log": 1, "rounds": 4, "fabrics": { "top": "ink", "right": "ink", "bottom": "milk" } }`: plan.Missing + " /parts/unit/logs/fabrics",
	} {
		p, problems := read(t, oneUnit(operation), nil)
		var got []string
		for _, pr := range problems {
			got = append(got, pr.Code+" "+p.Tree.PointerAt(pr.Range.Start))
		}
		same(t, operation, strings.Join(got, "; "), want)
	}
}

// TestFlippedCorners: corners are read clockwise from the top left, however
// the plan orders them.
func TestFlippedCorners(t *testing.T) {
	p, _ := read(t, oneUnit(`"flip_corners": { "body": "plain", "corners": {
    "bottom left": { "fabric": "milk", "square": 2 }, "bottom right": { "fabric": "ink", "square": 1 }, "top right": { "fabric": "milk", "square": 3 } } }`), nil)
	op := p.Sizes[0].Part("unit").Operation.(plan.FlipCorners)
	var got []string
	for _, c := range op.Corners {
		got = append(got, string(rune('0'+c.Place))+" "+c.Fabric.Text)
	}
	same(t, "corners", strings.Join(got, ", "), "1 milk, 2 ink, 3 milk")
}
