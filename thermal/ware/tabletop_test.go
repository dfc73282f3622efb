package ware

import "testing"

func TestTabletopsHaveWords(t *testing.T) {
	var top Tabletop
	if err := top.UnmarshalText([]byte("stone")); err != nil || top != StoneTop {
		t.Error(top, err)
	}
	if err := top.UnmarshalText([]byte("cheese")); err == nil {
		t.Error("a top of cheese")
	}
}
