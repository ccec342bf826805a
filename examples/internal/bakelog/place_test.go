package bakelog

import "testing"

func TestPlace(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want string
	}{
		{map[string]string{"MASLIN_LOG": "my.jsonl", "HOME": "/home/mia"}, "my.jsonl"},
		{map[string]string{"XDG_DATA_HOME": "/data", "HOME": "/home/mia"}, "/data/maslin/bakes.jsonl"},
		{map[string]string{"XDG_DATA_HOME": "not/absolute", "HOME": "/home/mia"}, "/home/mia/.local/share/maslin/bakes.jsonl"},
		{map[string]string{"HOME": "/home/mia"}, "/home/mia/.local/share/maslin/bakes.jsonl"},
		{nil, ""},
	} {
		got, ok := Place(func(k string) string { return c.env[k] })
		if got != c.want || ok != (c.want != "") {
			t.Errorf("%v: got %q, %v, want %q", c.env, got, ok, c.want)
		}
	}
}
