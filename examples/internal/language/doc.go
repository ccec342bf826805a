// Package language holds the catalogs of the example programs: what the library says, in German.
//
// A catalog is plain data, a [working.Language] as JSON, one file for each room of the library: templates by the
// identifier of a sentence, and words by their keys. Whatever it lacks is told in English. An application that brings
// its own does as this package does: it reads its files into a working.Language and gives that to a reader.
//
//	German()              the German catalog
//	Named("de-CH")        the language of a tag, as a person gives it
//	Preferred(os.Getenv)  the language that the environment asks for
//
// # Limits
//
// What a person named, such as a bread, stays as it is; an ingredient whose English name the catalog knows is told in
// German. References to books and papers keep the language they were written down in.
package language
