package shoot

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strconv"
	"sync/atomic"
	"testing"

	"example.org/honestplate"
)

// How many random briefs are planned: 100, or as many as HONESTPLATE_BRIEFS says.
func briefs(t *testing.T) int {
	if n, err := strconv.Atoi(os.Getenv("HONESTPLATE_BRIEFS")); err == nil {
		return n
	}
	if testing.Short() {
		return 10
	}
	return 100
}

// What must hold of every plan, whatever the brief and whatever has happened; several at a
// time.
func TestRandomBriefsGivePlansThatDoNotContradictThemselves(t *testing.T) {
	const lanes = 4
	n := briefs(t)
	var next, planned, taught atomic.Int64
	t.Run("lanes", func(t *testing.T) {
		for lane := range lanes {
			t.Run(fmt.Sprint(lane), func(t *testing.T) {
				t.Parallel()
				for seed := int(next.Add(1)) - 1; seed < n; seed = int(next.Add(1)) - 1 {
					b := makerOf(seed).brief()
					p, ok := planFits(t, seed, b)
					if !ok {
						continue
					}
					planned.Add(1)
					if seed%10 == 0 {
						restFits(t, seed, b, p, false)
					}
					if seed%50 == 10 && restFits(t, seed, cut(b), p, true) {
						taught.Add(1)
					}
				}
			})
		}
	})
	for _, seed := range []int{617, 1490} { // of these one was refused and one contradicted itself
		if b := makerOf(seed).brief(); seed >= n {
			if p, ok := planFits(t, seed, b); ok {
				restFits(t, seed, b, p, false)
			}
		}
	}
	if n >= 50 && planned.Load() < int64(n*8/10) {
		t.Errorf("only %d of %d briefs could be planned", planned.Load(), n)
	}
	t.Logf("%d briefs, %d of them planned, %d taught by what was seen", n, planned.Load(), taught.Load())
}

// refused holds that an error of Plan is one of what cannot be, and names its field.
func refused(t *testing.T, seed int, err error) {
	t.Helper()
	if c := honestplate.Cause(err); !errors.Is(c, honestplate.ErrRange) && !errors.Is(c, honestplate.ErrInfeasible) && !errors.Is(c, honestplate.ErrNoFlow) || fieldOf(c) == "" {
		t.Errorf("seed %d: %v", seed, err)
	}
}

// planFits plans the brief of a seed, holds the plan against the rules, and tells whether
// it could be planned.
func planFits(t *testing.T, seed int, b *Brief) (*Plan, bool) {
	if errs := b.faults(); len(errs) > 0 {
		t.Fatalf("seed %d: the brief itself: %v", seed, errors.Join(errs...))
	}
	if seed%4 == 0 {
		readsBack(t, seed, b)
	}
	p, err := b.Plan(nil)
	if err != nil {
		refused(t, seed, err)
		return nil, false
	}
	for _, r := range rules {
		if r.every > 0 && seed%r.every != 0 {
			continue
		}
		r.check(func(format string, args ...any) {
			t.Helper()
			t.Errorf("seed %d: %s: "+format, append([]any{seed, r.name}, args...)...)
		}, b, p)
	}
	if seed%20 == 0 {
		same(t, seed, b, nil, p)
	}
	return p, true
}

// restFits lets something happen, and holds the plan of the rest of the day against the
// rules of a day that has begun. It tells whether it could be planned.
func restFits(t *testing.T, seed int, b *Brief, p *Plan, seen bool) bool {
	m := makerOf(-1 - seed)
	if seen {
		var err error
		if p, err = b.Plan(nil); err != nil {
			return false
		}
	}
	f := m.facts(b, p)
	if seen {
		f.Room = nil // what is seen is seen in the room that was expected
		if !m.sees(f, p) {
			return false
		}
	}
	if errs := f.faults(); len(errs) > 0 {
		t.Fatalf("seed %d: the facts themselves: %v", seed, errors.Join(errs...))
	}
	rest, err := b.Plan(f)
	if err != nil {
		refused(t, seed, err)
		return false
	}
	for _, r := range laterRules {
		r.check(func(format string, args ...any) {
			t.Helper()
			t.Errorf("seed %d: %s: "+format, append([]any{seed, r.name}, args...)...)
		}, b, f, p, rest)
	}
	if seed%50 == 0 {
		same(t, seed, b, f, rest)
	}
	return true
}

// cut is a brief of the first dish that has a clock, with that thing alone: what is
// taught takes sixteen times as many runs.
func cut(b *Brief) *Brief {
	out := *b
	for i := range b.Dishes {
		d := b.Dishes[i]
		for k := range d.Things {
			t := d.Things[k]
			if t.StandIn != "" || t.Drink == nil && t.Bottle == nil && t.Scoop == nil && t.Soft == nil && t.Cheese == nil && t.Bowl == nil {
				continue
			}
			d.Things, d.Specification, d.Day = []Thing{t}, nil, 0
			if t.Drink != nil && t.Drink.Ice != nil {
				d.Things = append(d.Things, Thing{Name: t.Drink.Ice.Thing, Grams: t.Drink.Ice.Grams})
			}
			d.Advertised = map[bool]string{false: "none"}[t.Advertised]
			out.Dishes = []Dish{d}
			return &out
		}
	}
	out.Dishes = out.Dishes[:1]
	return &out
}

// readsBack writes the brief as a program would and reads it strictly.
func readsBack(t *testing.T, seed int, b *Brief) {
	text, err := json.Marshal(b)
	if err != nil {
		t.Fatalf("seed %d: %v", seed, err)
	}
	back, err := Read(bytes.NewReader(text))
	if err != nil {
		t.Errorf("seed %d: the brief does not read back: %v", seed, err)
		return
	}
	if again, _ := json.Marshal(back); !bytes.Equal(again, text) {
		t.Errorf("seed %d: the brief reads back as\n%s\nwas\n%s", seed, again, text)
	}
}

// same plans again, and reads the plan back from JSON.
func same(t *testing.T, seed int, b *Brief, f *Facts, p *Plan) {
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	again, err := b.Plan(f)
	if err != nil {
		t.Fatal(err)
	}
	other, _ := json.Marshal(again)
	if string(text) != string(other) {
		t.Errorf("seed %d: two plans of one brief differ", seed)
	}
	var back Plan
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if third, _ := json.Marshal(&back); string(third) != string(text) {
		t.Errorf("seed %d: the plan does not read back", seed)
	}
	if err := back.Check(); err != nil {
		t.Errorf("seed %d: %v", seed, err)
	}
}
