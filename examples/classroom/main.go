// Command classroom builds the classroom, the library in a browser with one page around it, and serves it on this
// machine. With -out it writes the files instead: classroom.html works alone, from a stick or from mail, and the others
// are the same as a folder to serve. With -pack it packs another program of the library in the same way.
package main

import (
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.org/maslin/examples/classroom/assemble"
)

func main() {
	out := flag.String("out", "", "write the files into this folder and do not serve them")
	address := flag.String("address", "127.0.0.1:8017", "where to serve, on this machine")
	small := flag.Bool("small", false, "compress for minutes with the program zopfli: a twentieth smaller")
	program := flag.String("pack", "", "pack this program (GOOS=js GOARCH=wasm) instead, into the folder of -out: "+
		"NAME.columns.gz, and together.js to put it in order again")
	flag.Parse()
	do := func() error { return run(*out, *address, *small) }
	if *program != "" {
		do = func() error { return pack(*program, *out, *small) }
	}
	if err := do(); err != nil {
		fmt.Fprintln(os.Stderr, "classroom:", err)
		os.Exit(1)
	}
}

// pack packs a program beside the script that a page needs for it.
func pack(program, out string, small bool) error {
	plain, err := os.ReadFile(program)
	if err != nil {
		return err
	}
	packed, err := assemble.Pack(plain, out, strings.TrimSuffix(filepath.Base(program), ".wasm"), small)
	if err != nil {
		return fmt.Errorf("%s: %w", program, err)
	}
	fmt.Printf("%s: %d bytes, %d to transfer\n", program, len(plain), packed)
	return nil
}

func run(out, address string, small bool) error {
	room, err := assemble.Build(small)
	if err != nil {
		return err
	}
	fmt.Printf("the library: %d bytes, %d to transfer; the page that needs nothing else: %d bytes\n", len(room.Library),
		len(room.Files[assemble.Compressed]), len(room.Files[assemble.SingleFile]))
	if out != "" {
		return room.Write(out)
	}
	l, err := net.Listen("tcp", address)
	if err != nil {
		return err
	}
	fmt.Printf("open http://%s/ in a browser; Ctrl-C ends\n", l.Addr())
	server := &http.Server{Handler: room, ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(l)
}
