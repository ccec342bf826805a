package bakeday_test

import (
	"strings"
	"testing"

	"example.org/maslin/schedule/bakeday"
)

// Whoever mistypes a weekday, or writes am or pm, is told the form with a weekday and that hours run to 24.
func TestWishesSayWhatIsAccepted(t *testing.T) {
	for _, text := range []string{"Saterday 12:30", "Sunday 9 am", "noon"} {
		_, err := bakeday.ParseWish(text)
		if err == nil || !strings.Contains(err.Error(), "Saturday 12:30") || !strings.Contains(err.Error(), "24 hours") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
