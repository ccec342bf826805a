package ferment

import (
	"testing"

	"example.org/maslin/dough/working"
)

// Each number with decimals has the decimal sign of the reader and as many digits as before; the rest stays as it is.
func TestAFormulaIsToldWithTheDecimalSignOfItsReader(t *testing.T) {
	for formula, want := range map[string]string{
		"0.0124·(36 − T)^2.981·exp(−0.3355·(36 − T))": "0,0124·(36 − T)^2,981·exp(−0,3355·(36 − T))",
		"(b·(T − Tmin))²":     "(b·(T − Tmin))²",
		"max(0; T − 8.50)/6.": "max(0; T − 8,50)/6.",
		"100 % of μ and 12.5": "100 % of μ and 12,5",
		"1.2.3":               "1,2.3",
		"":                    "",
	} {
		told := formulaTold(formula)
		if got := told.Text(working.Reader{}); got != formula {
			t.Errorf("%s is told as %s", formula, got)
		}
		if got := told.Text(working.Reader{Language: working.Language{Decimal: ","}}); got != want {
			t.Errorf("%s, with a comma, is told as %s, want %s", formula, got, want)
		}
	}
}
