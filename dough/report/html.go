package report

import (
	_ "embed" // the style of the page
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/curve"
	"example.org/maslin/internal/textpage"
)

//go:embed page.css
var pageStyle string

// HTML renders the report as one page that needs nothing else: it asks no server, runs no script, follows the
// reader's choice of light or dark, and prints.
func (r Report) HTML(o Options) string {
	return textpage.Document(o.Language.Tag, r.Headline.Text(o.Reader()), pageStyle, "<main>\n"+r.Fragment(o)+"</main>\n")
}

// Style is the style sheet of [Report.HTML], for a page of one's own around [Report.Fragment].
func Style() string { return pageStyle }

// Fragment renders the report as the elements of a page: a heading of the first rank, and a section with a heading
// of the second rank for each part; [Options.Rank] sets them lower. Classes begin with "report-".
func (r Report) Fragment(o Options) string {
	h := pager{reader: o.Reader(), rank: min(max(o.Rank, 1), lowestRank), picture: o.pictureSize()}
	h.put("<h", strconv.Itoa(h.rank), ">", h.tell(r.Headline), "</h", strconv.Itoa(h.rank), ">\n")
	for _, s := range r.Sections {
		h.under = r.Headline
		h.put(`<section class="report-`, escapedHTML(s.Key), `">`, "\n")
		if !s.Title.IsZero() {
			h.title(s.Title)
		}
		for _, b := range s.Blocks {
			h.block(b)
		}
		h.put("</section>\n")
	}
	h.list("rests-on", titleRestsOn(), r.RestsOn)
	h.list("cautions", titleCautions(), cautionTexts(r.Cautions, o.EveryCaution))
	if o.WithSources && len(r.Sources) > 0 {
		h.put(`<section class="report-sources">`)
		h.title(titleSources())
		h.put("<ol>\n")
		for _, s := range r.Sources {
			h.put("<li>", h.tell(s.Message()), "</li>\n")
		}
		h.put("</ol>\n</section>\n")
	}
	return h.b.String()
}

// The lowest rank of a fragment's first heading: HTML has six, and a section has one below it.
const lowestRank = 4

// A pager writes HTML.
type pager struct {
	b       strings.Builder
	reader  working.Reader
	rank    int // of the first heading
	picture curve.Size
	under   working.Message // the latest heading
}

// title is the heading of a section.
func (h *pager) title(m working.Message) {
	h.under = m
	rank := strconv.Itoa(h.rank + 1)
	h.put("<h", rank, ">", h.tell(m), "</h", rank, ">\n")
}

func (h *pager) put(parts ...string) {
	for _, p := range parts {
		h.b.WriteString(p)
	}
}

// tell is a message as a text in which no number is parted from its unit, and no hours from their minutes.
func (h *pager) tell(m working.Message) string { return escapedHTML(textpage.Glue(m.Text(h.reader))) }

// cell is a value in an element that keeps its direction to itself: a name may be written from the right.
func (h *pager) cell(v Cell) string {
	text := escapedHTML(textpage.Glue(v.Text(h.reader)))
	switch raw := v.raw.(type) {
	case string:
		return "<bdi>" + text + "</bdi>"
	case time.Time:
		return `<time datetime="` + raw.Format(time.RFC3339) + `">` + text + "</time>"
	}
	return text
}

func (h *pager) list(key string, title working.Message, items []working.Message) {
	if len(items) == 0 {
		return
	}
	h.put(`<section class="report-`, key, `">`)
	h.title(title)
	h.put("<ul>\n")
	for _, m := range items {
		h.put("<li>", h.tell(m), "</li>\n")
	}
	h.put("</ul>\n</section>\n")
}

func (h *pager) block(b Block) {
	switch b := b.(type) {
	case Paragraph:
		class := [...]string{"", "report-strong", "report-warning", "report-aside"}[min(max(int(b.Tone), 0), 3)]
		if class != "" {
			class = ` class="` + class + `"`
		}
		h.put("<p", class, ">", h.tell(b.Text), "</p>\n")
	case List:
		h.put("<ul>\n")
		for _, m := range b {
			h.put("<li>", h.tell(m), "</li>\n")
		}
		h.put("</ul>\n")
	case Rows:
		h.put("<dl>\n")
		for _, r := range b {
			h.put("<div><dt>", h.tell(r.Label), "</dt><dd>", h.cell(r.Value))
			if !r.Note.IsZero() {
				h.put(` <small>`, h.tell(r.Note), "</small>")
			}
			h.put("</dd></div>\n")
		}
		h.put("</dl>\n")
	case Grid:
		h.table(b)
	case Reckoning:
		h.put(working.Telling{Reader: h.reader}.HTMLLines(b.Of))
	case Chart:
		h.chart(b)
	}
}

func (h *pager) table(t Grid) {
	columns := t.filled()
	if len(columns) == 0 {
		return
	}
	h.put(`<div class="report-table" role="region" tabindex="0"`)
	if !t.Caption.IsZero() {
		h.put(` aria-label="`, h.tell(t.Caption), `"`)
	} else {
		h.put(` aria-label="`, h.tell(h.under), `"`) // what the part is called that the table stands in
	}
	h.put("><table>\n")
	if !t.Caption.IsZero() {
		h.put("<caption>", h.tell(t.Caption), "</caption>\n")
	}
	h.head(t, columns)
	h.put("<tbody>\n")
	for _, r := range t.Rows {
		h.row(t, columns, r, true)
	}
	h.put("</tbody>\n")
	if t.Total != nil {
		h.put("<tfoot>\n")
		h.row(t, columns, t.Total, false)
		h.put("</tfoot>\n")
	}
	h.put("</table></div>\n")
}

// head is the titles of the columns; nothing where no column has one.
func (h *pager) head(t Grid, columns []int) {
	if !slices.ContainsFunc(columns, func(i int) bool { return !t.Columns[i].Title.IsZero() }) {
		return
	}
	h.put("<thead><tr>")
	for _, i := range columns {
		tag := "th" + class(t.Columns[i]) + ` scope="col"`
		if t.Columns[i].Title.IsZero() {
			tag = "td" + class(t.Columns[i])
		}
		h.put("<", tag, ">", h.tell(t.Columns[i].Title), "</", tag[:2], ">")
	}
	h.put("</tr></thead>\n")
}

func class(c GridColumn) string {
	if c.Right {
		return ` class="report-number"`
	}
	return ""
}

func (h *pager) row(t Grid, columns []int, r []Cell, ticks bool) {
	h.put("<tr>")
	for _, i := range columns {
		text := ""
		if i < len(r) {
			text = h.cell(r[i])
		}
		if ticks && t.Columns[i].Tick && text != "" {
			text = `<label><input type="checkbox"> ` + text + `</label>`
		}
		title := ""
		if text != "" && !t.Columns[i].Title.IsZero() { // on a narrow screen each value has its own
			title = ` data-title="` + h.tell(t.Columns[i].Title) + `"`
		}
		h.put("<td", class(t.Columns[i]), title, ">", text, "</td>")
	}
	h.put("</tr>\n")
}

// escapedHTML keeps a text a text in HTML.
func escapedHTML(text string) string { return textpage.Escaped(textpage.Printable(text)) }
