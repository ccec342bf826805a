package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"os"
	"os/exec"
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

// The table is in order, sentences first, and has every day and month of the year.
func TestTheTable(t *testing.T) {
	table, err := printed(t, "-csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil || strings.Join(rows[0], ",") != "key,english,arguments" {
		t.Fatal(err, rows[0])
	}
	words, counts := 0, map[string]int{}
	for i, row := range rows[1:] {
		room, word, isWord := strings.Cut(row[0], "/")
		if isWord {
			words++
			counts[room]++
		} else if words > 0 {
			t.Errorf("the sentence %s stands after the words", row[0])
		}
		if before := rows[i]; i > 0 && strings.Contains(before[0], "/") == isWord && before[0] >= row[0] {
			t.Errorf("%s stands before %s", before[0], row[0])
		}
		if isWord && (row[1] != word || row[2] != "") {
			t.Errorf("%q", row)
		}
	}
	// Annex II of Regulation (EU) 1169/2011 has fourteen; US law names wheat of its cereals.
	for room, want := range map[string]int{"time.Weekday": 14, "time.Month": 12, "dough.Allergens": 15} {
		if counts[room] != want {
			t.Errorf("%s: %d words, want %d", room, counts[room], want)
		}
	}
}

// One word or one sentence that lacks is told alone, and is enough to lack.
func TestOneThingLacks(t *testing.T) {
	whole, err := printed(t)
	if err != nil {
		t.Fatal(err)
	}
	for from, c := range map[string]struct{ to, want string }{
		`"time.Month/May": "May"`:              {`"time.Month/May": ""`, "words[time.Month/May]: required\n"},
		`"error.out_of_range": "out of range"`: {`"error.out_of_range": "%d out of range"`, "sentences[error.out_of_range]: "},
	} {
		if strings.Count(whole, from) != 1 {
			t.Fatal(from)
		}
		name := filepath.Join(t.TempDir(), "own.json")
		if err := os.WriteFile(name, []byte(strings.Replace(whole, from, c.to, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		text, err := printed(t, name)
		if !errors.Is(err, errLacking) || !strings.HasPrefix(text, c.want) || strings.Count(text, "\n") != 1 {
			t.Errorf("%v: %q, want %q", err, text, c.want)
		}
	}
}

// Without -library the library is where go list says; what is no flag is told.
func TestWhereTheLibraryIs(t *testing.T) {
	var here bytes.Buffer
	named, err := printed(t)
	if e := run(nil, &here); e != nil || err != nil || here.String() != named {
		t.Errorf("%v, %v: %d bytes, want %d", e, err, here.Len(), len(named))
	}
	here.Reset()
	if err := run([]string{"-xml"}, &here); err == nil || errors.Is(err, errLacking) || !strings.Contains(here.String(), "-library") {
		t.Errorf("%v: %s", err, here.String())
	}
}

// As a program it says with its status whether a translation lacks something or cannot be read.
func TestMain(m *testing.M) {
	if os.Getenv("CATALOG_IS_THE_PROGRAM") != "" {
		main()
		return
	}
	os.Exit(m.Run())
}

func TestTheProgram(t *testing.T) {
	lacks := filepath.Join(t.TempDir(), "own.json")
	if err := os.WriteFile(lacks, []byte(`{"tag": "fr"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args   []string
		status int
		says   string
	}{{[]string{"-csv"}, 0, ""}, {[]string{lacks}, 1, ""}, {[]string{"nowhere.json"}, 2, "open nowhere.json: "}} {
		cmd := exec.Command(os.Args[0], append([]string{"-library", "../.."}, c.args...)...)
		cmd.Env = append(os.Environ(), "CATALOG_IS_THE_PROGRAM=1")
		var out, faults bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &faults
		_ = cmd.Run()
		if cmd.ProcessState.ExitCode() != c.status || !strings.HasPrefix(faults.String(), c.says) || (c.says == "") != (faults.Len() == 0) ||
			(out.Len() > 0) != (c.status < 2) {
			t.Errorf("%v: status %d, %q, %d bytes", c.args, cmd.ProcessState.ExitCode(), faults.String(), out.Len())
		}
	}
}
