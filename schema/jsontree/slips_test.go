package jsontree

import "testing"

// The slips that people make, and machines: each has its own words at its own place.
func TestSlips(t *testing.T) {
	checkProblems(t, []problemCase{
		{"trailing comma in an object", "{\n  \"a\": 1,\n}", `2:9 schema/not-json ",": a comma stands before the } that closes the object; remove the comma`},
		{"trailing comma in an array", `[1, 2, ]`, `1:6 schema/not-json ",": a comma stands before the ] that closes the array; remove the comma`},
		{"trailing comma before the wrong bracket", `[1, }`, `1:5 schema/not-json "}": } meets the array that opens at line 1, column 1; ] was wanted; close the array with ], or remove the }`},
		{"two commas", `[1,, 2]`, `1:4 schema/not-json ",": two commas with nothing between them; remove one of them`},
		{"comma first in an array", `[,1]`, `1:2 schema/not-json ",": , where a value was wanted; write the value, or remove the ,`},
		{"comma first in an object", `{,"a":1}`, `1:2 schema/not-json ",": a comma with no member before it; remove the comma`},

		{"missing comma between lines", "{\r\n\t\"½\": \"a\"\r\n\t\"b\": 2}", `2:10 schema/not-json "": no comma between this and the next name of the object; write a comma here`},
		{"missing comma between strings", `["a" "b"]`, `1:5 schema/not-json "": no comma between this and the next item of the array; write a comma here`},
		{"missing comma between numbers", `[1 2]`, `1:3 schema/not-json "": no comma between this and the next item of the array; write a comma here`},
		{"missing comma between arrays", "[[1]\n[2]]", `1:5 schema/not-json "": no comma between this and the next item of the array; write a comma here`},
		{"missing comma after a number", "{\"a\": 1 \"b\": 2}", `1:8 schema/not-json "": no comma between this and the next name of the object; write a comma here`},
		{"semicolon", `{"a": 1; "b": 2}`, `1:8 schema/not-json ";": a semicolon; a comma was wanted; write , instead of ;`},

		{"single quotation marks on a name", `{'a': 1}`, `1:2 schema/not-json "'": a single quotation mark; JSON takes the double one, "; write " at both ends of the text`},
		{"single quotation marks on a value", `{"a": 'x'}`, `1:7 schema/not-json "'": a single quotation mark; JSON takes the double one, "; write " at both ends of the text`},
		{"curly quotation marks", `{"é": “x”}`, `1:7 schema/not-json "“": the quotation mark “; JSON takes the straight double one, "; write " at both ends of the text`},
		{"curly quotation marks on a name", `{„a“: 1}`, `1:2 schema/not-json "„": the quotation mark „; JSON takes the straight double one, "; write " at both ends of the text`},
		{"name without quotation marks", `{a: 1}`, `1:2 schema/not-json "a": the name a is not in double quotation marks; write "a"`},
		{"later name without quotation marks", `{"a": 1, b_c: 1}`, `1:10 schema/not-json "b_c": the name b_c is not in double quotation marks; write "b_c"`},
		{"number as a name", `{12: 1}`, `1:2 schema/not-json "12": the name 12 is not in double quotation marks; write "12"`},
		{"object as a name", `{{}: 1}`, `1:2 schema/not-json "{": { where a name in double quotation marks was wanted; remove it, or write the name`},

		{"line comment", "{\n  // seam\n  \"a\": 1}", `2:3 schema/not-json "// seam": a comment; JSON has none; remove it, or keep the words in a description`},
		{"block comment after a number", "{\"a\": 1 /* in\n */}", `1:9 schema/not-json "/* in\n */": a comment; JSON has none; remove it, or keep the words in a description`},
		{"hash comment", "# plan\n{}", `1:1 schema/not-json "# plan": a comment; JSON has none; remove it, or keep the words in a description`},

		{"mixed number", `{"a": 2 1/2, "b": 1}`, `1:7 schema/not-json "2 1/2": the value 2 1/2 is more than a number and has no quotation marks; put the whole value in double quotation marks`},
		{"fraction in an array", `[1/4, 2]`, `1:2 schema/not-json "1/4": the value 1/4 is more than a number and has no quotation marks; put the whole value in double quotation marks`},
		{"mixed number in an array", `[2 1/2]`, `1:2 schema/not-json "2 1/2": the value 2 1/2 is more than a number and has no quotation marks; put the whole value in double quotation marks`},
		{"unit", "{\"a\": 6.5 cm\n}", `1:7 schema/not-json "6.5 cm": the value 6.5 cm is more than a number and has no quotation marks; put the whole value in double quotation marks`},
		{"fraction sign", `{"a": 2½}`, `1:7 schema/not-json "2½": the value 2½ is more than a number and has no quotation marks; put the whole value in double quotation marks`},
		{"inch mark without quotation marks", `{"a": 12"}`, `1:7 schema/not-json "12\"": the value 12" is more than a number and has no quotation marks; put the whole value in double quotation marks, with in for inches`},
		{"inch mark in a string", `{"a": "2 1/2""}`, `1:13 schema/not-json "\"": the string "2 1/2" ends here, but more text follows at once; write in for inches, or \" for a quotation mark inside a string`},
		{"inch mark within a string", `["a 12"ruler"]`, `1:7 schema/not-json "\"": the string "a 12" ends here, but more text follows at once; write in for inches, or \" for a quotation mark inside a string`},
		{"quotation mark in a name", `{"a"": 1}`, `1:4 schema/not-json "\"": the string "a" ends here, but more text follows at once; write in for inches, or \" for a quotation mark inside a string`},
		{"half an exponent", `{"a": 1e, "b": 2}`, `1:7 schema/not-json "1e": 1e is not a JSON value; write a plain number, or put the text in double quotation marks`},
		{"decimal comma", `{"a": 2,5}`, `1:7 schema/not-json "2,5": the value 2,5 has a decimal comma; write the number with a point`},
		{"leading zero", `{"a": 01}`, `1:7 schema/not-json "01": the number 01 begins with a zero; leave the zero out, or put it in double quotation marks`},
		{"no digit before the point", `{"a": .5}`, `1:7 schema/not-json ".5": .5 is not a JSON value; write a 0 before the point`},
		{"no digit after the point", `{"a": 5.}`, `1:7 schema/not-json "5.": 5. is not a JSON value; write a digit after the point, or leave the point out`},
		{"plus sign", `{"a": +5}`, `1:7 schema/not-json "+5": +5 is not a JSON value; write the number without the +`},

		{"word for true", `{"a": True}`, `1:7 schema/not-json "True": True is not a JSON value; write true`},
		{"word for null", `{"a": None}`, `1:7 schema/not-json "None": None is not a JSON value; write null, or leave the member out`},
		{"no number", `{"a": -Infinity}`, `1:7 schema/not-json "-Infinity": -Infinity is not a JSON value; write a number; JSON has none for this`},
		{"word", `{"a": roll}`, `1:7 schema/not-json "roll": roll is not a JSON value; put text in double quotation marks`},

		{"no colon", `{"a" 1}`, `1:5 schema/not-json "": no colon after the name "a"; write a colon and a value after it`},
		{"name that a terminal would act on", "{\"\u202e\u2028\" 1}", `1:6 schema/not-json "": no colon after the name "\"\u202e\u2028\""; write a colon and a value after it`},
		{"equals sign", `{"a" = 1}`, `1:6 schema/not-json "=": = stands after the name "a"; a colon was wanted; write : instead of =`},
		{"list in an object", `{"a", "b"}`, `1:5 schema/not-json "": no colon after the name "a"; write a colon and a value after it`},
		{"no value", `{"a": , "b": 1}`, `1:7 schema/not-json ",": no value after the name "a"; write its value, or remove the name`},
		{"no value at the end", `{"a": }`, `1:7 schema/not-json "}": no value after the name "a"; write its value, or remove the name`},
		{"member in an array", "[\"a\",\n \"b\": 1]", `2:2 schema/not-json "\"b\"": the name "b" stands in the array that opens at line 1, column 1; close the array with ] before it`},
		{"two colons", `{"a": "b": 1}`, `1:10 schema/not-json ":": ":" after a value; a comma or } was wanted; remove it, or put it in double quotation marks`},

		{"string over lines", "{\"a\": \"x\r\n\"}", `1:7 schema/not-json "\"x": the string that begins here is not closed on its line; close it with ", or write \n for a line break inside it`},
		{"tab in a string", "{\"a\": \"½\tx\"}", `1:9 schema/not-json "\t": the control character U+0009 stands inside a string, after "½"; write \t instead`},
		{"NUL in a string", "{\"a\": \"\x00\"}", `1:8 schema/not-json "\x00": the control character U+0000 stands inside a string; write \u0000 instead`},
		{"backslash", `{"a": "C:\dir"}`, `1:10 schema/not-json "\\d": \d is not an escape that JSON knows; write \\ for a backslash; the escapes are \" \\ \/ \b \f \n \r \t and \u with four hexadecimal digits`},
		{"short escape", `{"\n\u12": 1}`, `1:5 schema/not-json "\\u12": \u12 is not an escape that JSON knows; write \\ for a backslash; the escapes are \" \\ \/ \b \f \n \r \t and \u with four hexadecimal digits`},
		{"no-break space", "{\u00a0\"a\": 1}", `1:2 schema/not-json "\u00a0": the invisible character U+00A0 stands outside a string; remove it, or write a plain space`},
		{"zero-width space", "[1,\u200b2]", `1:4 schema/not-json "\u200b": the invisible character U+200B stands outside a string; remove it, or write a plain space`},
		{"NUL after a bracket", "[\x00]\n", `1:2 schema/not-json "\x00": the invisible character U+0000 stands outside a string; remove it, or write a plain space`},
	}, false)
}

