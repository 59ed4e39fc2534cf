// Package buyer follows a size's printed figures as somebody does who has
// nothing else: she buys what is printed, straightens it, cuts the printed
// strips at their widths, sews the printed sets and tubes, cuts them up as
// printed, joins the printed strips and cuts borders, binding and backing at
// the printed sizes. Where nothing is printed she goes by the recipe. [Follow]
// tells where she first cannot go on.
//
// A figure that is less than the recipe takes is the business of the rules
// that compare it with the recipe; here it counts as not printed. So what is
// found here are printed figures that contradict each other. Strips across the
// fabric are a plain sum of their widths; where pieces could be laid cleverly, she
// stops only below a proved bound.
//
// It knows nothing of rules and words. Start reading at follow.go; sewing.go is
// her work at the machine, cloth.go and packs.go that at the cutting table.
package buyer
