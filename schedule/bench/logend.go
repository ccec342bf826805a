package bench

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
)

// longLine is longer than any line that is written.
const longLine = 4 << 20

// Behind answers: what is to be written behind a log of so many bytes so that it goes on with these observations? Their
// lines, as [Observations.Lines] has them; where the last line was not finished they begin with a line end, so that it
// keeps to itself. What is there is a log, and ours, when it is empty, when one of its lines can be read, or when it is
// no more than the beginning of one, as a power cut leaves it. Behind anything else nothing is to be written.
//
// Errors: those of [Observations.Lines]; [LaterVersion] where the last line is of one; those of the reader.
func (all Observations) Behind(log io.ReaderAt, size int64) (lines []byte, ours bool, err error) {
	last, err := lastLine(log, size)
	if err != nil {
		return nil, false, err
	}
	if ours, err = isLog(log, size, last); err != nil || !ours {
		return nil, ours, err
	}
	if len(last) > 0 && last[len(last)-1] != '\n' {
		lines = []byte("\n")
	}
	more, err := all.Lines()
	return append(lines, more...), true, err
}

// isLog reports whether what is there is a log. A log of a later version is an error.
func isLog(log io.ReaderAt, size int64, last []byte) (bool, error) {
	if size == 0 {
		return true, nil
	}
	end, err := LogReading{Last: 1}.From(bytes.NewReader(last))
	if later := (LaterVersion{}); errors.As(err, &later) {
		return false, LaterVersion{Version: later.Version} // of the whole log it is another line
	}
	if err != nil {
		return false, err
	}
	if len(end.Entries) > 0 {
		return true, nil
	}
	whole, err := LogReading{Last: 1}.From(io.NewSectionReader(log, 0, size))
	if err != nil || len(whole.Entries) > 0 {
		return true, err
	}
	const first = `{"v":`
	n := min(len(first), len(last))
	return len(whole.Unreadable) == 1 && int64(len(last)) == size && last[len(last)-1] != '\n' &&
		string(last[:n]) == first[:n] && !json.Valid(last), nil
}

// lastLine is the last line with its end, or as much of it as one line may have.
func lastLine(log io.ReaderAt, size int64) ([]byte, error) {
	for step := int64(4096); ; step *= 8 {
		from := max(0, size-step)
		tail := make([]byte, size-from)
		if n, err := log.ReadAt(tail, from); n < len(tail) {
			return nil, err
		}
		if i := bytes.LastIndexByte(bytes.TrimSuffix(tail, []byte("\n")), '\n'); i >= 0 {
			return tail[i+1:], nil
		}
		if from == 0 || step > longLine {
			return tail, nil
		}
	}
}
