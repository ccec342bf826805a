package cli

import (
	"encoding/json"
	"maps"
	"regexp"
	"slices"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// bakeFile asks for the keys of a bake file.
type bakeFile struct{}

func (*bakeFile) ask(c *call) error {
	keys, err := bakeKeys(c.args)
	return c.tell(keys, err)
}

// bakeKeys reads the keys of a bake file from its JSON Schema; with a table, those of that table alone.
func bakeKeys(only []string) (fileKeys, error) {
	var of schema
	if err := json.Unmarshal([]byte(bakeday.BakeSchema()), &of); err != nil {
		return fileKeys{}, err
	}
	all := fileKeys{}
	all.read(of, of, "")
	if len(only) == 0 {
		return all, nil
	}
	var known []string
	for _, t := range all.Tables {
		if t.Name == only[0] {
			return fileKeys{Tables: []fileTable{t}}, nil
		}
		known = append(known, t.Name)
	}
	return fileKeys{}, badInput("maslin bake-file: no table %q, want %s", only[0], either(known[1:]))
}

// schema is as much of a JSON Schema as a bake file needs.
type schema struct {
	Ref         string            `json:"$ref"`
	Type        string            `json:"type"`
	Description string            `json:"description"`
	Enum        []string          `json:"enum"`
	Const       string            `json:"const"`
	Items       *schema           `json:"items"`
	Properties  map[string]schema `json:"properties"`
	Required    []string          `json:"required"`
	Defs        map[string]schema `json:"$defs"`
}

// fileKeys are the keys of a file, table by table: the first has no name.
type fileKeys struct {
	Tables []fileTable `json:"tables"`
}

type fileTable struct {
	Name string    `json:"name"`
	Many bool      `json:"many"` // there may be several: [[flour]]
	Says string    `json:"says"`
	Keys []fileKey `json:"keys"`
}

type fileKey struct {
	Name     string `json:"name"`
	Takes    string `json:"takes"`
	Says     string `json:"says"`
	Required bool   `json:"required"`
}

// told is what a key means and takes.
func (k fileKey) told() string {
	switch {
	case k.Says == "":
		return k.Takes
	case strings.Contains(k.Says, `"`): // it shows what it looks like
		return k.Says
	}
	return k.Says + " (" + k.Takes + ")"
}

// read lists the keys of a table, and those of the tables in it.
func (f *fileKeys) read(root, table schema, name string) {
	at := len(f.Tables)
	f.Tables = append(f.Tables, fileTable{Name: name, Says: says(table.Description)})
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
		one := fileKey{Name: key, Takes: takes(of, many), Says: says(p.Description), Required: slices.Contains(table.Required, key)}
		f.Tables[at].Keys = append(f.Tables[at].Keys, one)
	}
}

// example finds what a form of text looks like in its description.
var example = regexp.MustCompile(`"[^"]+"`)

// takes says what a key is given: its words, or what it looks like.
func takes(of schema, many bool) string {
	var text string
	switch forms := example.FindAllString(of.Description, -1); {
	case of.Const != "":
		text = `"` + of.Const + `"`
	case len(of.Enum) > 0:
		text = strings.Join(of.Enum, ", ")
	case of.Type == "integer":
		text = "a whole number"
	case of.Type == "boolean":
		text = "true or false"
	case len(forms) > 0:
		text = "such as " + strings.Join(forms, " or ")
	default:
		text = "a text"
	}
	if many {
		return "a list; " + text
	}
	return text
}

// says is the comment of a field without the name that Go comments begin with.
func says(comment string) string {
	first, rest, found := strings.Cut(comment, " is ")
	if found && first != "" && !strings.Contains(first, " ") && strings.ToLower(first) != first {
		comment = rest
	}
	return strings.TrimSuffix(comment, ".")
}

// Report lists the keys.
func (f fileKeys) Report() report.Report {
	out := report.Report{Headline: working.Say("A bake file holds these keys. Those marked with * must be there; every other may be left out.")}
	for _, t := range f.Tables {
		title := working.Say("%s", "["+t.Name+"]")
		switch {
		case t.Name == "":
			title = working.Say("At the top of the file")
		case t.Many:
			title = working.Say("%s", "[["+t.Name+"]]")
		}
		var rows report.Rows
		for _, k := range t.Keys {
			label := k.Name
			if k.Required {
				label += "*"
			}
			rows = append(rows, report.Row{Label: working.Say("%s", label), Value: report.Of(k.told())})
		}
		section := report.Section{Key: "table-" + t.Name, Title: title}
		if t.Says != "" && t.Name != "" {
			section.Blocks = append(section.Blocks, report.Say(working.Say("%s", t.Says)))
		}
		section.Blocks = append(section.Blocks, rows)
		out.Sections = append(out.Sections, section)
	}
	return out
}
