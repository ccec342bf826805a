package cli

import "testing"

// Lines are as wide as the terminal, up to a hundred columns: longer ones are hard to read.
func TestLinesAreNeverWiderThanAHundredColumns(t *testing.T) {
	for _, line := range []string{"bulk --prefermented 9% --dough 25C --room 21C --working",
		"oven --style bagel --pieces 14 --dough 110g"} {
		wide := told("300", shellWords(line)...)
		if hundred := told("100", shellWords(line)...); wide != hundred {
			t.Errorf("%s: at 300 columns\n%s\nat 100\n%s", line, wide, hundred)
		}
		if narrow := told("99", shellWords(line)...); narrow == wide {
			t.Errorf("%s: at 99 columns as at 100", line)
		}
	}
}
