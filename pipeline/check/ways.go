package check

import (
	"strconv"
	"strings"

	"yardproof/pipeline/diag"
	"yardproof/schema/amend"
	"yardproof/schema/source"
)

// text is the plan's own text, for the edits that a finding tells.
func (p *Pass) text() amend.Text { return amend.Of(p.Plan.File, p.Plan.Tree) }

// mend is a way out of edits that mend what is found.
func mend(edits ...diag.Edit) diag.Way { return diag.Way{Kind: source.Mend, Edits: edits} }

// advise is a way out that cannot be written into the plan, as a verb phrase.
func advise(says string) diag.Way { return diag.Way{Kind: source.Advice, Says: says} }

// put is the edit that writes a JSON value in the place of the plan's value at a range.
func (p *Pass) put(verb string, at source.Range, value string) diag.Edit {
	return p.text().Put(at, value).With(verb)
}

// putCount is the edit that writes a count. What the plan writes as a text stays one.
func (p *Pass) putCount(verb string, at source.Range, n int64) diag.Edit {
	value := strconv.FormatInt(n, 10)
	if strings.HasPrefix(p.Plan.File.Slice(at), `"`) {
		value = amend.Quote(value)
	}
	return p.put(verb, at, value)
}
