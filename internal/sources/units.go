package sources

import "example.org/maslin/dough/working"

// NISTSP811 defines the customary units in terms of the SI.
var NISTSP811 = working.Source{
	Key:    "NIST SP 811",
	Author: "Thompson and Taylor",
	Title:  "Guide for the Use of the International System of Units (SI)",
	Year:   2008,
	Where:  "appendix B",
}
