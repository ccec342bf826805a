package main

import (
	"errors"
	"fmt"
	"slices"

	"example.org/maslin/examples/classroom/assemble"
	"example.org/maslin/examples/classroom/desk"
)

// What is measured is the time of the page's own thread on a processor, so that other work on the machine does not
// count. The limits are above what a quiet machine needs, for machines that are slower.
const (
	mostToBegin = 1500 // ms
	mostToMove  = 50
	// What a phone has to load, compressed; this is the same on every machine.
	mostToTransfer = 1_600_000 // bytes
)

// timing measures what a reader waits for: the first answer, and a slider that moves. It prints what it found.
func (v *visit) timing() error {
	if err := v.t.call("Performance.enable", map[string]any{"timeDomain": "threadTicks"}, nil); err != nil {
		return err
	}
	size := len(v.classes.Files[assemble.Compressed])
	fmt.Printf("     to transfer %d kB, unpacked %d kB, single file %d kB\n", size/1000, len(v.classes.Library)/1000,
		len(v.classes.Files[assemble.SingleFile])/1000)
	if size > mostToTransfer {
		return fmt.Errorf("%d bytes to transfer, wanted are at most %d", size, mostToTransfer)
	}
	var errs []error
	for _, c := range []struct {
		what, address string
		slower        float64
	}{{"served", v.served, 1}, {"single file", v.single, 1}, {"single file, slowed four times", v.single, 4}} {
		if err := v.t.call("Emulation.setCPUThrottlingRate", map[string]any{"rate": c.slower}, nil); err != nil {
			return err
		}
		var clock []int
		var thread []float64
		for range 3 {
			if err := v.t.open(c.address); err != nil {
				return err
			}
			var ms int
			if err := v.t.run("Number(document.documentElement.dataset.ready)", &ms); err != nil {
				return err
			}
			clock = append(clock, ms)
			used, err := v.threadTime()
			if err != nil {
				return err
			}
			thread = append(thread, used)
		}
		fmt.Printf("     first answer, %s: %d ms by the clock, %.0f ms of the page's thread (best of %d)\n", c.what,
			slices.Min(clock),
			slices.Min(thread), len(clock))
		if c.slower == 1 && slices.Min(thread) > mostToBegin {
			errs = append(errs, fmt.Errorf("first answer, %s: %.0f ms of the page's thread", c.what, slices.Min(thread)))
		}
		if c.address == v.served {
			continue
		}
		for _, id := range []string{"percentages.scale", "water.plan", "clock.rise", "heat.crust"} {
			clock, thread, err := v.moves(id)
			if err != nil {
				return err
			}
			fmt.Printf("     a slider moves, %s, %s: median %.1f ms by the clock, mean %.1f ms of the page's thread\n", c.what,
				id, clock, thread)
			if c.slower == 1 && thread > mostToMove {
				errs = append(errs, fmt.Errorf("a slider moves, %s, %s: %.1f ms of the page's thread", c.what, id, thread))
			}
		}
	}
	if !v.strict {
		for _, err := range errs {
			fmt.Println("     slower than wanted:", err)
		}
		return nil
	}
	return errors.Join(errs...)
}

// threadTime is how long the page's thread has worked since the page began, in ms.
func (v *visit) threadTime() (float64, error) {
	var out struct {
		Metrics []struct {
			Name  string
			Value float64
		}
	}
	if err := v.t.call("Performance.getMetrics", nil, &out); err != nil {
		return 0, err
	}
	for _, m := range out.Metrics {
		if m.Name == "ThreadTime" {
			return m.Value * 1000, nil
		}
	}
	return 0, errors.New("the browser tells no thread time")
}

// moves is what a move of a slider takes, in ms: the library's answer, and putting it on the page with its layout.
func (v *visit) moves(id string) (clock, thread float64, err error) {
	const moves = 20
	if err := v.t.visit(desk.State{At: id, Phase: "open"}.Fragment()); err != nil {
		return 0, 0, err
	}
	const move = `(() => {
		const slider = document.querySelector("[data-slide]"), all = [];
		for (let i = 0; i < %d; i++) {
			slider.value = Number(slider.value) + (i %% 2 ? -1 : 1);
			document.getElementById("f-" + slider.dataset.slide).value = slider.dataset.stops.split("|")[slider.value];
			const began = performance.now();
			typed(true);
			document.body.offsetHeight;
			all.push(performance.now() - began);
		}
		clearTimeout(asked);
		return all.sort((a, b) => a - b)[all.length / 2];
	})()`
	if err := v.t.run(fmt.Sprintf(move, 4), nil); err != nil {
		return 0, 0, err
	}
	before, err := v.threadTime()
	if err != nil {
		return 0, 0, err
	}
	if err := v.t.run(fmt.Sprintf(move, moves), &clock); err != nil {
		return 0, 0, err
	}
	after, err := v.threadTime()
	return clock, (after - before) / moves, err
}
