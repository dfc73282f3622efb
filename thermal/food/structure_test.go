package food

import "testing"

func TestStructuresHaveWords(t *testing.T) {
	var s Structure
	if err := s.UnmarshalText([]byte("stabilised")); err != nil || s != StabilisedStructure {
		t.Error(s, err)
	}
	if err := s.UnmarshalText([]byte("runny")); err == nil {
		t.Error("a structure of its own")
	}
}
