package bakeday

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// FileKeys are the keys that a bake file may have, table by table; the first table, the top of the file, has no name.
type FileKeys struct {
	Tables []FileTable `json:"tables"`
}

// FileTable is a table of a bake file: "kitchen", "bulk.lamination".
type FileTable struct {
	Name string    `json:"name"`
	Many bool      `json:"many"` // there may be several: [[flour]]
	Says string    `json:"says"` // what it is for
	Keys []FileKey `json:"keys"`
}

// FileKey is a key of a bake file: what it means, with its unit and what stands when it is left out, and what it takes.
type FileKey struct {
	Name string `json:"name"`
	Says string `json:"says"`
	// Takes is the kind of its value: "word" of a few, "number" (a whole one), "switch" (true or false) or "text".
	Takes    string   `json:"takes"`
	Forms    []string `json:"forms,omitempty"` // the words, or what a text looks like
	Many     bool     `json:"many"`            // a list of them
	Required bool     `json:"required"`
}

// BakeFileKeys answers: which keys may a bake file have, what does each take, and what stands when it is left out? They
// are read from [BakeSchema], so that no key that is read is missing. Accuracy: as the comments of [Bake] say.
func BakeFileKeys() FileKeys {
	var of schemaPart
	var all FileKeys
	if json.Unmarshal([]byte(BakeSchema()), &of) == nil { // it is compiled in and tested
		all.read(of, of, "")
	}
	return all
}

// schemaPart is as much of a JSON Schema as a bake file needs.
type schemaPart struct {
	Ref         string                `json:"$ref"`
	Type        string                `json:"type"`
	Description string                `json:"description"`
	Enum        []string              `json:"enum"`
	Const       string                `json:"const"`
	Items       *schemaPart           `json:"items"`
	Properties  map[string]schemaPart `json:"properties"`
	Required    []string              `json:"required"`
	Defs        map[string]schemaPart `json:"$defs"`
}

// read lists the keys of a table, and those of the tables in it.
func (f *FileKeys) read(root, table schemaPart, name string) {
	at := len(f.Tables)
	f.Tables = append(f.Tables, FileTable{Name: name, Says: commentSays(table.Description)})
	for _, key := range slices.Sorted(maps.Keys(table.Properties)) {
		p := table.Properties[key]
		of, many := p, p.Type == "array"
		if many {
			of = *p.Items
		}
		if of.Ref != "" {
			of = root.Defs[strings.TrimPrefix(of.Ref, "#/$defs/")]
		}
		if len(of.Properties) > 0 {
			of.Description = p.Description
			inner := len(f.Tables)
			f.read(root, of, strings.TrimPrefix(name+"."+key, "."))
			f.Tables[inner].Many = many
			continue
		}
		if of.Ref == "" && p.Ref == "" && !many {
			of.Description = "" // its own, which is told already
		}
		one := FileKey{Name: key, Says: commentSays(p.Description), Many: many,
			Required: slices.Contains(table.Required, key)}
		one.Takes, one.Forms = of.takes()
		if example := fileExample(name, key); one.Takes == "text" && example != nil {
			one.Forms = example
		}
		f.Tables[at].Keys = append(f.Tables[at].Keys, one)
	}
}

// takes says what a key is given: one of its words, or what it looks like.
func (of schemaPart) takes() (kind string, forms []string) {
	switch {
	case of.Const != "":
		return "word", []string{of.Const}
	case len(of.Enum) > 0:
		return "word", of.Enum
	case of.Type == "integer":
		return "number", nil
	case of.Type == "boolean":
		return "switch", nil
	}
	for i, part := range strings.Split(of.Description, `"`) {
		if i%2 == 1 {
			forms = append(forms, part)
		}
	}
	return "text", forms
}

// commentSays is the comment of a field without the name that Go comments begin with.
func commentSays(comment string) string {
	first, rest, found := strings.Cut(comment, " is ")
	if found && first != "" && !strings.Contains(first, " ") && strings.ToLower(first) != first {
		comment = rest
	}
	return strings.TrimSuffix(comment, ".")
}

// keyComment is a comment of a key, which a language may have words for.
type keyComment string

// typed is what is typed into a file: it stays as it is in every language, also where it is a word of the kitchen.
func typed(text string) working.Message { return working.Say(text) }

// told is what a key means and takes.
func (k FileKey) told() working.Message {
	var takes working.Message
	switch forms := strings.Join(k.Forms, ", "); {
	case k.Takes == "word":
		takes = typed(forms)
	case k.Takes == "number":
		takes = working.Tell("bakeday.key_number", "a whole number")
	case k.Takes == "switch":
		takes = working.Tell("bakeday.key_switch", "true or false")
	case len(k.Forms) > 0:
		takes = working.Tell("bakeday.key_such_as", "such as \"%s\"", strings.Join(k.Forms, `", "`))
	default:
		takes = working.Tell("bakeday.key_text", "a text")
	}
	if k.Many {
		takes = working.Tell("bakeday.key_list", "a list; %v", takes)
	}
	switch {
	case k.Says == "":
		return takes
	case strings.Contains(k.Says, `"`): // it shows what it looks like
		return k.says()
	}
	return working.Tell("bakeday.key_says_takes", "%v (%v)", keyComment(k.Says), takes)
}

// Report lists the keys.
func (f FileKeys) Report() report.Report {
	out := report.Report{Headline: working.Tell("bakeday.file_keys",
		"A bake file holds these keys. Those marked with * must be there; every other may be left out.")}
	for _, t := range f.Tables {
		title := typed("[" + t.Name + "]")
		switch {
		case t.Name == "":
			title = working.Tell("bakeday.file_top", "At the top of the file")
		case t.Many:
			title = typed("[[" + t.Name + "]]")
		}
		var rows report.Rows
		for _, k := range t.Keys {
			label := typed(k.Name)
			if k.Required {
				label = typed(k.Name + "*")
			}
			rows = append(rows, report.Row{Label: label, Value: report.Of(k.told())})
		}
		section := report.Section{Key: "table-" + t.Name, Title: title}
		if t.Says != "" && t.Name != "" {
			section.Blocks = append(section.Blocks, report.Say(t.comment()))
		}
		section.Blocks = append(section.Blocks, rows)
		out.Sections = append(out.Sections, section)
	}
	return out
}
