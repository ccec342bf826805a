package bakelog

import "path/filepath"

// Place answers where the log is: MASLIN_LOG, else maslin/bakes.jsonl in XDG_DATA_HOME when that
// is an absolute path (others are to be ignored), else in .local/share of the home folder; not ok: nowhere.
// Source: XDG Base Directory Specification 0.8.
func Place(getenv func(string) string) (name string, ok bool) {
	if name := getenv("MASLIN_LOG"); name != "" {
		return name, true
	}
	if data := getenv("XDG_DATA_HOME"); filepath.IsAbs(data) {
		return filepath.Join(data, "maslin", "bakes.jsonl"), true
	}
	for _, home := range []string{getenv("HOME"), getenv("USERPROFILE")} {
		if filepath.IsAbs(home) {
			return filepath.Join(home, ".local", "share", "maslin", "bakes.jsonl"), true
		}
	}
	return "", false
}
