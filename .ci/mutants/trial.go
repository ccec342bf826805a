package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"time"
)

// trial runs tests against mutants.
type trial struct {
	src     *source
	options options
	work    string
	out     *os.File
	clean   map[string]time.Duration // processor time of each package's tests without a mutant
	rapid   map[string]bool          // whether a test binary knows the flags of rapid
	dirs    map[string]string
	mu      sync.Mutex
	done    []verdict
}

// verdict is what a JSON line says.
type verdict struct {
	Package string  `json:"package"`
	File    string  `json:"file"`
	Line    int     `json:"line"`
	In      string  `json:"in"`
	Kind    string  `json:"kind"`
	Change  string  `json:"change"`
	Seed    int64   `json:"seed"`
	Verdict string  `json:"verdict"` // killed, timeout or survived
	By      string  `json:"by,omitempty"`
	Seconds float64 `json:"seconds"`
}

const survived = "survived"

func newTrial(src *source, o options, work string) (*trial, error) {
	t := &trial{src: src, options: o, work: work, clean: map[string]time.Duration{}, rapid: map[string]bool{},
		dirs: map[string]string{}}
	for _, p := range t.packages() {
		cmd := exec.Command("go", "list", "-f", "{{.Dir}}", p)
		cmd.Dir = o.module
		dir, err := cmd.Output()
		if err != nil {
			return nil, fmt.Errorf("go list %s: %w", p, err)
		}
		t.dirs[p] = strings.TrimSpace(string(dir))
	}
	if o.out != "" {
		var err error
		if t.out, err = os.Create(o.out); err != nil {
			return nil, err
		}
	}
	return t, nil
}

func (t *trial) close() {
	if t.out != nil {
		t.out.Close()
	}
}

// built makes the test binaries of packages with these texts in place of their files.
func (t *trial) built(texts map[string]string, name string, pkgs []string) (map[string]string, error) {
	replace := map[string]string{}
	for path, text := range texts {
		in := filepath.Join(t.work, name+"-"+filepath.Base(path))
		if err := os.WriteFile(in, []byte(text), 0o644); err != nil {
			return nil, err
		}
		replace[path] = in
	}
	overlay := filepath.Join(t.work, name+".json")
	data, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(overlay, data, 0o644); err != nil {
		return nil, err
	}
	out := map[string]string{}
	for i, p := range pkgs {
		bin := filepath.Join(t.work, fmt.Sprintf("%s-%d.test", name, i))
		cmd := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", bin, p)
		cmd.Dir = t.options.module
		if data, err := cmd.CombinedOutput(); err != nil {
			return nil, fmt.Errorf("%s does not build: %s", p, data)
		}
		out[p] = bin
	}
	return out, nil
}

func (t *trial) packages() []string {
	return append([]string{t.options.pkg}, strings.Fields(t.options.dependents)...)
}

// together tries the mutants of one binary.
func (t *trial) together(ms []*mutant) error {
	bins, err := t.built(t.src.schemata(ms), "together", t.packages())
	if err != nil {
		return err
	}
	for p, bin := range bins {
		help, _ := exec.Command(bin, "-help").CombinedOutput()
		t.rapid[p] = bytes.Contains(help, []byte("rapid.nofailfile"))
		r := t.tests(p, bin, 0)
		if r.failed {
			return fmt.Errorf("the tests of %s fail without a mutant:\n%s", p, r.output)
		}
		t.clean[p] = r.used
		fmt.Printf("%s without a mutant: %.1f s of processor\n", p, r.used.Seconds())
	}
	var wait sync.WaitGroup
	turns := make(chan bool, t.options.atOnce)
	for _, m := range ms {
		turns <- true
		wait.Go(func() { t.try(m, bins); <-turns })
	}
	wait.Wait()
	return nil
}

// alone builds and tries the mutants that take no choice.
func (t *trial) alone(ms []*mutant) error {
	for i, m := range ms {
		text := m.file.text[:m.start] + m.alone() + m.file.text[m.end:]
		bins, err := t.built(map[string]string{m.file.path: text}, fmt.Sprint("alone", i), t.packages())
		if err != nil {
			fmt.Printf("left out: %v: %v\n", m, err)
			continue
		}
		t.try(m, bins)
		for _, bin := range bins {
			os.Remove(bin)
		}
	}
	return nil
}

// try asks the tests of the package, and then those of its dependents, about a mutant.
func (t *trial) try(m *mutant, bins map[string]string) {
	v := verdict{
		Package: t.src.path, File: filepath.Base(m.file.path), Line: m.line, In: m.in, Kind: m.kind, Change: m.told,
		Seed: t.options.seed, Verdict: survived,
	}
	for _, p := range t.packages() {
		r := t.tests(p, bins[p], m.number)
		v.Seconds += r.took.Seconds()
		if r.failed {
			v.Verdict, v.By = "killed", p+" "+r.by
			if r.timeout {
				v.Verdict = "timeout"
			}
			break
		}
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.done = append(t.done, v)
	if t.out != nil {
		if data, err := json.Marshal(v); err == nil {
			fmt.Fprintf(t.out, "%s\n", data)
		}
	}
}

type result struct {
	failed, timeout bool
	by, output      string
	took, used      time.Duration
}

var failing = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// tests runs a test binary. The limit is on the processor's time, three times that of the clean run and five seconds,
// so that a busy machine kills nothing; the clock's limit is for what waits forever.
func (t *trial) tests(pkg, bin string, number int) result {
	limit := "unlimited"
	clock := 10 * time.Minute
	if clean, ok := t.clean[pkg]; ok {
		seconds := int(3*clean.Seconds()) + 5
		limit, clock = fmt.Sprint(seconds), time.Minute+30*time.Duration(seconds)*time.Second
	}
	ctx, cancel := context.WithTimeout(context.Background(), clock)
	defer cancel()
	args := []string{"-c", `ulimit -t ` + limit + ` && ulimit -v 8000000 && exec "$@"`, "tests", bin,
		"-test.short", "-test.failfast",
		"-test.timeout=0", "-test.paniconexit0"}
	if t.options.without != "" {
		args = append(args, "-test.skip", t.options.without)
	}
	if t.rapid[pkg] {
		args = append(args, "-rapid.nofailfile", "-rapid.shrinktime=0s")
	}
	cmd := exec.CommandContext(ctx, "sh", args...)
	cmd.Dir = t.dirs[pkg]
	cmd.Env = append(os.Environ(), fmt.Sprintf("%s=%d", variable, number), "GOMAXPROCS=1")
	start := time.Now()
	data, err := cmd.CombinedOutput()
	r := result{failed: err != nil, output: string(data), took: time.Since(start)}
	if s := cmd.ProcessState; s != nil {
		r.used = s.UserTime() + s.SystemTime()
		r.timeout = err != nil && s.ExitCode() == -1
	}
	if m := failing.FindStringSubmatch(r.output); m != nil {
		r.by = m[1]
	}
	return r
}
