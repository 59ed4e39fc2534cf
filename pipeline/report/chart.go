package report

// Chart is a bar chart of some rows of a table, drawn by whatever shows the
// table, so that it follows when an input is changed.
type Chart struct {
	ID    string // file-name safe, unique within its sheet
	Title string
	About string // what it shows, in sentences, for those who cannot see it

	Table    string   // ID of a table of the same sheet
	From, To int      // the rows it shows, To excluded
	Label    string   // ID of the column that names the rows
	Values   []string // IDs of the columns of numbers

	Across  bool   // a row is a series, and its columns are the bars; else a column is
	Stacked bool   // the bars of all series lie end to end
	Axis    string // what the bars measure, and in what: "EUR a kit"
}
