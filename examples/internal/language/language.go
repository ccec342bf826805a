package language

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

//go:embed german/*.json
var files embed.FS

// German is the German catalog.
func German() working.Language {
	l, err := read(files, "german")
	if err != nil {
		panic(err) // the files are compiled in and tested
	}
	return l
}

// read puts the files of a folder together into one catalog.
func read(from fs.FS, folder string) (working.Language, error) {
	names, err := fs.Glob(from, folder+"/*.json")
	if err != nil {
		return working.Language{}, err
	}
	all := make([]working.Language, len(names))
	for i, name := range names {
		data, err := fs.ReadFile(from, name)
		if err != nil {
			return working.Language{}, err
		}
		if err := json.Unmarshal(data, &all[i]); err != nil {
			return working.Language{}, fmt.Errorf("%s: %w", name, err)
		}
	}
	return working.Language{}.Over(all...), nil
}

// Named is the language of a BCP 47 tag or of the name of a locale, such as "de", "de-CH" or "de_AT.UTF-8"; "C" is
// English. In Switzerland and Liechtenstein no ß is written. Errors: *quantity.InputError for another language.
func Named(tag string) (working.Language, error) {
	plain, _, _ := strings.Cut(strings.TrimSpace(tag), ".")
	plain, _, _ = strings.Cut(plain, "@")
	subtags := strings.Split(strings.ReplaceAll(plain, "_", "-"), "-")
	switch strings.ToLower(subtags[0]) {
	case "c", "posix", "en":
		return working.Language{}, nil
	case "de":
		l := German()
		if region := regionOf(subtags[1:]); region != "" {
			l.Tag = "de-" + region
		}
		if l.Tag == "de-CH" || l.Tag == "de-LI" {
			withoutEszett(l.Sentences)
			withoutEszett(l.Words)
		}
		return l, nil
	}
	return working.Language{}, &quantity.InputError{
		Got: quantity.Excerpt(tag), Want: quantity.Tell("language.want_de_or_en", "de or en"), Err: quantity.ErrOutOfRange,
	}
}

// regionOf is the country among the subtags behind a language, RFC 5646, section 2.2.4: two letters. What stands behind
// a subtag of one letter is no region, and what is no letter is no part of a tag.
func regionOf(subtags []string) string {
	for _, s := range subtags {
		if len(s) == 1 {
			break
		}
		if s = strings.ToUpper(s); len(s) == 2 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == "" {
			return s
		}
	}
	return ""
}

func withoutEszett(texts map[string]string) {
	for key, text := range texts {
		texts[key] = strings.ReplaceAll(text, "ß", "ss")
	}
}

// Preferred is the language that the environment asks for: by LC_ALL, or else LC_MESSAGES, or else LANG. None, and a
// language without a catalog, is English.
func Preferred(getenv func(string) string) working.Language {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value := getenv(name); value != "" {
			l, _ := Named(value)
			return l
		}
	}
	return working.Language{}
}
