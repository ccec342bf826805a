package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func printed(t *testing.T, args ...string) (string, error) {
	t.Helper()
	var out bytes.Buffer
	err := run(append([]string{"-library", "../.."}, args...), &out)
	return out.String(), err
}

func TestTheEnglishCatalogIsALanguage(t *testing.T) {
	text, err := printed(t)
	if err != nil {
		t.Fatal(err)
	}
	var l working.Language
	if err := quantity.ReadJSON([]byte(text), &l); err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{"bake.Style/lean hearth": "lean hearth", "time.Weekday/Sat": "Sat",
		"time.Month/November": "November", "working.Subject/burns": "burns", "dough.Allergens/milk": "milk"} {
		if l.Words[key] != want {
			t.Errorf("%s: %q", key, l.Words[key])
		}
	}
	if l.Sentences["error.out_of_range"] != "out of range" || len(l.Sentences) < 1500 {
		t.Error(len(l.Sentences))
	}
	table, err := printed(t, "-csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil || len(rows) != 1+len(l.Sentences)+len(l.Words) {
		t.Fatal(err, len(rows))
	}
	for _, row := range rows {
		if row[0] == "error.got_want" && row[1]+" "+row[2] != "%v: got %s, want %s reason, got, want" {
			t.Error(row)
		}
	}
}

func TestATranslationIsChecked(t *testing.T) {
	folder := t.TempDir()
	whole, err := printed(t)
	if err != nil {
		t.Fatal(err)
	}
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	english := write("english.json", whole)
	if text, err := printed(t, english); err != nil || text != "" {
		t.Errorf("%v: %.300s", err, text)
	}
	own := write("own.json", `{"sentences": {"error.got": "%v", "no.such": "x"}}`)
	text, err := printed(t, own, english)
	if !errors.Is(err, errLacking) || strings.Count(text, "\n") != 2 ||
		!strings.Contains(text, "sentences[error.got]: ") ||
		!strings.Contains(text, "sentences[no.such]: ") {
		t.Errorf("%v: %s", err, text)
	}
	text, err = printed(t, own)
	if !errors.Is(err, errLacking) || !strings.Contains(text, "words[bake.Style/lean hearth]: required\n") {
		t.Errorf("%v: %.300s", err, text)
	}
	for _, bad := range []string{write("bad.json", `{"sentenses": {}}`), "nowhere.json"} {
		if _, err := printed(t, bad); err == nil || errors.Is(err, errLacking) {
			t.Error(bad, err)
		}
	}
	if err := run([]string{"-library", folder}, &bytes.Buffer{}); err == nil {
		t.Error("a folder without the library")
	}
}
