package working

// A Subject is what a caution is about in a word or two, such as "burns" or "raw dough". Catalogs translate it by
// the key "working.Subject/burns".
type Subject string

// A Caution says what can go wrong or hurt, and where local rules or a licensed professional
// decide. It is data on a result, so that every application can show it.
type Caution struct {
	Subject Subject `json:"subject"`
	Text    Message `json:"text"`
	// Short says the same in a few words, for a caution that comes with every bake and that a reader has seen
	// before; none for what must always be read in full.
	Short  Message `json:"short,omitzero"`
	Source Source  `json:"source,omitzero"`
}

// Code names the caution for programs: the identifier of its sentence, such as "bake.caution_burns".
func (c Caution) Code() string { return c.Text.ID() }

// Message is the caution as one sentence with its subject in front.
func (c Caution) Message() Message { return Tell("working.caution", "%s: %v", c.Subject, c.Text) }

// Brief is the caution in its short form if it has one, and otherwise in full.
func (c Caution) Brief() Message {
	if c.Short.IsZero() {
		return c.Message()
	}
	return Tell("working.caution", "%s: %v", c.Subject, c.Short)
}

// String prints the caution as one sentence with its subject in front, in English and metric units.
func (c Caution) String() string { return c.Message().String() }
