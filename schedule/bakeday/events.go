package bakeday

import (
	"encoding/hex"
	"fmt"
	"hash/fnv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/calendar"
)

// CalendarID identifies the plan in calendars: a hash of the bread's name and the day it is wanted, so
// that a changed plan for the same bread and day moves the events of the old one.
func (s PlanData) CalendarID() string {
	h := fnv.New128a()
	_, _ = h.Write([]byte(s.Name + "\x00" + s.Wanted.Format(time.DateOnly))) // never fails
	return hex.EncodeToString(h.Sum(nil))
}

// CalendarEvents turns the timetable into events for package calendar. Steps that need hands
// block the time and remind a quarter of an hour before; a living step reminds when it is time to
// look.
func (s PlanData) CalendarEvents() []calendar.Event { return eventsOf(s.Steps, s.Name) }

// eventsOf are the events of steps; a name is added to each.
func eventsOf(steps []StepData, name string) []calendar.Event {
	var out []calendar.Event
	for _, t := range steps {
		e := calendar.Event{
			Step: t.ID, Summary: t.withAdditions().String(), From: t.Start, To: t.End, Busy: t.Hands,
			Description: fmt.Sprintf("latest start %s, earliest %s", t.LatestStart.Format("Mon 15:04"),
				t.EarliestStart.Format("Mon 15:04")),
		}
		for _, note := range t.Notes {
			e.Description += "\n" + note
		}
		if name != "" {
			e.Summary += " (" + name + ")"
		}
		switch {
		case t.Kind == schedule.Tend: // at its minute
			e.Alarms = []calendar.Alarm{{}}
		case t.Hands || t.Kind == schedule.Preheat:
			e.Alarms = []calendar.Alarm{{Before: quantity.Elapsed(15 * time.Minute)}}
		}
		if t.LookFrom != nil && t.LookTo != nil {
			e.Description += fmt.Sprintf("; look at it from %s to %s", t.LookFrom.Format("15:04"),
				t.LookTo.Format("15:04"))
			e.Alarms = append(e.Alarms,
				calendar.Alarm{Before: quantity.Elapsed(t.Start.Sub(*t.LookFrom)), Text: "look at the dough"})
		}
		out = append(out, e)
	}
	return out
}

// CalendarID identifies the day in calendars: a hash of the names of its breads and the day the first is wanted.
// That of one bread is the bread's own.
func (s KitchenDayData) CalendarID() string {
	if len(s.Breads) == 1 {
		return s.Breads[0].CalendarID()
	}
	var all PlanData
	for i, b := range s.Breads {
		if i == 0 {
			all.Wanted = b.Wanted
		}
		all.Name += b.Name + "\x00"
	}
	return all.CalendarID()
}

// CalendarEvents turns the timetable of all breads into events; see [PlanData.CalendarEvents].
func (s KitchenDayData) CalendarEvents() []calendar.Event {
	if len(s.Breads) == 1 {
		return s.Breads[0].CalendarEvents()
	}
	return eventsOf(s.Steps, "")
}
