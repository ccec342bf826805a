package cli

import (
	"os"
	"path/filepath"
	"time"

	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/calendar"
)

// writeFile writes to a temporary file beside the target, syncs it and renames it, so that the
// target is either the old file or the whole new one.
func writeFile(name string, content []byte) error {
	refuse := func(err error) error { return badInput("%s: cannot be written: %s", name, reason(err)) }
	f, err := os.CreateTemp(filepath.Dir(name), ".maslin-*")
	if err != nil {
		return refuse(err)
	}
	defer os.Remove(f.Name())
	_, err = f.Write(content)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return refuse(err)
	}
	return nil
}

// writeCalendar writes the timetable as a calendar file. The sequence number grows with the clock, so
// that a later export of the same plan moves the events of an earlier one.
func writeCalendar(name string, s bakeday.Sheet, now time.Time) error {
	content, err := calendar.File{
		Plan: s.CalendarID(), Name: s.Name, Stamp: now, Sequence: int(now.Unix() / 60), Events: s.CalendarEvents(),
	}.Encode()
	if err != nil {
		return badInput("%s: %s", name, err)
	}
	return writeFile(name, content)
}
