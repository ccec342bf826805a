package house

// What does not keep a law yet, by the law, with the reason. The lists only get shorter.

// formless types have no form in JSON, or keys without tags.
var formless = map[string]string{}

// unmarshalable types do not marshal, marshal to nothing, or do not come back.
var unmarshalable = map[string]string{}

// wordless enumerations have no words that go out and come back.
var wordless = map[string]string{}
