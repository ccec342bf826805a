package textpage_test

import (
	"strings"
	"testing"

	"example.org/maslin/internal/textpage"
)

// Blocks of wide letters begin and end where the Unicode Standard says (Annex 11, East Asian Width).
func TestWideBlocks(t *testing.T) {
	for _, block := range [][2]rune{{0x1100, 0x115f}, {0x2e80, 0xa4cf}, {0xac00, 0xd7a3}, {0xf900, 0xfaff},
		{0xfe30, 0xfe6f},
		{0xff00, 0xff60}, {0x1f300, 0x1faff}} {
		for r, want := range map[rune]int{block[0] - 1: 1, block[0]: 2, block[1]: 2, block[1] + 1: 1} {
			if got := textpage.Width("a" + string(r)); got != 1+want && r != 0xfe2f { // a mark that takes no column
				t.Errorf("%#x is %d columns wide, want %d", r, got-1, want)
			}
		}
	}
}

// Columns fit when the last has room as a whole, or word by word with two columns to spare where it begins in the first
// two thirds of the page.
func TestColumnsFit(t *testing.T) {
	x := func(n int) string { return strings.Repeat("x", n) }
	p := textpage.New(30)
	for name, c := range map[string]struct {
		rows [][]string
		want bool
	}{
		"as a whole":               {[][]string{{x(10), x(18)}}, true},
		"one too many":             {[][]string{{x(10), x(19)}}, false},
		"word by word":             {[][]string{{x(10), x(16) + " a"}, {"a", "b"}}, true},
		"a word too long":          {[][]string{{x(10), x(17) + " a"}}, false},
		"beginning at two thirds":  {[][]string{{x(18), x(8) + " a a"}}, true},
		"beginning after that":     {[][]string{{x(19), x(5) + " a a a"}}, false},
		"no row of so many":        {[][]string{{x(10)}, {}}, true},
		"a row of too few is none": {[][]string{{x(10), "a"}, {x(40)}}, false},
	} {
		if got := p.Fits(0, "ll", c.rows); got != c.want {
			t.Errorf("%s: fits %v", name, got)
		}
	}
}

// Two columns that have no room stand one after the other, nothing lost; so do they in ASCII, where letters may take
// more room.
func TestTwoColumnsWithoutRoom(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		p := textpage.New(24)
		p.ASCII = ascii
		p.Rows(2, "ll", [][]string{{"the first column of all", "½½½ ¾¾¾ and more of it"}, {"größer", "½ cup"}})
		text := p.String()
		for _, line := range strings.Split(text, "\n") {
			if textpage.Width(line) > 24 {
				t.Errorf("%q is wider than the page", line)
			}
		}
		want := []string{"first", "column", "½½½", "¾¾¾", "more", "größer", "cup"}
		if ascii {
			want = []string{"first", "column", "1/21/21/2", "3/43/43/4", "more", "groesser", "cup"}
		}
		for _, word := range want {
			if !strings.Contains(text, word) {
				t.Errorf("no %q in %q", word, text)
			}
		}
	}
}

// A row without all its cells takes no room of the last column: the others stand beside each other.
func TestARowOfOneCell(t *testing.T) {
	p := textpage.New(80)
	head := strings.Repeat("word ", 11) + "end."
	p.Rows(0, "rrl", [][]string{{head}, {"1", "2", "b"}})
	if want := head + "\n" + strings.Repeat(" ", 58) + "1  2  b\n"; p.String() != want {
		t.Errorf("got\n%swant\n%s", p, want)
	}
}

// The widest column of text gives way as long as sixteen columns are left of it, and its lines fill them.
func TestHowFarAColumnGivesWay(t *testing.T) {
	last := strings.Repeat("n", 26)
	text := "eight888 seven77 and a word more"
	for width, beside := range map[int]bool{44: true, 43: false} { // 16 and 15 columns, with two between
		p := textpage.New(width)
		p.Rows(0, "ll", [][]string{{text, last}})
		first, _, _ := strings.Cut(p.String(), "\n")
		if want := "eight888 seven77  " + last; (first == want) != beside {
			t.Errorf("in %d columns the first line is %q", width, first)
		}
	}
}
