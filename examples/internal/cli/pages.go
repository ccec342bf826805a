package cli

import (
	"embed"
	"strings"
)

// The pages of help are texts, one for each command, so that they can be read, mended and translated as texts.
//
//go:embed help/*.txt
var helpFiles embed.FS

// A helpText is a page of help: what the command answers, an example, what there is to say, and its flags.
type helpText struct {
	use, short, long, example string
	flags                     map[string]flagText
}

// A flagText says what a flag is given, where its kind does not say that, and what for.
type flagText struct{ kind, says string }

// helpPage reads the page of a command. The flags of many commands stand on a page of their own.
func helpPage(name string) helpText {
	p := helpText{flags: map[string]flagText{}}
	text := pageText("everywhere")
	p.readFlags(text)
	text = pageText(strings.ReplaceAll(name, " ", "-"))
	before, flags, _ := strings.Cut(text, "\nFlags\n")
	p.readFlags(flags)
	title, rest, _ := strings.Cut(before, "\n")
	p.use, p.short, _ = strings.Cut(title, ": ")
	if _, last, under := strings.Cut(name, " "); under {
		p.use = last + strings.TrimPrefix(p.use, name)
	}
	examples, long := "", rest
	if _, after, found := strings.Cut(rest, "For example\n"); found {
		examples, long, _ = strings.Cut(after, "\n\n")
	}
	for _, line := range strings.Split(strings.TrimSpace(examples), "\n") {
		p.example += "\n" + strings.TrimSpace(line)
	}
	p.example, p.long = strings.TrimPrefix(p.example, "\n"), strings.TrimSpace(long)
	return p
}

func pageText(name string) string {
	text, err := helpFiles.ReadFile("help/" + name + ".txt")
	if err != nil {
		panic(err) // the pages are compiled in, and each command is tested to have one
	}
	return string(text)
}

// readFlags reads lines such as "  --late DURATION  a step begins so much later"; a line that is indented more goes on.
func (p *helpText) readFlags(text string) {
	name := ""
	for _, line := range strings.Split(text, "\n") {
		rest, starts := strings.CutPrefix(line, "  --")
		if !starts {
			if more := strings.TrimSpace(line); more != "" {
				p.flags[name] = flagText{p.flags[name].kind, p.flags[name].says + " " + more}
			}
			continue
		}
		head, says, _ := strings.Cut(rest, "  ")
		var kind string
		name, kind, _ = strings.Cut(head, " ")
		p.flags[name] = flagText{kind, strings.TrimSpace(says)}
	}
}
