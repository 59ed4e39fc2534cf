package main

import "yardproof/schema/measure"

// classes are the moves that may draw nothing, each with the reason. None is a
// shortage: what is told to be bought, cut or made is never less than it was.
var classes = map[string]string{
	"turned":         "a backing or batting with its sides exchanged covers the quilt when it is turned",
	"to the inch":    "a backing or batting may be printed as rounded up to the whole inch or centimetre",
	"a spool":        "thread is bought by the spool, so that up to 100 m more than the seams take is no surplus",
	"what comes out": "more of a part may be printed than the layout calls for, where so many come out of whole strip sets, tubes or squares",
}

// class is which of them a move is of, empty where it is of none.
func (m move) class() string {
	covers := m.fig.kind == "backing" || m.fig.kind == "batting"
	switch {
	case covers && m.how == exchanged:
		return "turned"
	case covers && m.how == stepUp && m.fig.length+m.fig.step <= measure.CeilTo(m.fig.length, m.of.plan.Units.Length()):
		return "to the inch"
	case m.fig.kind == "thread" && m.more && m.becomes-m.fig.length <= 100*measure.Metre:
		return "a spool"
	case m.fig.kind == "parts" && m.more && m.how != doubled:
		return "what comes out"
	}
	return ""
}
