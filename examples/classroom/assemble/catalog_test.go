package assemble

import (
	"bytes"
	"encoding/binary"
	"testing"
)

func TestASectionBehindAProgram(t *testing.T) {
	before := program([]byte("\x0acode"))
	content := bytes.Repeat([]byte("ä\t"), 100)
	out := withSection(before, "catalog", content)
	rest, ok := bytes.CutPrefix(out, before)
	if !ok || rest[0] != 0 {
		t.Fatalf("%q", out)
	}
	body, after, ok := sized(rest[1:])
	if !ok || len(after) > 0 {
		t.Fatalf("%q", rest)
	}
	n, k := binary.Uvarint(body)
	if name := body[k : k+int(n)]; string(name) != "catalog" || !bytes.Equal(body[k+int(n):], content) {
		t.Errorf("%q", body)
	}
	if &out[0] == &before[0] {
		t.Error("the program given was written to")
	}
	if _, err := merged(out); err != nil {
		t.Error(err)
	}
}

func TestWhatAProgramMaySay(t *testing.T) {
	said := saidBy([]byte("\x00water.warmwater.coldbake.done\x01"))
	for id, want := range map[string]bool{"water.warm": true, "water.cold": true, "bake.done": true, "water.hot": false,
		"bake.done ": false} {
		if said(id) != want {
			t.Errorf("%s: %v", id, !want)
		}
	}
}
