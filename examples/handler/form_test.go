package main

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"
)

func fill(method, spoken string, fields ...string) *httptest.ResponseRecorder {
	form := url.Values{}
	for i := 0; i < len(fields); i += 2 {
		form.Set(fields[i], fields[i+1])
	}
	r := httptest.NewRequest(method, "/water", strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Accept-Language", spoken)
	w := httptest.NewRecorder()
	handler(time.Now).ServeHTTP(w, r)
	return w
}

func TestTheFormAnswers(t *testing.T) {
	w := fill(http.MethodPost, "de-CH,de;q=0.9", "target", "26 °C", "others[0].kind", "flour", "others[0].temperature",
		"21 °C",
		"others[1].kind", "room", "others[1].temperature", "22 °C", "friction", "13 Δ°C")
	for _, want := range []string{`<html lang="de-CH">`, "Wasser mit 22,0\u00a0°C",
		`<option value="flour" selected>Mehl</option>`,
		`name="target" value="26 °C">`} {
		if !strings.Contains(w.Body.String(), want) {
			t.Errorf("%s is missing in\n%s", want, w.Body)
		}
	}
	if empty := fill(http.MethodGet, "fr"); w.Code != 200 || empty.Code != 200 ||
		strings.Contains(empty.Body.String(), "aria-invalid") || !strings.Contains(empty.Body.String(), ">spiral</option>") {
		t.Errorf("%d %d\n%s", w.Code, empty.Code, empty.Body)
	}
}

func TestTheFormMarksItsFields(t *testing.T) {
	w := fill(http.MethodPost, "de", "target", "26", "others[0].kind", "flur", "others[0].temperature", "21 °C",
		"others[1].temperature", "", "friction", `"><script>`)
	body := w.Body.String()
	for _, want := range []string{`name="target" value="26" aria-invalid="true">`,
		`name="others[0].kind" aria-invalid="true">`,
		"<strong>Einheit: angegeben ist &#34;26&#34; ohne Einheit, verlangt ist eine Temperatur",
		`value="&#34;&gt;&lt;script&gt;"`,
		"<strong>außerhalb des Bereichs: angegeben ist &#34;flur&#34;, verlangt ist Faktor: flour, room, levain, bowl"} {
		if !strings.Contains(body, want) {
			t.Errorf("%s is missing in\n%s", want, body)
		}
	}
	if strings.Contains(body, "<p><strong>") {
		t.Errorf("what stands at a field stands below, too:\n%s", body)
	}
	if kind := w.Header().Get("Content-Type"); kind != "text/html; charset=utf-8" {
		t.Error(kind)
	}
	if w.Code != http.StatusUnprocessableEntity || strings.Contains(body, "<script>") ||
		strings.Count(body, "aria-invalid") != 3 {
		t.Errorf("%d\n%s", w.Code, body)
	}
	if huge := fill(http.MethodPost, "en", "target", strings.Repeat("x", 1<<17)); huge.Code != 422 ||
		!strings.Contains(huge.Body.String(), "<p><strong>http: request body too large") {
		t.Errorf("%d\n%s", huge.Code, huge.Body)
	}
	nothing := fill(http.MethodPost, "en", "target", "26 °C")
	if body := nothing.Body.String(); nothing.Code != http.StatusUnprocessableEntity ||
		!strings.Contains(body, "<p><strong>others: required: want at least one other temperature") {
		t.Errorf("%d\n%s", nothing.Code, body)
	}
}

// What the form has no field for is told below it; a language without a catalog is English, with its tag.
func TestWhatTheFormHasNoFieldFor(t *testing.T) {
	w := fill(http.MethodPost, "fr", "target", "26 °C", "wrong", "1", "mixer", "spoon")
	body := w.Body.String()
	for _, want := range []string{`<html lang="en">`, "<p><strong>wrong: wrong form: got a name that is not known", `<select name="mixer" aria-invalid="true">`} {
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(body, want) {
			t.Errorf("%d: %s is missing in\n%s", w.Code, want, body)
		}
	}
	for spoken, want := range map[string]string{"": "en", "de": "de", "de-AT;q=1": "de-AT", "en-GB,de": "en", "de-AT,en": "de-AT"} {
		if body := fill(http.MethodGet, spoken).Body.String(); !strings.Contains(body, `<html lang="`+want+`">`) {
			t.Errorf("%q: not %s: %.60s", spoken, want, body)
		}
	}
	for length, code := range map[int]int{1<<16 - len("target="): 422, 1<<16 - len("target=") + 1: 422} {
		body := fill(http.MethodPost, "en", "target", strings.Repeat("x", length)).Body.String()
		if tooLarge := strings.Contains(body, "too large"); tooLarge != (length > 1<<16-len("target=")) {
			t.Errorf("a form of %d bytes, status %d: %.300s", length+len("target="), code, body)
		}
	}
}
