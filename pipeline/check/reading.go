package check

import "yardproof/pipeline/diag"

// readingChecks are found while the text of a file is read. Package schema
// and its neighbours report them as problems under these names.
var readingChecks = []Check{
	{
		Rule: "cost/currency-mixed", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a price is in another currency than the project's",
		Why:     "Prices of two currencies added up are an amount of neither: 6.00 USD and 6.00 EUR are not 12.00 of anything, and every kit of both is priced wrongly.",
		Fix:     "give the price in the project's currency, at the rate that was paid",
	},
	{
		Rule: "cost/price-list", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a row of the price list cannot be used",
		Why:     "A price that is read wrongly goes into every kit that uses the fabric.",
		Fix:     "mend the row: columns sku, description, unit (yd, m, half-m, pack, roll, spool or each) and price, one row a sku",
	},
	{
		Rule: "cost/stale-price", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "prices of the list are of long ago",
		Why:     "Mills change their prices once or twice a year. A kit of 3 yd priced at last year's 6.00 earns 3.00 less than planned once the yard costs 7.00.",
		Fix:     "ask the supplier, and date the price anew",
	},
	{
		Rule: "cost/stock-list", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a row of the stock list cannot be used",
		Why:     "What is on the shelf is not ordered. A part-bolt that is counted wrongly is missed on cutting day, when the bolts are there and the kits are promised.",
		Fix:     "mend the row: columns item, quantity and unit, one row for each piece of fabric and for each size's packed kits",
	},
	{
		Rule: "project/edition", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the figures of the last edition cannot be read",
		Why:     "What has changed since the last edition can only be told against figures that are as they were published. A row that was typed over tells of a change that never was.",
		Fix:     "keep the line.csv of the edition's export as it was written",
	},
	{
		Rule: "project/expired-exception", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "an accepted exception has run out",
		Why:     "It was accepted for a time, and the time is over: what it covered is told again. Left standing it would be taken for one that still holds.",
		Fix:     "mend what it covered and remove the exception, or look at it again and give it a later day",
	},
	{
		Rule: "project/unmatched-exception", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "an accepted exception matches no finding",
		Why:     "An exception that matches nothing was mended, or names the wrong place. Left standing it will one day hide something new.",
		Fix:     "remove the exception, or correct its rule, plan or pointer",
	},
	{
		Rule: "schema/date", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a day is not in the calendar",
		Why:     "An exception that ends on 31 June would end on a day that somebody has to guess.",
		Fix:     "write year, month and day: 2027-06-30",
	},
	{
		Rule: "schema/duplicate-key", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "an object has the same key twice",
		Why:     "Programs disagree on which of the two counts, so one of them is silently lost.",
		Fix:     "keep one of the two",
	},
	{
		Rule: "schema/empty-file", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the file holds nothing",
		Why:     "An empty plan usually means a save that went wrong; it must not pass as a plan without faults.",
		Fix:     "restore the plan, or remove the file",
	},
	{
		Rule: "schema/encoding", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the file is not plain UTF-8, or holds a character that cannot be shown",
		Why:     "JSON is exchanged as UTF-8 without a byte-order mark (RFC 8259, section 8.1). Other encodings turn fractions and accents into something else. A control character in a title ends a cell, or moves a terminal's cursor, wherever the title is printed.",
		Fix:     "save the file as UTF-8 without a byte-order mark, and leave out control characters",
	},
	{
		Rule: "schema/length", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a length cannot be read, or must be more than nothing",
		Why:     "2 1/2 read as 21/2 is ten and a half inches. A length that can be read two ways is not guessed at.",
		Fix:     "write the length as 2.5, \"2 1/2\", \"2 1/2 in\" or \"6.5 cm\"",
	},
	{
		Rule: "schema/missing", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "something that every plan must say is missing",
		Why:     "What is not said cannot be proved.",
		Fix:     "add the key",
	},
	{
		Rule: "schema/money", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a sum of money cannot be read",
		Why:     "1.234 and 1,234 are different prices in different countries. An amount is not guessed at.",
		Fix:     "write it with a decimal point and without currency or thousands marks: 12.50",
	},
	{
		Rule: "schema/not-allowed", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a word stands where only certain others may",
		Why:     "A misspelt choice would otherwise fall back to a default that nobody asked for.",
		Fix:     "use one of the words listed",
	},
	{
		Rule: "schema/not-checked", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the file could not be held against the schema",
		Why:     "A file that was not checked must not pass as one that was.",
		Fix:     "simplify the value that is pointed at, and report the file",
	},
	{
		Rule: "schema/not-derived-yet", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the plan uses something that yardproof cannot derive yet",
		Why:     "The schema already has words for more than this version can work out. A plan that uses them is refused: to pass it would be to call it proved.",
		Fix:     "write the part another way, or keep the plan as a draft until a later version",
	},
	{
		Rule: "schema/not-json", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the text is not JSON",
		Why:     "A missing comma or bracket makes the rest of the file unreadable.",
		Fix:     "mend the text at the place shown; JSON has no comments and no comma after the last item",
	},
	{
		Rule: "schema/number", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a number is too long or its exponent too large",
		Why:     "No length in a quilt needs sixty-four digits; such a number is a slip or an attack.",
		Fix:     "write the number plainly",
	},
	{
		Rule: "schema/off-tick", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a length is no whole tick of any ruler",
		Why:     "Every 1/64 in, two-decimal inch and 0.01 mm is exact here. A third of an inch is none of them: nobody can cut it, and it would have to be rounded behind your back.",
		Fix:     "use one of the neighbours named",
	},
	{
		Rule: "schema/one-of", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "of several keys exactly one must be given",
		Why:     "A part that is both a cut and a strip set is neither.",
		Fix:     "keep one of the keys listed",
	},
	{
		Rule: "schema/out-of-range", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a number, text or list is too small, too large, too short or too long",
		Why:     "A layout of no rows has nothing to prove, and one of a million was never meant.",
		Fix:     "stay inside the limits named",
	},
	{
		Rule: "schema/outside-folder", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a path leads out of the project's folder",
		Why:     "A pattern repository is handed on whole; what lies outside it is not there for the next person, and may be somebody else's.",
		Fix:     "keep the file beside the project file or in a folder below it",
	},
	{
		Rule: "schema/percent", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a share cannot be read",
		Why:     "3 and 3% and 0.03 are three different things to three people.",
		Fix:     "write it as \"3%\", with at most two decimals",
	},
	{
		Rule: "schema/removes-nothing", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a size takes away something that is not there",
		Why:     "null in a size's patch removes a key (RFC 7396). A key that does not exist is usually misspelt, and what was to be removed is still there.",
		Fix:     "correct the key, or leave the line out",
	},
	{
		Rule: "schema/reserved-id", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "an id is a name that some systems keep for themselves",
		Why:     "The id becomes a folder's name. On Windows no folder can be called con, nul or com1.",
		Fix:     "choose another id",
	},
	{
		Rule: "schema/too-deep", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "brackets are nested too deeply",
		Why:     "No plan nests sixty-four deep; a file that does is broken or hostile.",
		Fix:     "remove the nesting",
	},
	{
		Rule: "schema/too-large", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "the file is too large for a plan",
		Why:     "A plan is a few kilobytes. A file of many megabytes is something else under the wrong name.",
		Fix:     "check what the file is",
	},
	{
		Rule: "schema/trailing-text", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "text follows after the plan's closing brace",
		Why:     "Two plans in one file, or a brace too many: either way something is not read.",
		Fix:     "keep one plan a file and remove the rest",
	},
	{
		Rule: "schema/unknown-key", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a key is not part of the format",
		Why:     "A misspelt key is not read, and the default takes its place without a word.",
		Fix:     "correct the key; the nearest known one is named",
	},
	{
		Rule: "schema/unknown-size", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "printed figures are given for a size that the plan does not have",
		Why:     "Figures for a size that does not exist are compared with nothing.",
		Fix:     "correct the size's name, or add the size",
	},
	{
		Rule: "schema/wrong-type", Level: diag.Error, Since: "0.1.0", Scope: Reading,
		Summary: "a value is of the wrong kind",
		Why:     "A list where a name is expected cannot be read as one.",
		Fix:     "write the kind of value that is named",
	},
}

