package bakelog

import (
	"errors"
	"path/filepath"
)

// Place answers where the log is: MASLIN_LOG, else maslin/bakes.jsonl in XDG_DATA_HOME when that
// is an absolute path (others are to be ignored), else in .local/share of the home folder.
// Source: XDG Base Directory Specification 0.8.
func Place(getenv func(string) string) (string, error) {
	if name := getenv("MASLIN_LOG"); name != "" {
		return name, nil
	}
	if data := getenv("XDG_DATA_HOME"); filepath.IsAbs(data) {
		return filepath.Join(data, "maslin", "bakes.jsonl"), nil
	}
	for _, home := range []string{getenv("HOME"), getenv("USERPROFILE")} {
		if filepath.IsAbs(home) {
			return filepath.Join(home, ".local", "share", "maslin", "bakes.jsonl"), nil
		}
	}
	return "", errors.New("no place for the bake log: give --log FILE, or set MASLIN_LOG, XDG_DATA_HOME or HOME")
}
