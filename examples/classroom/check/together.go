package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"example.org/maslin/examples/classroom/assemble"
)

// together asks whether the page's script puts the library together as Go's compiler wrote it, to the last byte.
func (v *visit) together() error {
	if err := v.t.open(v.served); err != nil {
		return err
	}
	const digest = `(async () => {
		const packed = (await fetch(%q)).body.pipeThrough(new DecompressionStream("gzip"));
		const library = together(new Uint8Array(await new Response(packed).arrayBuffer()));
		const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", library));
		return Array.from(hash, (b) => b.toString(16).padStart(2, "0")).join("");
	})()`
	var got string
	if err := v.t.run(fmt.Sprintf(digest, assemble.Compressed), &got); err != nil {
		return err
	}
	want := sha256.Sum256(v.classes.Library)
	if got != hex.EncodeToString(want[:]) {
		return fmt.Errorf("the page puts together another library: %s, wanted is %x", got, want)
	}
	return nil
}
