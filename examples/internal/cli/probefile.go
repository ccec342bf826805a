package cli

import (
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// readReadings reads a probe's file; faults are named with their line.
func readReadings(name string) (ferment.Readings, error) {
	source, err := readBounded(name, 64<<20)
	name = fileName(name)
	if err != nil {
		return ferment.Readings{}, err
	}
	r, err := ferment.ParseReadings(string(source))
	if err != nil {
		return r, badInput("%s", readingFaults(name, err))
	}
	return r, nil
}

// readingFaults turns paths such as "line 3 time" into places.
func readingFaults(name string, err error) string {
	var lines []string
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		rest, ok := strings.CutPrefix(e.GoPath, "line ")
		number, column, _ := strings.Cut(rest, " ")
		if _, bad := strconv.Atoi(number); ok && bad == nil {
			moved.Path, moved.GoPath = "", column
			lines = append(lines, name+":"+number+": "+moved.Error())
			continue
		}
		if m := readingPath.FindStringSubmatch(e.GoPath); m != nil {
			if n, err := strconv.Atoi(m[1]); err == nil {
				moved.Path, moved.GoPath = "", fmt.Sprintf("reading %d, %s", n+1, strings.ToLower(strings.Replace(m[2], "At", "time", 1)))
			}
		}
		lines = append(lines, name+": "+moved.Error())
	}
	if len(lines) == 0 {
		return name + ": " + err.Error()
	}
	return strings.Join(lines, "\n")
}

var readingPath = regexp.MustCompile(`^Points\[(\d+)\]\.(At|Temperature)$`)

func readBounded(name string, most int64) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, badInput("%s: %s", fileName(name), reason(err))
	}
	switch {
	case info.IsDir():
		return nil, badInput("%s: is a folder; want a file", name)
	case info.Size() > most:
		return nil, badInput("%s: got %d MB, want at most %d MB", name, info.Size()>>20, most>>20)
	}
	source, err := os.ReadFile(name)
	if err != nil {
		return nil, badInput("%s: %s", name, reason(err))
	}
	return source, nil
}
