package derive

import (
	"yardproof/pipeline/internal/say"
	"yardproof/schema/measure"
)

// TrimLoss is what squares of a tube lose when they are trimmed.
type TrimLoss struct {
	From            measure.Surd // side before
	Each            measure.Surd // lost of each side
	InRow, InColumn int64        // such squares in the fullest row of the layout, and in its fullest column
}

// TrimLoss is what the opened squares of a tube lose where a part trims them, the
// tube itself or one that trims its square; ok is false where nothing is lost. Both
// sides lose alike: a square trimmed to an oblong is none.
func (s *Size) TrimLoss(p *Part) (l TrimLoss, ok bool) {
	if s.Square(p) == nil || !p.Known || p.Room == nil {
		return l, false
	}
	for _, t := range p.Room.Trims() {
		each := t.From.Sub(t.To.Surd())
		if !t.To.Given() || each.Sign() <= 0 || ok && !each.Equal(l.Each) {
			return TrimLoss{}, false
		}
		l, ok = TrimLoss{From: t.From, Each: each}, true
	}
	l.InRow, l.InColumn = s.InRow(p, false), s.InRow(p, true)
	return l, ok
}

// trimLost says what is lost where squares of a tube are trimmed.
func (s *Size) trimLost(p *Part) []say.Sentence {
	loss, ok := s.TrimLoss(p)
	if !ok {
		return nil
	}
	note := say.That("trimmed from %s: %s off a side", say.AsThere(loss.From), say.AsCut(loss.Each))
	if loss.InRow > 1 {
		note = note.And(say.That(", %s over a row of %d", say.AsCut(loss.Each.MulInt(loss.InRow)), loss.InRow))
	}
	if loss.InColumn > 1 && loss.InColumn != loss.InRow {
		note = note.And(say.That(", %s over a column of %d", say.AsCut(loss.Each.MulInt(loss.InColumn)), loss.InColumn))
	}
	return []say.Sentence{note}
}
