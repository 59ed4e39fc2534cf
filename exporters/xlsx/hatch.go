package xlsx

import (
	"fmt"
	"strings"
)

// The library fills bars with plain colours and gives them no edge, which a
// printer without colour turns into one grey. So each series has a colour
// that only holds its place, and once the charts are made it becomes one of
// these, which are told apart in black and white.
func hatches() []string {
	plain := func(color string) string {
		return `<a:solidFill><a:srgbClr val="` + color + `"></a:srgbClr></a:solidFill>`
	}
	pattern := func(name string) string {
		return `<a:pattFill prst="` + name + `"><a:fgClr><a:srgbClr val="000000"></a:srgbClr></a:fgClr><a:bgClr><a:srgbClr val="FFFFFF"></a:srgbClr></a:bgClr></a:pattFill>`
	}
	return []string{plain("D9D9D9"), pattern("wdUpDiag"), plain("FFFFFF"), plain("595959"), pattern("dkHorz"), plain("A6A6A6"), pattern("smGrid"), plain("000000")}
}

const edge = `<a:ln w="9525"><a:solidFill><a:srgbClr val="000000"></a:srgbClr></a:solidFill></a:ln>`

// placeholder is the colour that stands for the fill of a series.
func placeholder(series int) string { return fmt.Sprintf("0A0B%02X", series%len(hatches())) }

// hatch gives the bars of all charts their fills.
func (b *book) hatch() {
	var pairs []string
	for i, fill := range hatches() {
		pairs = append(pairs, `<a:solidFill><a:srgbClr val="`+placeholder(i)+`"></a:srgbClr></a:solidFill>`, fill+edge)
	}
	replacer := strings.NewReplacer(pairs...)
	b.file.Pkg.Range(func(name, part any) bool {
		text, ok := part.([]byte)
		if path, _ := name.(string); ok && strings.HasPrefix(path, "xl/charts/") {
			b.file.Pkg.Store(name, []byte(replacer.Replace(string(text))))
		}
		return true
	})
}
