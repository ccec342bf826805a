package main

import (
	"cmp"
	"html/template"
	"log"
	"net/http"
	"strings"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
)

// asked are the fields of the form: their names are the paths of mixing.Factors in its JSON, and so of its errors.
var asked = []string{"target", "others[0].kind", "others[0].temperature", "others[1].kind", "others[1].temperature",
	"friction", "mixer"}

type field struct {
	Name, Value string
	Choices     []choice
	Problems    []string
}

type choice struct{ Value, Text string }

var page = template.Must(template.New("water").Parse(`<!doctype html>
<html lang="{{.Language}}"><title>Maslin</title>
<form method="post">{{range $f := .Fields}}
<p><label>{{.Name}} {{if .Choices}}<select name="{{.Name}}"{{if .Problems}} aria-invalid="true"{{end}}><option></option>
{{range .Choices}}<option value="{{.Value}}"{{if eq .Value $f.Value}} selected{{end}}>{{.Text}}</option>{{end}}</select>
{{else}}<input name="{{.Name}}" value="{{.Value}}"{{if .Problems}} aria-invalid="true"{{end}}>{{end}}</label>
{{range .Problems}}<strong>{{.}}</strong>{{end}}</p>{{end}}
<button>=</button></form>
{{range .Problems}}<p><strong>{{.}}</strong></p>
{{end}}{{.Answer}}`))

// water is a page that asks how warm the water must be, and marks the fields of which something is wrong.
func water(w http.ResponseWriter, r *http.Request) {
	wished, _, _ := strings.Cut(cmp.Or(r.Header.Get("Accept-Language"), "en"), ",")
	tag, _, _ := strings.Cut(wished, ";") // its weight is of no use: it is the first
	spoken, _ := language.Named(tag)
	options := report.Options{Language: spoken}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<16)
	shown := struct {
		Language string
		Fields   []field
		Problems []string
		Answer   template.HTML
	}{Language: cmp.Or(spoken.Tag, "en")}
	status := http.StatusOK
	of := map[string][]string{}
	if r.Method == http.MethodPost {
		answer, err := answerOf(r)
		if err != nil {
			status = http.StatusUnprocessableEntity
		}
		found := quantity.InputErrors(err)
		if err != nil && len(found) == 0 { // no form, or more than is read
			shown.Problems = append(shown.Problems, err.Error())
		}
		for _, e := range found {
			at := e.Path
			alone := *e
			alone.Path, alone.GoPath = "", "" // it stands beside its field
			of[at] = append(of[at], working.Problem(&alone).Text(options.Reader()))
		}
		shown.Answer = template.HTML(answer.Fragment(options)) // the library escapes every name in it
	}
	for _, name := range asked {
		f := field{Name: name, Value: r.PostForm.Get(name), Problems: of[name]}
		switch {
		case name == "mixer":
			f.Choices = choices[mixing.MixerKind](options.Reader())
		case strings.HasSuffix(name, ".kind"):
			f.Choices = choices[mixing.FactorKind](options.Reader())
		}
		delete(of, name)
		shown.Fields = append(shown.Fields, f)
	}
	for path, texts := range of { // of a list, or of a field that the form has not
		shown.Problems = append(shown.Problems, path+": "+strings.Join(texts, "; "))
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	if err := page.Execute(w, shown); err != nil {
		log.Print(err)
	}
}

func answerOf(r *http.Request) (report.Report, error) {
	if err := r.ParseForm(); err != nil {
		return report.Report{}, err
	}
	var in mixing.Factors
	if err := quantity.ReadForm(r.PostForm, &in); err != nil {
		return report.Report{}, err
	}
	answer, err := in.Water()
	if err != nil {
		return report.Report{}, err
	}
	return answer.Report(), nil
}

// choices are the words of an enumeration, as they are sent and as the reader says them.
func choices[E interface {
	~int
	MarshalText() ([]byte, error)
}](r working.Reader) []choice {
	var out []choice
	for _, v := range quantity.Values[E]() {
		word, err := v.MarshalText()
		if err != nil {
			continue // Values lists those that have a word
		}
		out = append(out, choice{string(word), working.Say("%s", v).Text(r)})
	}
	return out
}
