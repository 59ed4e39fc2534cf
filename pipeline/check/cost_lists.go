package check

import "yardproof/pipeline/diag"

// listChecks are found while a price list is read, and what the project says of
// its suppliers is held against it.
var listChecks = []Check{
	{
		Rule: "cost/dearer-break", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "an article costs more where more of it is bought",
		Why:     "Suppliers ask less for more. A list with 6.00 a yard, and 6.60 from 30 yd on, has two prices in each other's rows or a slip in one of them.",
		Fix:     "correct the price, or what it is from",
	},
	{
		Rule: "cost/landed-supplier", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "what the project says of landed cost does not fit the supplier's articles",
		Why:     "Freight and duty are found by the supplier's name. A name that the price list writes otherwise finds none, and kits and orders cost what the list says; and what is sold by the pack has no length to share freight by.",
		Fix:     "write the supplier as the price list does, and share by value where articles are sold by the piece",
	},
	{
		Rule: "cost/price-of-0", Level: diag.Warning, Since: "0.1.0", Scope: Reading,
		Summary: "the price list gives an article away",
		Why:     "A price that nobody filled in reads as 0.00: the kit's 34.00 strip roll costs nothing, and every margin with it is too good.",
		Fix:     "fill the price in; where the article is free indeed, accept the finding",
	},
}
