package jsonreport

import _ "embed"

//go:embed report.schema.json
var schemaText string

// Schema is the JSON Schema (draft-07) of what [Write] writes.
func Schema() []byte { return []byte(schemaText) }
