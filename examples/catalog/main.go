// Command catalog prints the English catalog of the library, from its source, for whoever translates it, and tells what
// a translation lacks.
//
//	go run ./examples/catalog > english.json          # a working.Language: templates and words by their keys
//	go run ./examples/catalog -csv > english.csv      # the same for a spreadsheet, with the names of the arguments
//	go run ./examples/catalog french.json more.json   # what these lack, together; status 1 if anything
//
// In a translation each template shows the arguments of the English one; %[2]v shows the second one first.
package main

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/house"
)

func main() {
	switch err := run(os.Args[1:], os.Stdout); {
	case errors.Is(err, errLacking):
		os.Exit(1)
	case err != nil:
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
}

var errLacking = errors.New("the translation is not complete")

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("catalog", flag.ContinueOnError)
	flags.SetOutput(out)
	root := flags.String("library", "", "the folder of the library's source; not given, what go list says")
	table := flags.Bool("csv", false, "print a table: key, English, names of the arguments")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *root == "" {
		folder, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "example.org/maslin").Output()
		if err != nil {
			return fmt.Errorf("go list does not find the library here, name its folder with -library: %w", err)
		}
		*root = strings.TrimSpace(string(folder))
	}
	english, err := english(*root)
	switch {
	case err != nil:
		return err
	case flags.NArg() > 0:
		return check(flags.Args(), english, out)
	case *table:
		return writeTable(*root, english, out)
	}
	encoder := json.NewEncoder(out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(english)
}

// english is the catalog that the source tells.
func english(root string) (working.Language, error) {
	sentences, faults, err := house.Sentences(root)
	if err != nil || len(faults) > 0 {
		return working.Language{}, errors.Join(err, errors.New(strings.Join(faults, "\n")))
	}
	keys, err := house.Vocabulary(root)
	if err != nil {
		return working.Language{}, err
	}
	for day := range 7 {
		name := time.Weekday(day).String()
		keys = append(keys, "time.Weekday/"+name, "time.Weekday/"+name[:3])
	}
	for month := range 12 {
		keys = append(keys, "time.Month/"+time.Month(month+1).String())
	}
	for _, a := range dough.Allergens(1<<16 - 1).List() {
		keys = append(keys, "dough.Allergens/"+a.String())
	}
	l := working.Language{Tag: "en", Sentences: sentences, Words: map[string]string{}}
	for _, k := range keys {
		_, l.Words[k], _ = strings.Cut(k, "/")
	}
	return l, nil
}

func writeTable(root string, english working.Language, out io.Writer) error {
	names, err := house.Arguments(root)
	if err != nil {
		return err
	}
	w := csv.NewWriter(out)
	rows := [][]string{{"key", "english", "arguments"}}
	for _, id := range slices.Sorted(maps.Keys(english.Sentences)) {
		rows = append(rows, []string{id, english.Sentences[id], strings.Join(names[id], ", ")})
	}
	for _, key := range slices.Sorted(maps.Keys(english.Words)) {
		rows = append(rows, []string{key, english.Words[key], ""})
	}
	return w.WriteAll(rows)
}

// check tells what is missing or wrong in the files of a translation.
func check(files []string, english working.Language, out io.Writer) error {
	all := make([]working.Language, len(files))
	for i, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if err := quantity.ReadJSON(data, &all[i]); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	translation := working.Language{}.Over(all...)
	problems := working.Problems(translation.Check(english))
	for _, p := range problems {
		fmt.Fprintln(out, p)
	}
	missing := 0
	for _, key := range slices.Sorted(maps.Keys(english.Words)) {
		if translation.Words[key] == "" {
			missing++
			fmt.Fprintf(out, "words[%s]: required\n", key)
		}
	}
	if len(problems)+missing > 0 {
		return errLacking
	}
	return nil
}