func TestUnclosed(t *testing.T) {
	checkProblems(t, []problemCase{
		{"object", "{\n  \"a\": 1\n\n", `2:9 schema/not-json "": the file ends before the object that opens at line 1, column 1 is closed; write the missing }`},
		{"array", "{\n  \"é\": [1, 2", `2:13 schema/not-json "": the file ends before the array that opens at line 2, column 8 is closed; write the missing ]`},
		{"after a comma", `[1,`, `1:4 schema/not-json "": the file ends before the array that opens at line 1, column 1 is closed; write the missing ]`},
		{"after a name", `{"a"`, `1:5 schema/not-json "": the file ends before the object that opens at line 1, column 1 is closed; write the missing }`},
		{"after a colon", `{"a":`, `1:6 schema/not-json "": the file ends before the object that opens at line 1, column 1 is closed; write the missing }`},
		{"in a string", `{"a": "x`, `1:7 schema/not-json "\"x": the file ends before the string that begins here is closed; close it with "`},
		{"in a word", `{"a": fal`, `1:7 schema/not-json "fal": the file ends in the middle of fal; write the rest of the file`},
		{"in a number", `[-`, `1:2 schema/not-json "-": the file ends in the middle of -; write the rest of the file`},
		{"bracket missing far above, shown by the indentation", "{\n  \"grid\": {\n    \"rows\": {\n      \"a\": 1\n  },\n  \"b\": 2\n}\n",
			`7:2 schema/not-json "": the file ends before the object that opens at line 1, column 1 is closed; write the missing bracket, perhaps before line 5, where the object from line 3 is closed further left than it begins`},
		{"wrong bracket", "{\n  \"a\": [1, 2\n}", `3:1 schema/not-json "}": } meets the array that opens at line 2, column 8; ] was wanted; close the array with ], or remove the }`},
		{"wrong bracket at once", "{]", `1:2 schema/not-json "]": ] meets the object that opens at line 1, column 1; } was wanted; close the object with }, or remove the ]`},
		{"wrong bracket where an item was wanted", "[\n}", `2:1 schema/not-json "}": } meets the array that opens at line 1, column 1; ] was wanted; close the array with ], or remove the }`},
		{"closing bracket alone", "]", `1:1 schema/not-json "]": ] where a value was wanted; write the value, or remove the ]`},
	}, false)
}
