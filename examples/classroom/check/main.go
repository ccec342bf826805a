// Command check tries the classroom in a real browser: it needs Chromium, and the accessibility checker axe-core as
// one script. check.sh installs both and starts it.
package main

import (
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"

	"example.org/maslin/examples/classroom/assemble"
)

// A check is one thing that must hold.
type check struct {
	name string
	run  func(*visit) error
}

// A visit is what all checks use.
type visit struct {
	b       *browser
	t       *tab
	served  string // the address of the served page
	single  string // the address of the single file
	axe     string // the source of axe-core
	shots   string // where pictures of the page are put; none if empty
	asked   int    // random inputs a bench
	strict  bool   // slower than wanted is a failure, and not only told: for a machine that does nothing else
	classes assemble.Classroom
}

func main() {
	program := flag.String("chromium", "chromium", "the browser")
	axe := flag.String("axe", "", "axe.min.js, the accessibility checker")
	shots := flag.String("shots", "", "put pictures and prints of the page into this folder")
	asked := flag.Int("inputs", 200, "random inputs a bench")
	only := flag.String("only", "", "the check of this name alone")
	strict := flag.Bool("strict", false, "fail where the page is slower than wanted")
	flag.Parse()
	if err := run(*program, *axe, *shots, *only, *asked, *strict); err != nil {
		fmt.Fprintln(os.Stderr, "check:", err)
		os.Exit(1)
	}
}

func run(program, axe, shots, only string, asked int, strict bool) error {
	began := time.Now()
	source, err := os.ReadFile(axe)
	if err != nil {
		return fmt.Errorf("axe-core is needed (-axe): %w", err)
	}
	v := &visit{axe: string(source), shots: shots, asked: asked, strict: strict}
	if v.classes, err = assemble.Build(false); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "classroom-check")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	if err := v.classes.Write(dir); err != nil {
		return err
	}
	v.single = "file://" + filepath.Join(dir, assemble.SingleFile)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer func() { _ = l.Close() }()
	go func() {
		server := &http.Server{Handler: v.classes, ReadHeaderTimeout: 10 * time.Second}
		_ = server.Serve(l)
	}()
	v.served = "http://" + l.Addr().String() + "/"
	if v.b, err = start(program); err != nil {
		return fmt.Errorf("the browser %q cannot be started: %w", program, err)
	}
	defer v.b.close()
	fmt.Printf("built and started in %.1f s\n", time.Since(began).Seconds())
	failed, passed := 0, 0
	for _, c := range checks() {
		if only != "" && only != c.name {
			continue
		}
		began := time.Now()
		if err := v.one(c); err != nil {
			failed++
			fmt.Printf("FAIL %s (%.1f s)\n%v\n", c.name, time.Since(began).Seconds(), err)
			continue
		}
		passed++
		fmt.Printf("ok   %s (%.1f s)\n", c.name, time.Since(began).Seconds())
	}
	fmt.Printf("%d passed, %d failed\n", passed, failed)
	if failed > 0 {
		return errors.New("the classroom does not hold")
	}
	return nil
}

// one runs a check in a tab of its own, and fails it for what the page complained of.
func (v *visit) one(c check) (err error) {
	if v.t, err = v.b.tab(); err != nil {
		return err
	}
	defer v.t.close()
	err = c.run(v)
	for {
		select {
		case e := <-v.b.events:
			if complaint := complaintOf(e); complaint != "" {
				err = errors.Join(err, errors.New(complaint))
			}
		default:
			return err
		}
	}
}
