package desk

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/wallclock"
)

// marks are the boxes and words of a picture: what they are, where they stand, and the text.
type mark struct {
	what, text, anchor string
	x, y, w, h         float64
}

// pictures reads the drawings of a page: their width and height, and what stands in them.
func pictures(t *testing.T, page string) (sizes [][2]float64, marks [][]mark) {
	t.Helper()
	for _, svg := range strings.Split(page, "<svg ")[1:] {
		svg, _, ok := strings.Cut("<svg "+svg, "</svg>")
		if !ok {
			t.Fatalf("a picture that does not end: %.80s", svg)
		}
		d := xml.NewDecoder(strings.NewReader(svg + "</svg>"))
		d.Strict, d.Entity = false, xml.HTMLEntity
		var all []mark
		var size [2]float64
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			switch token := token.(type) {
			case xml.StartElement:
				m := mark{what: token.Name.Local}
				for _, a := range token.Attr {
					n, _ := strconv.ParseFloat(a.Value, 64)
					switch a.Name.Local {
					case "x":
						m.x = n
					case "y":
						m.y = n
					case "width":
						m.w = n
					case "height":
						m.h = n
					case "text-anchor":
						m.anchor = a.Value
					case "viewBox":
						if _, err := fmt.Sscanf(a.Value, "0 0 %g %g", &size[0], &size[1]); err != nil {
							t.Fatalf("viewBox %q: %v", a.Value, err)
						}
					}
				}
				all = append(all, m)
			case xml.CharData:
				if n := len(all); n > 0 && all[n-1].what == "text" {
					all[n-1].text += string(token)
				}
			}
		}
		sizes, marks = append(sizes, size), append(marks, all)
	}
	return sizes, marks
}

// Whatever the width of the page, what is drawn lies in its picture, and no words begin or end outside of it.
func TestPicturesKeepToTheirFrames(t *testing.T) {
	seen := 0
	for _, id := range Tasks() {
		for _, width := range []int{320, 1280} {
			out := ask(t, Request{Do: "type", Width: width, State: State{At: id, Phase: open}})
			page := out.Answer
			for _, board := range out.Board {
				page += board
			}
			sizes, marks := pictures(t, page)
			for i, all := range marks {
				seen++
				w, h := sizes[i][0], sizes[i][1]
				for _, m := range all {
					long := 6 * float64(len([]rune(m.text))) // narrower than any font has it
					from, to := m.x, m.x+m.w
					switch m.anchor {
					case "middle":
						from, to = m.x-long/2, m.x+long/2
					case "start":
						to = m.x + long
					case "end":
						from = m.x - long
					}
					if (m.what == "text" || m.what == "rect") &&
						(from < -1 || to > w+1 || m.y < 0 || m.y+m.h > h+1) {
						t.Errorf("%s, %d px: %+v in a picture of %v x %v", id, width, m, w, h)
					}
				}
			}
		}
	}
	if seen < 10 {
		t.Errorf("%d pictures", seen)
	}
}

// The levers stand about the temperature that is wanted, which is written over the middle; and what the weights of a
// bowl are is written below their names.
func TestLeversStandAboutWhatIsWanted(t *testing.T) {
	out := ask(t, Request{Do: "type", Width: 1280, State: State{At: "water.plan", Phase: open}})
	sizes, marks := pictures(t, out.Answer)
	for i, all := range marks {
		if j := slices.IndexFunc(all, func(m mark) bool { return m.what == "text" }); j >= 0 && all[j].anchor == "middle" {
			if all[j].x != sizes[i][0]/2 || !strings.Contains(all[j].text, "°C") {
				t.Errorf("%+v in a picture of %v", all[j], sizes[i])
			}
			return
		}
	}
	t.Errorf("no levers in %s", out.Answer)
}

