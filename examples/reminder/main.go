// Command reminder says when a levain that was just fed is ripe, and rings at the right time.
//
//	go run ./examples/reminder -seed "1:4:4" -room "21 °C"
//	go run ./examples/reminder -seed "1:2:2" -room "23 °C" -ring
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, time.Now(), time.Sleep); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
}

func run(args []string, out io.Writer, now time.Time, sleep func(time.Duration)) error {
	flags := flag.NewFlagSet("reminder", flag.ContinueOnError)
	flags.SetOutput(out)
	room := quantity.Celsius(21)
	flags.TextVar(&room, "room", room, "how warm the levain stands")
	feed := flags.String("seed", "1:2:2", "parts of ripe seed, flour and water by weight")
	cold := flags.Bool("cold", false, "the seed comes from the refrigerator")
	ring := flags.Bool("ring", false, "wait, and ring when it is time to look")
	if err := flags.Parse(args); err != nil {
		return err
	}
	seed, hydration, err := parts(*feed)
	if err != nil {
		return err
	}
	ripe, err := ferment.Ripening{Seed: seed, Hydration: hydration, History: ferment.Constant(room), Law: ferment.GasBalance(), ColdSeed: *cold}.Ripe()
	if err != nil {
		return err
	}
	at := func(d time.Duration) string { return now.Add(d).Format("Mon 15:04") }
	fmt.Fprintf(out, "look at it from %s, likely ripe %s, use it before %s\n", at(ripe.From.Early), at(ripe.From.Likely), at(ripe.Until.Likely))
	for _, c := range ripe.Cautions() {
		fmt.Fprintln(out, c)
	}
	if *ring {
		sleep(ripe.From.Early)
		fmt.Fprintln(out, "\aLook at the levain.")
	}
	return nil
}

// parts reads a feed such as "1:4:4": what share of the flour is seed, and how wet the levain is. The
// seed is taken to be as wet as what it is fed with.
func parts(feed string) (seed, hydration quantity.Percent, err error) {
	fields := strings.Split(feed, ":")
	var v [3]float64
	if len(fields) == 3 {
		for i, f := range fields {
			n, e := strconv.ParseFloat(strings.TrimSpace(f), 64)
			v[i], err = n, errors.Join(err, e)
		}
	}
	if len(fields) != 3 || err != nil || v[1] <= 0 {
		return seed, hydration, fmt.Errorf(`-seed: got %s, want parts of seed, flour and water, such as "1:4:4"`, quantity.Excerpt(feed))
	}
	hydration = quantity.NewPercent(100 * v[2] / v[1])
	seed, err = ferment.FeedRatio{Seed: v[0], Flour: v[1], SeedHydration: hydration}.SeedShare()
	return seed, hydration, err
}
