package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"sync"
	"time"
)

// A browser is a Chromium without a window, driven over the DevTools protocol through a pipe.
type browser struct {
	cmd    *exec.Cmd
	to     io.WriteCloser
	mu     sync.Mutex
	last   int
	wait   map[int]chan reply
	events chan event
	home   string
}

type reply struct {
	ID     int             `json:"id"`
	Result json.RawMessage `json:"result"`
	Error  *struct {
		Message string `json:"message"`
	} `json:"error"`
	event
}

type event struct {
	Method  string          `json:"method"`
	Params  json.RawMessage `json:"params"`
	Session string          `json:"sessionId"`
}

// start opens a browser of its own with a fresh profile. Its connections to anywhere but this machine fail.
func start(program string) (*browser, error) {
	home, err := os.MkdirTemp("", "classroom-browser")
	if err != nil {
		return nil, err
	}
	hears, to, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	from, says, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	b := &browser{to: to, wait: map[int]chan reply{}, events: make(chan event, 4096), home: home}
	b.cmd = exec.Command(program, "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
		"--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1", "--user-data-dir="+home, "--remote-debugging-pipe",
		"about:blank")
	b.cmd.ExtraFiles = []*os.File{hears, says} // descriptors 3 and 4
	if err := b.cmd.Start(); err != nil {
		return nil, err
	}
	_, _ = hears.Close(), says.Close()
	go b.listen(from)
	return b, nil
}

func (b *browser) listen(from io.Reader) {
	r := bufio.NewReaderSize(from, 1<<20)
	for {
		text, err := r.ReadBytes(0)
		if err != nil {
			b.mu.Lock()
			for id, c := range b.wait {
				close(c)
				delete(b.wait, id)
			}
			b.mu.Unlock()
			return
		}
		var m reply
		if json.Unmarshal(text[:len(text)-1], &m) != nil {
			continue
		}
		if m.ID == 0 {
			select {
			case b.events <- m.event:
			default: // nobody reads them any more
			}
			continue
		}
		b.mu.Lock()
		c := b.wait[m.ID]
		delete(b.wait, m.ID)
		b.mu.Unlock()
		if c != nil {
			c <- m
		}
	}
}

// call asks the browser something and waits for its answer.
func (b *browser) call(session, method string, params, into any) error {
	c := make(chan reply, 1)
	b.mu.Lock()
	b.last++
	id := b.last
	b.wait[id] = c
	b.mu.Unlock()
	message := map[string]any{"id": id, "method": method, "params": params}
	if params == nil {
		message["params"] = struct{}{}
	}
	if session != "" {
		message["sessionId"] = session
	}
	text, err := json.Marshal(message)
	if err != nil {
		return err
	}
	if _, err := b.to.Write(append(text, 0)); err != nil {
		return err
	}
	select {
	case m, ok := <-c:
		switch {
		case !ok:
			return errors.New("the browser has ended")
		case m.Error != nil:
			return fmt.Errorf("%s: %s", method, m.Error.Message)
		case into == nil:
			return nil
		}
		return json.Unmarshal(m.Result, into)
	case <-time.After(60 * time.Second):
		return fmt.Errorf("%s: no answer within a minute", method)
	}
}

func (b *browser) close() {
	_ = b.call("", "Browser.close", nil, nil)
	_ = b.to.Close()
	done := make(chan struct{})
	go func() { _ = b.cmd.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
		_ = b.cmd.Process.Kill()
	}
	_ = os.RemoveAll(b.home)
}

// A tab is one page in the browser.
type tab struct {
	b       *browser
	target  string
	session string
}

func (b *browser) tab() (*tab, error) {
	var target struct {
		TargetID string `json:"targetId"`
	}
	if err := b.call("", "Target.createTarget", map[string]any{"url": "about:blank"}, &target); err != nil {
		return nil, err
	}
	var session struct {
		SessionID string `json:"sessionId"`
	}
	if err := b.call("", "Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true},
		&session); err != nil {
		return nil, err
	}
	t := &tab{b, target.TargetID, session.SessionID}
	var errs []error
	for _, domain := range []string{"Page", "Runtime", "Network", "Log"} {
		errs = append(errs, t.call(domain+".enable", nil, nil))
	}
	// A tab behind another one goes on as if a person looked at it.
	errs = append(errs, t.call("Emulation.setFocusEmulationEnabled", map[string]any{"enabled": true}, nil))
	return t, errors.Join(errs...)
}

func (t *tab) call(method string, params, into any) error {
	return t.b.call(t.session, method, params, into)
}

func (t *tab) close() {
	_ = t.b.call("", "Target.closeTarget", map[string]any{"targetId": t.target}, nil)
}

// run evaluates an expression in the page, a promise to its end.
func (t *tab) run(expression string, into any) error {
	var out struct {
		Result struct {
			Value json.RawMessage `json:"value"`
		} `json:"result"`
		Exception *struct {
			Text      string `json:"text"`
			Exception struct {
				Description string `json:"description"`
			} `json:"exception"`
		} `json:"exceptionDetails"`
	}
	err := t.call("Runtime.evaluate", map[string]any{
		"expression": expression, "awaitPromise": true, "returnByValue": true, "userGesture": true,
	}, &out)
	switch {
	case err != nil:
		return err
	case out.Exception != nil:
		return fmt.Errorf("in the page: %s %s", out.Exception.Text, out.Exception.Exception.Description)
	case into == nil || len(out.Result.Value) == 0:
		return nil
	}
	return json.Unmarshal(out.Result.Value, into)
}

// open goes to an address and waits until the library has answered there.
func (t *tab) open(address string) error {
	if err := t.call("Page.navigate", map[string]any{"url": "about:blank"}, nil); err != nil {
		return err
	}
	if err := t.call("Page.navigate", map[string]any{"url": address}, nil); err != nil {
		return err
	}
	return t.ready()
}

func (t *tab) ready() error {
	return t.until("!!document.documentElement.dataset.ready", 20*time.Second)
}

// until waits until an expression holds in the page.
func (t *tab) until(expression string, patience time.Duration) error {
	end := time.Now().Add(patience)
	for {
		holds := false
		err := t.run(expression, &holds)
		if err == nil && holds {
			return nil
		}
		if time.Now().After(end) {
			return fmt.Errorf("waited %v in vain for %s (%w)", patience, expression, errors.Join(err, errors.New("not so")))
		}
		time.Sleep(10 * time.Millisecond)
	}
}
