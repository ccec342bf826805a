package cli

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// bakeFile asks for the keys of a bake file, or of one of its tables.
type bakeFile struct{}

func (*bakeFile) ask(c *call) error {
	all := bakeday.BakeFileKeys()
	if len(c.args) == 0 {
		return c.tell(all, nil)
	}
	var known []string
	for _, t := range all.Tables {
		if t.Name == c.args[0] {
			return c.tell(bakeday.FileKeys{Tables: []bakeday.FileTable{t}}, nil)
		}
		known = append(known, t.Name)
	}
	return badInput(working.Tell("cli.bake_file_no_table_want", "maslin bake-file: no table %q, want %v",
		fileName(c.args[0]), either(known[1:])))
}
