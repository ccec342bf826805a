package desk

import (
	"strconv"
	"strings"
)

// A builder writes the elements of a page. Texts are escaped where they are put in; tags are written by this package
// alone.
type builder struct{ b strings.Builder }

var entities = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;")

// raw puts in what is markup already.
func (b *builder) raw(parts ...string) {
	for _, p := range parts {
		b.b.WriteString(p)
	}
}

// text puts in what is text.
func (b *builder) text(s string) { b.b.WriteString(entities.Replace(s)) }

// tag opens an element; attributes are names and values in turn, and one without a value has an empty one.
func (b *builder) tag(name string, attributes ...string) {
	b.raw("<", name)
	for i := 0; i+1 < len(attributes); i += 2 {
		b.raw(" ", attributes[i], `="`)
		b.text(attributes[i+1])
		b.raw(`"`)
	}
	b.raw(">")
}

func (b *builder) end(name string) { b.raw("</", name, ">\n") }

// el is an element with a text in it.
func (b *builder) el(name, text string, attributes ...string) {
	b.tag(name, attributes...)
	b.text(text)
	b.end(name)
}

func (b *builder) String() string { return b.b.String() }

// px is a place in a picture, to a tenth of a pixel.
func px(x float64) string { return strconv.FormatFloat(float64(int(x*10+0.5))/10, 'f', -1, 64) }
