package desk

import "example.org/maslin/dough/working"

// languages are those that the page can be read in. Whatever a catalog lacks is English.
func languages() []working.Language {
	return []working.Language{{Tag: "en"}}
}

// languageOf finds a language by its tag; without a tag it is English.
func languageOf(tag string) (working.Language, bool) {
	for _, l := range languages() {
		if l.Tag == tag || tag == "" {
			return l, true
		}
	}
	return working.Language{Tag: "en"}, false
}

// languageName is what a language calls itself.
func languageName(tag string) string {
	switch tag {
	case "en":
		return "English"
	case "de":
		return "Deutsch"
	}
	return tag
}
