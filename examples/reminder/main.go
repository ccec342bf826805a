// Command reminder says when a levain that was just fed is ripe, and rings at the right time. With a log of bakes it goes
// by what they have taught of the baker's own culture.
//
//	go run ./examples/reminder -seed "1:4:4" -room "21 °C"
//	go run ./examples/reminder -seed "1:2:2" -room "23 °C" -ring
//	go run ./examples/reminder -log ~/.local/share/maslin/bakes.jsonl
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
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
	logged := flags.String("log", "", "a log of bakes, as maslin log keeps it: by what they have taught of your culture")
	ring := flags.Bool("ring", false, "wait, and ring when it is time to look")
	if err := flags.Parse(args); err != nil {
		return err
	}
	fed, err := dough.ParseFeeding(*feed)
	if err != nil {
		return fmt.Errorf("-seed: %w", err)
	}
	fed.Starter.Hydration = fed.Water.PercentOf(fed.Flour) // as wet as what it is fed with
	culture, err := learned(*logged)
	if err != nil {
		return fmt.Errorf("-log: %w", err)
	}
	stages, err := bakeday.FedLevain{Feedings: []dough.Feeding{fed}, Ripening: ferment.Ripening{
		Hydration: fed.Hydration(), History: ferment.Constant(room), Law: ferment.GasBalance(), ColdSeed: *cold,
		Culture: culture,
	}}.Ripe()
	if err != nil {
		return err
	}
	ripe := stages[0]
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

// learned is what the bakes of a log have taught of the culture in their levain; without a log it is nothing.
func learned(name string) (ferment.Culture, error) {
	if name == "" {
		return ferment.Culture{}, nil
	}
	kept, err := bakelog.Read(name, bench.LogReading{})
	if err == nil && len(kept.Entries) == 0 {
		err = errors.New("nothing is logged in " + quantity.Excerpt(name))
	}
	if err != nil {
		return ferment.Culture{}, err
	}
	lessons, err := kept.Entries.Learn(0)
	return lessons.Culture(bench.ByLevain), err
}
