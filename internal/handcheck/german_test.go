package handcheck

import (
	"strings"
	"testing"
)

const toldInGerman = `Wasser
======

1. Wärme
   Q_Kneten = min(d; 4,5) × T_Mehl
   wobei
     d       3,25 Δ°C  wie viel wärmer der Teig nach einem sehr langen Kneten
       wird, aus Schritt 1
     T_Mehl  21 °C  Mehl
   Q_Kneten = min(3,25; 4,5) × 21
   Q_Kneten ≈ 68,3
   Q_Kneten, gerundet: 70
   Anmerkung: bis 10, nach oben
   Quelle: Rechnen mit den Werten oben

2. Ofen
   t_Ofen = t_Ende − b
   wobei
     t_Ende  So 00:30  Brot ist gewünscht
     b       75 min (1 h 15 min)  Backen
   t_Ofen = So 00:30 − 75 min
   t_Ofen = Sa 23:15
   Quelle: Rechnen mit den Werten oben
`

func TestGermanIsReadLikeEnglish(t *testing.T) {
	english := FromGerman(toldInGerman, 80)
	faults, counts := Faults(english, 1<<20)
	if len(faults) != 1 || !strings.Contains(faults[0], "not found in step 1") || counts.Steps != 2 || counts.Lines != 2 ||
		len(counts.Bare) != 0 {
		t.Errorf("%v, %v in\n%s", faults, counts, english)
	}
	for _, want := range []string{"note: bis 10", "source: Rechnen", "Q_Kneten, rounded: 70", "min(3.25, 4.5) × 21",
		"wird, from step 1", "Sun 00:30 − 75 min", "= Sat 23:15", "75 min (1h15m)"} {
		if !strings.Contains(english, want) {
			t.Errorf("no %q in\n%s", want, english)
		}
	}
	wrong, _ := Faults(FromGerman(strings.Replace(toldInGerman, "68,3", "68,4", 1), 80), 1<<20)
	if len(wrong) != 2 {
		t.Errorf("a wrong German number passes: %v", wrong)
	}
}

// Days are told with a letter in German.
func TestGermanDays(t *testing.T) {
	for german, want := range map[string]string{
		"weggeworfen nach 4 d": "96 h", "reif nach 4 d 22h02m": "7082 min", "nach 2 d 6 h 30 min": "54.5 h",
	} {
		v, ok := ReadValue(want)
		if page := FromGerman(german, 80); !ok || !OnScreen(page, v) {
			t.Errorf("%q, read as %q, has no %s", german, page, want)
		}
	}
}
