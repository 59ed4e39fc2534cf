package check

import "yardproof/pipeline/diag"

// wordsChecks are about the text of a pattern, which package words reads.
var wordsChecks = []Check{
	{
		Rule: "words/disagrees", Level: diag.Error, Since: "0.1.0", Scope: Text,
		Summary: "a number in the pattern's text is not that of the plan",
		Why:     "The plan is proved, and the customer reads the text. A text that says 6 strips for the border where 7 go round the quilt leaves her one strip short, with the fabric already cut.",
		Fix:     "write the figure that the plan has, or correct the plan if the text is right",
	},
	{
		Rule: "words/not-placed", Level: diag.Note, Since: "0.1.0", Scope: Text,
		Summary: "it could not be told which figure of the plan a number in the text states",
		Why:     "What is not held against the plan is not proved. A number that names nothing near it, such as 'cut 4 more', may be right or wrong.",
		Fix:     "check the number by hand, or name what it counts: the fabric, the part, the size",
	},
	{
		Rule: "words/plan-errors", Level: diag.Warning, Since: "0.1.0", Scope: Text,
		Summary: "the text was held against a plan that has errors",
		Why:     "Figures that cannot be derived are not compared, and others follow from what is wrong: a text can agree with them and be as wrong as they are.",
		Fix:     "mend what `yardproof check` finds in the plan, and read the text again",
	},
	{
		Rule: "words/too-large", Level: diag.Error, Since: "0.1.0", Scope: Text,
		Summary: "the text is too large to be the text of a pattern",
		Why:     "A text of many megabytes is something else: a picture, or a whole folder put into one file.",
		Fix:     "name the text of one pattern",
	},
}

// Words is a finding about a pattern's text.
func Words(rule, plan string, at diag.Place, message, hint string) diag.Finding {
	return diag.Finding{Rule: rule, Level: byRule[rule].Level, Plan: plan, Place: at, Message: message, Hint: hint}
}
