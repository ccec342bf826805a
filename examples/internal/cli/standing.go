package cli

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// standing is how warm a dough or a levain is while it ferments, and what is known of its culture.
type standing struct {
	logFlags
	Dough       quantity.Temperature `flag:"dough" paths:"History=dough Start=dough"`
	Room        quantity.Temperature `flag:"room" paths:"Room.Night=room Into=room Into.Night=room"`
	Night       quantity.Temperature `flag:"night" paths:"Room.Day=night Into.Day=night"`
	Weight      quantity.Mass        `flag:"weight"`
	Drift       quantity.Elapsed     `flag:"drift" usual:"2h" paths:"TimeConstant=drift Points=readings"`
	Readings    string               `flag:"readings"`
	WholeGrain  quantity.Percent     `flag:"whole-grain"`
	Curve       ferment.Curve        `flag:"curve" paths:"Law=curve Law.Levain=curve Law.Yeast=curve"`
	Extrapolate bool                 `flag:"extrapolate"`
	HalfLife    quantity.Elapsed     `flag:"half-life"`
	WithoutLog  bool                 `flag:"without-log"`

	start   time.Time // of the clock of the dough
	clocked bool      // start is real: it was given
	relax   ferment.Relaxing
}

// startAt is when the dough was mixed or the levain fed, by the flag that says so.
func (q *standing) startAt(c *call, flag, text string) (err error) {
	if q.start, err = q.clock(c.System, nil); err != nil {
		return err
	}
	if q.clocked = text != ""; q.clocked {
		q.start = c.past(flag, text, q.start)
	}
	return nil
}

// history is the temperature from the start on. It is one that a plan can be made with even where flags are wrong, so
// that all that is wrong is said.
func (q *standing) history(c *call) (ferment.History, error) {
	h, err := q.warmth(c)
	if found := quantity.InputErrors(err); len(found) > 0 {
		for _, e := range found {
			c.note(strings.TrimPrefix(c.flagFor(e.GoPath), "--"), e)
		}
		err = nil
	}
	if len(c.faults) > 0 {
		h = ferment.Constant(quantity.Celsius(24))
	}
	return h, err
}

func within(law ferment.About, t quantity.Temperature) bool {
	return t.Celsius() >= law.Low && t.Celsius() <= law.High
}

func (q *standing) warmth(c *call) (ferment.History, error) {
	if q.Readings != "" {
		c.clash(quantity.Tell("cli.want_one_them_readings_say_how", "one of them: the readings say how warm the dough was"),
			[]string{"dough", "room", "night", "weight", "drift"})
		c.paths["History"] = "readings"
		_, h, err := readReadings(q.Readings)
		return h, err
	}
	if q.Dough.IsZero() {
		c.need("dough", quantity.Tell("cli.want_temperature_dough_after_mixing_25",
			`the temperature of the dough after mixing, such as "25 °C", or --readings FILE`))
		return ferment.History{}, nil
	}
	var p quantity.Problems
	if !quantity.Check(&p, "Start", q.Dough, quantity.Celsius(-25), quantity.Celsius(60)) {
		return ferment.History{}, p.Err()
	}
	if q.Room.IsZero() {
		c.only(quantity.Tell("cli.with_dough_room", "--dough and --room, between which it changes"),
			"night", "weight", "drift")
		return ferment.Constant(q.Dough), nil
	}
	if law := ferment.GasBalance().About(); within(law, q.Dough) && !within(law, q.Room) {
		c.paths["History"] = "room" // which is what leads the dough out of the law
	}
	room := ferment.Room{Night: q.Room}
	if !q.Night.IsZero() {
		room = ferment.Room{Night: q.Night, Day: q.Room, Starts: quantity.Elapsed(sinceMidnight(q.start))}
		for _, in := range []string{"Room", "Into"} {
			c.paths[in+".Night"], c.paths[in+".Day"] = "night", "room"
		}
	}
	if q.Weight.Sign() > 0 {
		c.not(quantity.Tell("cli.with_weight_drift", "--weight, which says how fast it drifts"), "drift")
		return ferment.Piece{Mass: q.Weight, Form: ferment.Tub, Start: q.Dough, Into: room,
			Exposure: ferment.Covered}.History()
	}
	q.relax = ferment.Relaxing{Start: q.Dough, Room: room, TimeConstant: q.Drift}
	return q.relax.History()
}

func sinceMidnight(t time.Time) time.Duration {
	return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute
}

// culture is what the log knows of the culture.
func (q *standing) culture(s System, of bench.Raising) (ferment.Culture, error) {
	if q.WithoutLog {
		return ferment.Culture{}, nil
	}
	if q.Log == "" {
		if _, ok := bakelog.Place(s.Getenv); !ok {
			return ferment.Culture{}, nil // nowhere to keep a log, so there is none
		}
	}
	_, content, err := q.read(s)
	if err != nil {
		return ferment.Culture{}, err
	}
	l, err := content.Entries.Learn(q.HalfLife.Duration())
	return l.Culture(of), err
}

// readReadings reads a probe's file; faults are named with their line.
func readReadings(name string) (r ferment.Readings, h ferment.History, err error) {
	source, err := readText(name)
	if err != nil {
		return r, h, err
	}
	if r, err = ferment.ParseReadings(source); err == nil {
		h, err = r.History()
	}
	return r, h, lineFaults(name, err)
}

var (
	linePath    = regexp.MustCompile(`^line (\d+) (.+)$`)
	readingPath = regexp.MustCompile(`^Points\[(\d+)\]\.(At|Temperature)$`)
)

// lineFaults turns paths such as "line 3 time" into places of a file.
func lineFaults(name string, err error) error {
	if err == nil {
		return nil
	}
	name = fileName(name)
	var lines []string
	for _, e := range quantity.InputErrors(err) {
		moved, at := *e, name
		if m := linePath.FindStringSubmatch(e.GoPath); m != nil {
			at, moved.Path, moved.GoPath = name+":"+m[1], "", m[2]
		} else if m := readingPath.FindStringSubmatch(e.GoPath); m != nil {
			n, _ := strconv.Atoi(m[1]) // digits
			column := strings.ToLower(strings.Replace(m[2], "At", "time", 1))
			moved.Path, moved.GoPath = "", fmt.Sprintf("reading %d, %s", n+1, column)
		}
		lines = append(lines, at+": "+moved.Error())
	}
	if len(lines) == 0 {
		lines = []string{name + ": " + err.Error()}
	}
	return badInput(working.Say("%s", strings.Join(lines, "\n")))
}
