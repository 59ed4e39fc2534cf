package words

import "strings"

// tableRow reports whether a line is a row of a Markdown table.
func tableRow(text string) bool { return strings.HasPrefix(text, "|") || strings.Count(text, "|") > 1 }

// table reads a Markdown table that begins at line i, and gives the line after it.
func (r *reader) table(i int) int {
	var columns [][]token
	for first := true; i < len(r.lines) && tableRow(strings.TrimSpace(r.lines[i].text)); i++ {
		l := r.lines[i]
		if strings.Trim(l.text, "|:-= \t") == "" {
			continue
		}
		cells := l.cells()
		if first {
			columns, first = cells, false
			for _, c := range cells {
				r.add(passage{tokens: c})
			}
			continue
		}
		r.row(cells, columns)
	}
	return i
}

// cells are the tokens of each cell of a row.
func (l textLine) cells() [][]token {
	text := strings.TrimRight(l.text, " \t")
	from := 0
	if at := strings.IndexByte(text, '|'); at >= 0 && strings.TrimSpace(text[:at]) == "" {
		from = at + 1
	}
	var cells [][]token
	for from <= len(text) {
		end := strings.IndexByte(text[from:], '|')
		if end < 0 {
			if strings.TrimSpace(text[from:]) != "" {
				cells = append(cells, lex(text[from:], l.base+from, l.n))
			}
			break
		}
		cells = append(cells, lex(text[from:from+end], l.base+from, l.n))
		from += end + 1
	}
	return cells
}

// row makes segments of a row: one of the label, which is all that is not below
// the name of a size, and one of every cell, the label before it.
func (r *reader) row(cells, columns [][]token) {
	var label []token
	var own []int
	for i, c := range cells {
		if i < len(columns) && r.sizes(columns[i]) > 0 || i > 0 && !r.anySize(columns) && i < len(columns) {
			own = append(own, i)
			continue
		}
		if len(label) > 0 && len(c) > 0 {
			label = append(label, token{kind: mark, text: "/", at: c[0].at, loose: true, line: c[0].line})
		}
		label = append(label, c...)
	}
	if len(label) > 0 {
		r.add(passage{tokens: label})
	}
	for _, i := range own {
		if len(cells[i]) == 0 {
			continue
		}
		r.add(behind(label, cells[i], columns[i]))
	}
}

func (r *reader) anySize(columns [][]token) bool {
	for _, c := range columns {
		if r.sizes(c) > 0 {
			return true
		}
	}
	return false
}

// behind is a cell with the label of its row before it.
func behind(label, cell, column []token) passage {
	s := passage{column: head(column)}
	label = head(label)
	if len(label) > 0 {
		colon := token{kind: mark, text: ":", at: cell[0].at, loose: false, line: cell[0].line}
		s.tokens = append(append(s.tokens, label...), colon)
	}
	s.lent = len(s.tokens)
	s.tokens = append(s.tokens, cell...)
	return s
}

// apart parts the tokens of a line where there is room between columns.
func apart(tokens []token) [][]token {
	var cells [][]token
	start := 0
	for i := range tokens {
		if i > start && tokens[i].wide && !tokens[i-1].is(".", "!", "?", ":") {
			cells = append(cells, tokens[start:i])
			start = i
		}
	}
	return append(cells, tokens[start:])
}

// header takes a line of nothing but names of sizes for the heading of the
// columns below it.
func (r *reader) header(tokens []token) bool {
	cells := apart(tokens)
	if len(cells) == 1 && len(tokens) > 0 && !tokens[0].loose {
		return false
	}
	for _, c := range cells {
		if len(c) > 3 || r.sizes(c) == 0 {
			return false
		}
	}
	if len(cells) < 2 {
		return false
	}
	r.flush()
	r.columns = cells
	return true
}

// cells makes segments of a line that is set in columns.
func (r *reader) cells(cells [][]token) {
	if len(cells) == len(r.columns)+1 {
		r.row(cells, append([][]token{nil}, r.columns...))
		return
	}
	if last := cells[len(cells)-1]; len(last) > 0 && r.sizes(last) > 0 && len(r.columns) == 0 {
		columns := cells[1:]
		all := len(columns) > 1
		for _, c := range columns {
			all = all && r.sizes(c) > 0
		}
		if all {
			r.add(passage{tokens: cells[0]})
			r.columns = columns
			return
		}
	}
	r.add(passage{tokens: cells[0]})
	for _, c := range cells[1:] {
		r.add(behind(cells[0], c, nil))
	}
}