// How many things are to be mended is said with each of them.
func TestWhatIsToBeMendedIsCounted(t *testing.T) {
	for n, fields := range map[int]map[string]string{1: {"room": "x"}, 2: {"room": "x", "target": "y"}} {
		out := ask(t, Request{Do: "type", Width: 1280, State: State{At: "water.plan", Phase: open, Fields: fields}})
		want := fmt.Sprintf("%d things to mend before there is an answer.", n)
		if n == 1 {
			want = "1 thing to mend before there is an answer."
		}
		if out.Status != want || !strings.Contains(out.Answer, want) || len(out.Problems) != n || out.Headline != "" {
			t.Errorf("%q, %v; want %q", out.Status, out.Problems, want)
		}
	}
	// What is about no field stands by itself, once.
	task, _ := taskOf("water.plan")
	byField, others := problemTexts(errors.New("the mixer stands still"), task, nil, working.Reader{})
	if len(byField) != 0 || !slices.Equal(others, []string{"the mixer stands still"}) {
		t.Errorf("%v, %v", byField, others)
	}
	byField, others = problemTexts(&quantity.InputError{Path: "room", Want: quantity.Tell("test.want_x", "x"),
		Err: quantity.ErrRequired}, task, nil, working.Reader{})
	if len(byField) != 1 || len(others) != 0 {
		t.Errorf("%v, %v", byField, others)
	}
}

// A slider over the days of the class stops each half hour from its first moment to its last.
func TestHalfHoursOfTheClass(t *testing.T) {
	all := halfHours()
	first, last := wallclock.MustMoment(hallNow), wallclock.MustMoment(hallEnd)
	for i, text := range all {
		m := wallclock.MustMoment(text)
		if m.Clock.Minute%30 != 0 || m.Compare(first) < 0 || m.Compare(last) > 0 ||
			i > 0 && m.Compare(wallclock.MustMoment(all[i-1])) <= 0 {
			t.Errorf("stop %d is %v", i, m)
		}
	}
	for _, want := range []string{first.String(), last.String()} {
		if m := wallclock.MustMoment(want); m.Clock.Minute%30 == 0 && !slices.Contains(all, want) {
			t.Errorf("no stop at %s", want)
		}
	}
	if !slices.ContainsFunc(all, func(s string) bool { return strings.HasSuffix(s, " 00:00") }) {
		t.Error("no stop at midnight")
	}
}

// Among the choices of a reader the one that holds is marked, and no other.
func TestTheChoiceThatHoldsIsMarked(t *testing.T) {
	for _, units := range []string{"metric", "US customary"} {
		page := ask(t, Request{Do: "open", Width: 1280, Fragment: State{At: firstTask, Units: units}.Fragment()}).Page
		for _, choice := range []string{"metric", "US customary"} {
			marked := strings.Contains(page, `<option value="`+choice+`" selected=""`)
			if marked != (choice == units) {
				t.Errorf("%s in use, %s is marked: %v", units, choice, marked)
			}
		}
	}
}

// Whatever names another element of the page, as its label or its problem, or leads to it, finds it there.
func TestNamesOfAPageAreFound(t *testing.T) {
	id := regexp.MustCompile(` id="([^"]+)"`)
	named := regexp.MustCompile(` (?:for|aria-labelledby|aria-describedby)="([^"]+)"`)
	for _, at := range append(Tasks(), worksheet) {
		for _, phase := range []string{guessing, open} {
			page := ask(t, Request{Do: "open", Width: 1280, Fragment: State{At: at, Phase: phase}.Fragment()}).Page
			there := map[string]bool{}
			for _, m := range id.FindAllStringSubmatch(page, -1) {
				there[m[1]] = true
			}
			for _, m := range named.FindAllStringSubmatch(page, -1) {
				for _, name := range strings.Fields(m[1]) {
					if !there[name] {
						t.Errorf("%s, %q: nothing is %q", at, phase, name)
					}
				}
			}
		}
	}
}

// A link that holds something unknown says so in a paragraph that a screen reader reads out, above the task.
func TestWhatALinkLacksIsRead(t *testing.T) {
	page := ask(t, Request{Do: "open", Width: 1280, Fragment: signed("v=1&at=water.plan&moon=full")}).Page
	told, task := strings.Index(page, `<p class="problem" role="alert">`), strings.Index(page, `id="task-title"`)
	if told < 0 || told > task || !strings.Contains(page[told:task], "moon") {
		t.Errorf("told at %d, the task begins at %d", told, task)
	}
}

