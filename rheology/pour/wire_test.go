package pour_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/law"
	"example.org/honestplate/rheology/pour"
)

// Everything that a pour leads to comes back equal, in snake_case.
func TestPoursComeBackFromTheWire(t *testing.T) {
	var all []any
	keep := func(v any, err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, v)
	}
	spout, lip, wall := pour.Spout{Diameter: 0.01, Length: 0.02, Head: 0.1, SurfaceArea: 0.01}, pour.Lip{Width: 0.02, Head: 0.01}, pour.Wall{Height: 0.1}
	all = append(all, spout, lip, wall, pour.Target{Film: 0.001}, pour.Target{Rough: true}, law.Bubble{Diameter: 1},
		law.Impact{Speed: 1}, law.Lift{Beta: 1}, pour.Stream{Diameter: 1, Speed: 2})
	over, err := lip.Pour(rheology.Dairy{FatPercent: 12}, 6, 50)
	if err != nil {
		t.Fatal(err)
	}
	d, err := over.Dribble(40)
	keep(d, err)
	for _, l := range []rheology.Liquid{rheology.Food("custard"), rheology.Honey{}} {
		p, err := spout.Pour(l, 20, 100)
		if err != nil {
			t.Fatal(err)
		}
		s, err := p.Stream(0.2)
		keep(s, err)
		x, err := s.Splash(pour.Target{})
		keep(x, err)
		c, err := s.Coil()
		keep(c, err)
		w, err := s.Crown(s.Diameter / 2)
		keep(w, err)
		u, err := p.Puddle(time.Second, 40)
		keep(u, err)
		coat, err := wall.Drain(l, 20, time.Minute)
		keep(coat, err)
	}
	for _, v := range all {
		b, err := json.Marshal(v)
		if err != nil {
			t.Errorf("%T: %v", v, err)
			continue
		}
		back := reflect.New(reflect.TypeOf(v))
		if err := json.Unmarshal(b, back.Interface()); err != nil {
			t.Errorf("%T: %s: %v", v, b, err)
		} else if got := back.Elem().Interface(); !reflect.DeepEqual(v, got) {
			t.Errorf("%T: %s came back as %+v", v, b, got)
		}
		var members map[string]any
		_ = json.Unmarshal(b, &members)
		for name := range members {
			if strings.ToLower(name) != name {
				t.Errorf("%T: %q is not in snake_case", v, name)
			}
		}
	}
	if b, err := json.Marshal(pour.Pour{Rate: honestplate.Exactly(1)}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a worked out pour is written: %s", b)
	}
}
