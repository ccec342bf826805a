package textpage

// Document is a whole file of HTML around the elements of its body: it asks no server, runs no script, and follows the
// reader's choice of light or dark. Language is the tag of its language, "" English; title is plain text.
func Document(language, title, style, body string) string {
	if language == "" {
		language = "en"
	}
	return `<!DOCTYPE html>
<html lang="` + Escaped(Printable(language)) + `">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="generator" content="Maslin">
<meta name="color-scheme" content="light dark">
<link rel="icon" href="data:,">
<title>` + Escaped(Printable(title)) + `</title>
<style>
` + style + `</style>
</head>
<body>
` + body + `</body>
</html>
`
}