// runningChecks say that yardproof could not do its work. Those that are errors
// end the program with exit status 3, whatever else was found.
var runningChecks = []Check{
	{
		Rule: "run/crash", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "yardproof itself stopped on this plan",
		Why:     "A fault in yardproof, not in the plan. What was not looked at must not pass as proved.",
		Fix:     "report it, with the plan",
	},
	{
		Rule: "run/interrupted", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "the run was interrupted before it was done",
		Why:     "Plans that were not reached were not checked. Files already written are whole.",
		Fix:     "run it again",
	},
	{
		Rule: "run/link-loop", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a link leads back to itself",
		Why:     "Following it would never end.",
		Fix:     "remove the link, or point it at a file",
	},
	{
		Rule: "run/link-outside", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a link leads out of the line, and was not followed",
		Why:     "The line is the folder of its project file, or else what is named on the command line. A link out of it may lead to a whole disk, and to files that are not there on another machine; fmt would write there. What is named on the command line is followed.",
		Fix:     "put a copy of what is meant in the place of the link, or name it on the command line",
	},
	{
		Rule: "run/missing", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a path that was named does not exist",
		Why:     "A check of nothing must not look like a check without findings.",
		Fix:     "correct the path",
	},
	{
		Rule: "run/no-lock", Level: diag.Warning, Since: "0.1.0", Scope: Running,
		Summary: "the output folder is on a file system without locks",
		Why:     "Two runs that write to one folder at the same time would take each other's files for those of a run that was killed. Where they cannot be kept apart nothing is removed, not even what is out of date.",
		Fix:     "let one run at a time write to the folder, or write to a folder of another file system",
	},
	{
		Rule: "run/changed-output", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "an output was left as it is, because yardproof did not write it so",
		Why:     "Somebody put a price into the workbook, or keeps a file of that name in the folder. It is not lost without a word; but it is not what the plan says, either.",
		Fix:     "rename it to keep it, or delete it; --overwrite replaces all such files",
	},
	{
		Rule: "run/no-result", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a result that is to be gathered is missing, of something else, or unreadable",
		Why:     "A line that is put together of old or foreign results is not what one run would find.",
		Fix:     "export the plan with --results again, with the same version of yardproof, and gather that",
	},
	{
		Rule: "run/no-plan", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "no plan was found",
		Why:     "A check of nothing must not look like a check without findings.",
		Fix:     "name a *.plan.json file, or a folder that holds one",
	},
	{
		Rule: "run/not-regular", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a plan is not an ordinary file",
		Why:     "A pipe or device may never end, and cannot be read twice.",
		Fix:     "save the plan as an ordinary file",
	},
	{
		Rule: "run/unreadable", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "a file or folder could not be read",
		Why:     "What was not read was not checked.",
		Fix:     "allow it to be read",
	},
	{
		Rule: "run/write", Level: diag.Error, Since: "0.1.0", Scope: Running,
		Summary: "an output could not be written",
		Why:     "The earlier output, if there was one, is still there and may be out of date. One run at a time writes to a folder.",
		Fix:     "see that the disk has room and that the folder may be written to, or wait for the other run to end; then run yardproof again",
	},
}
