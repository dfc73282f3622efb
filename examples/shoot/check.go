package shoot

import (
	"fmt"
	"reflect"
	"time"

	"example.org/honestplate"
)

// Check returns an error where a plan contradicts itself. Every plan is checked before
// it is handed out; whoever edits one can ask again.
func (p *Plan) Check() error {
	for i := range p.Shots {
		s := &p.Shots[i]
		field := fmt.Sprintf("shots[%d]", i)
		if s.Number != i+1 {
			return contradiction(field+".number", fmt.Sprint(s.Number), fmt.Sprint(i+1))
		}
		if err := s.check(field); err != nil {
			return err
		}
		for k := range i {
			o := &p.Shots[k]
			if !s.Done && !o.Done && s.At.Before(o.End) && o.At.Before(s.End) {
				return contradiction(field+".at", s.At.String(), "a slot that does not overlap that of "+o.Dish)
			}
		}
	}
	return p.checkTasks()
}

func contradiction(field, got, want string) error {
	return &honestplate.InputError{Field: field, Got: got, Want: want}
}

func (s *Shot) check(field string) error {
	u := s.Units
	switch {
	case u.Prepare < 0 || u.Prepare > u.Need:
		return contradiction(field+".units.prepare", fmt.Sprint(u.Prepare), fmt.Sprintf("0 to %d", u.Need))
	case !(u.Chance >= 0 && u.Chance <= 1):
		return contradiction(field+".units.chance", fmt.Sprint(u.Chance), "0 to 1")
	case u.Prepare < u.Need && u.LimitedBy == "":
		return contradiction(field+".units.limited_by", "nothing", "what limits the units")
	case !s.Done && u.Prepare == u.Need && u.Chance < u.Confidence*(1-1e-9):
		return contradiction(field+".units.chance", fmt.Sprint(u.Chance), fmt.Sprintf("at least %g with all units", u.Confidence))
	}
	if err := s.Picture.check(field + ".picture"); err != nil {
		return err
	}
	if s.Swap > 0 {
		if l := s.Picture.Length(); s.Picture.Sure && !l.Never && s.Swap > max(l.After, time.Second)+4*time.Hour {
			return contradiction(field+".swap", s.Swap.String(), "not longer than a unit stands, with its swap")
		}
	}
	for i := range s.Things {
		t := &s.Things[i]
		at := fmt.Sprintf("%s.things[%d]", field, i)
		if t.StandIn != "" && t.Pour == nil && t.Coil == nil && len(t.Events) > 0 {
			return contradiction(at+".events", fmt.Sprint(len(t.Events)), "none: the stand-in is what is in the frame")
		}
		for k, e := range t.Events {
			if err := e.When.Check(fmt.Sprintf("%s.events[%d]", at, k)); err != nil {
				return err
			}
		}
	}
	for _, c := range []*Cause{s.Picture.OpensBy, s.Picture.ClosesBy} {
		if c != nil && !s.has(c) {
			return contradiction(field+".picture", c.Event+" of "+c.Thing+" with its reasons", "those of the event of this name")
		}
	}
	return nil
}

// has reports whether a cause is one of the shot's events, with that event's reasons.
func (s *Shot) has(c *Cause) bool {
	for i := range s.Things {
		for _, e := range s.Things[i].Events {
			if s.Things[i].Name == c.Thing && e.Key == c.Event {
				return reflect.DeepEqual(e.Reasons, c.Reasons)
			}
		}
	}
	return false
}

func (p Picture) check(field string) error {
	if p.Always {
		return nil
	}
	for _, w := range []struct {
		name string
		w    honestplate.Window
	}{{"opens", p.Opens}, {"closes", p.Closes}} {
		if err := w.w.Check(field + "." + w.name); err != nil {
			return err
		}
	}
	switch {
	case p.Sure && !p.From.Before(p.To):
		return contradiction(field+".to", p.To.String(), "after from, "+p.From.String())
	case p.Sure && p.Chance < SureShare-1e-9, !p.Sure && p.Chance >= SureShare:
		return contradiction(field+".chance", fmt.Sprint(p.Chance), "as its window says")
	case p.Sure && (p.To.Never && !p.Closes.Latest.Never || p.Closes.Latest.Before(p.To) || p.From.Before(p.Opens.Earliest)):
		return contradiction(field, fmt.Sprintf("%s to %s", p.From, p.To), fmt.Sprintf("inside %s to %s", p.Opens.Earliest, p.Closes.Latest))
	}
	return nil
}

// checkTasks wants every task done before its shot, and no pair of hands at two things.
func (p *Plan) checkTasks() error {
	for i, t := range p.Tasks {
		field := fmt.Sprintf("tasks[%d]", i)
		if t.End.Before(t.Start) {
			return contradiction(field+".end", t.End.String(), "not before its start")
		}
		if t.Shot > 0 && t.Shot <= len(p.Shots) && t.End.After(p.Shots[t.Shot-1].At) && (t.What != Bake && t.What != Assemble || t.End.After(p.Shots[t.Shot-1].End)) {
			return contradiction(field+".end", t.End.String(), "not after the shot begins")
		}
		for _, o := range p.Tasks[:i] {
			if t.Hand > 0 && t.Hand == o.Hand && t.Start.Before(o.End) && o.Start.Before(t.End) {
				return contradiction(field+".hand", fmt.Sprint(t.Hand), "one thing at a time")
			}
		}
	}
	return nil
}