// Answers to a worksheet are numbered from one, as their questions are.
func TestAnswersAreNumbered(t *testing.T) {
	page := ask(t, Request{Do: "paper", Width: 1280, State: State{At: worksheet, Fields: map[string]string{"count": "3",
		"seed": "3", "topic.water": "on"}}}).Page
	for i := range 5 {
		want := i >= 1 && i <= 3
		if got := strings.Contains(page, fmt.Sprintf(`data-field="answer.%d"`, i)); got != want {
			t.Errorf("answer %d: %v", i, got)
		}
		if got := strings.Contains(page, fmt.Sprintf("Answer to question %d, in ", i)); got != want {
			t.Errorf("question %d: %v", i, got)
		}
	}
}

// The next dough like the last row goes at the pace of the class: where all rows took half as long, so does it, nearly.
func TestTheNextDoughGoesAtThePaceOfTheClass(t *testing.T) {
	hours := func(rows string) float64 {
		out := ask(t, Request{Do: "type", Width: 1280, State: State{At: "clock.class", Phase: open,
			Fields: map[string]string{"bakes": rows}}})
		e, err := quantity.ParseDuration(out.Value)
		if err != nil {
			t.Fatalf("%q: %v, %v", out.Value, err, out.Problems)
		}
		return e.Hours()
	}
	const row = "12 %|25 °C|50 %|"
	slow, fast := hours(strings.Repeat(row+"6 h;", 8)+row+"6 h"), hours(strings.Repeat(row+"3 h;", 8)+row+"3 h")
	if !(fast < 0.65*slow) || slow < 5 || slow > 7 {
		t.Errorf("after nine doughs of six hours %v h, of three %v h", slow, fast)
	}
}

// A dough that nothing raises has no answer, and the field that could raise it says so.
func TestNothingRaisesIt(t *testing.T) {
	task, _ := taskOf("clock.rise")
	fields := map[string]string{}
	for _, f := range task.fields {
		if strings.Contains(f.name, "inoculation") || strings.Contains(f.name, "amount") {
			fields[f.name] = "0 %"
		}
	}
	out := ask(t, Request{Do: "type", Width: 1280, State: State{At: "clock.rise", Phase: open, Fields: fields}})
	if out.Headline != "" || len(out.Problems) == 0 || !strings.Contains(out.Status, "to mend") {
		t.Errorf("with %v: %q, %v, %q", fields, out.Headline, out.Problems, out.Status)
	}
}

// Every element that is opened is closed where it was opened, whatever a lenient reader would make of it; sliders stand
// where the answer says.
func TestEveryElementIsClosed(t *testing.T) {
	tag := regexp.MustCompile(`<(/?)([a-zA-Z][a-zA-Z0-9]*)([^<>]*)>`)
	void := []string{"input", "br", "hr", "img", "meta", "link", "col"}
	check := func(what, page string) {
		var open []string
		for _, m := range tag.FindAllStringSubmatch(page, -1) {
			switch {
			case slices.Contains(void, m[2]) || strings.HasSuffix(m[3], "/"):
			case m[1] == "":
				open = append(open, m[2])
			case len(open) == 0 || open[len(open)-1] != m[2]:
				t.Errorf("%s: </%s> closes %v", what, m[2], open[max(0, len(open)-3):])
				return
			default:
				open = open[:len(open)-1]
			}
		}
		if len(open) > 0 {
			t.Errorf("%s: %v is not closed", what, open)
		}
	}
	for _, at := range append(Tasks(), worksheet) {
		for _, phase := range []string{guessing, open} {
			out := ask(t, Request{Do: "open", Width: 1280, Working: true, Fragment: State{At: at, Phase: phase,
				Fields: map[string]string{"key": "on"}}.Fragment()})
			check(at+" "+phase, out.Page)
			for name, place := range out.Places {
				if !strings.Contains(out.Page, fmt.Sprintf(`value="%d" data-slide="%s"`, place, name)) {
					t.Errorf("%s: the slider of %s does not stand at %d", at, name, place)
				}
			}
		}
	}
	wrong := ask(t, Request{Do: "type", Width: 1280, State: State{At: "water.plan", Phase: open,
		Fields: map[string]string{"room": "x"}}})
	check("problems", wrong.Answer)
	quick := ask(t, Request{Do: "type", Quick: true, Width: 1280, State: State{At: "water.plan", Phase: open}})
	check("quick", quick.Answer)
	if quick.Answer != "" && !strings.Contains(quick.Answer, quick.Headline) {
		t.Errorf("while a slider moves %q is not told", quick.Headline)
	}
}
