package desk

import (
	"sync"

	"example.org/maslin/dough/working"
)

// german is read when somebody first asks for it.
var german = sync.OnceValue(catalog)

// tongues are the languages that the page can be read in, by tag, with what they call themselves.
func tongues() []choice {
	return []choice{{"en", working.Say("English")}, {"de", working.Say("Deutsch")}}
}

// languageOf finds a language by its tag; without a tag it is English. Whatever a catalog lacks is English too.
func languageOf(tag string) (working.Language, bool) {
	switch tag {
	case "", "en":
		return working.Language{Tag: "en"}, true
	case "de":
		return german(), true
	}
	return working.Language{Tag: "en"}, false
}
