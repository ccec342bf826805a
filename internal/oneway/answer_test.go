package oneway

import (
	"encoding/json"
	"errors"
	"testing"

	"example.org/maslin/dough/quantity"
)

func TestAnAnswerGoesOutAndDoesNotComeBack(t *testing.T) {
	type answer = Answer
	type weight struct {
		answer
		Grams int `json:"grams"`
		asked int
	}
	text, err := json.Marshal(weight{Grams: 3, asked: 2})
	if err != nil || string(text) != `{"grams":3}` {
		t.Fatalf("%s, %v", text, err)
	}
	back := weight{Grams: 7}
	if err := json.Unmarshal(text, &back); !errors.Is(err, quantity.ErrForm) || back.Grams != 7 {
		t.Errorf("%v, %v", back, err)
	}
	var list struct{ All []weight }
	if err := json.Unmarshal([]byte(`{"All":[{"grams":1}]}`), &list); !errors.Is(err, quantity.ErrForm) {
		t.Errorf("in a list: %v", err)
	}
}
