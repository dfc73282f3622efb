package shoot

import (
	"math"

	"example.org/honestplate"
)

// remedies are what would help a picture that does not surely stand, or hardly: what the
// events that bound it say.
func (d *day) remedies(j *job) []Remedy {
	p := j.shot.Picture
	one := minutes(2)
	if j.dish.TakeMinutes > 0 {
		one = minutes(j.dish.TakeMinutes)
	}
	one = max(one, minutes(j.dish.LongestMinutes))
	if l := p.Length(); p.Always || p.Sure && (l.Never || l.After >= one) {
		return nil
	}
	var out []Remedy
	add := func(r Remedy) {
		for _, have := range out {
			if have == r {
				return
			}
		}
		out = append(out, r)
	}
	for _, c := range []*Cause{p.OpensBy, p.ClosesBy} {
		if c == nil {
			continue
		}
		opening := c == p.OpensBy
		judged := 0.0
		for _, r := range c.Reasons {
			judged = max(judged, r.Share)
		}
		if judged > 0.4 && !d.taught(j.dish.thing(c.Thing)) {
			add(TestUnit)
		}
		switch c.Event {
		case "haze", "white", "beads", "runs":
			if opening {
				add(ColderGlass)
				add(DamperAir)
			} else {
				add(WarmerGlass)
				add(DrierAir)
			}
		case "ice gone":
			add(MoreIce)
		case "soft", "drip", "slump", "puddle", "runny":
			add(ColderStore)
			add(CoolerLight)
			add(NearerStore)
		case "steam ends", "cool":
			add(WarmVessel)
			add(DarkGround)
		case "sets":
			add(NearerStore)
		}
	}
	for i := range j.shot.Things {
		for _, n := range j.shot.Things[i].Notes {
			if n.Code == NeverLooks {
				add(DeclareOther)
			}
		}
	}
	if (j.dish.LongestMinutes > 0 || len(out) == 0) && j.stands < SureShare || j.stands < leastStands {
		add(DeclareOther)
	}
	return out
}

// mayShow takes the share of units that show the picture at its best moment as the most
// that can give a good take, where it does not surely stand. A look that never comes by
// itself is for a declared stand-in, which is said; it then stands as long as that does.
func (d *day) mayShow(j *job) {
	p := &j.shot.Picture
	if p.Always || p.Sure || p.Chance >= j.stands {
		return
	}
	for i := range j.shot.Things {
		for _, n := range j.shot.Things[i].Notes {
			if n.Code == NeverLooks {
				return
			}
		}
	}
	if j.stands >= leastStands && p.Chance < leastStands {
		j.shot.Notes = append(j.shot.Notes, Note{Code: HardlyStands, Share: honestplate.Some(p.Chance)})
		j.limits = append(j.limits, limit{0, "picture"})
	}
	j.stands = p.Chance
}

// seen are the events that a crew can see happen, as facts name them.
var seen = map[string]bool{
	"haze": true, "white": true, "beads": true, "runs": true, "ice gone": true, "soft": true, "drip": true, "puddle": true,
	"slump": true, "steam ends": true, "strings": true, "sets": true,
}

// CanBeSeen reports whether facts may say when an event was seen.
func CanBeSeen(event string) bool { return seen[event] }

// leastStands is the share of units that stand long enough below which none is prepared.
const leastStands = 0.05

// mustStand holds a picture that must last against how long one unit stands. Where
// hardly any unit does, none is prepared: the shot cannot be done with the real thing.
func (d *day) mustStand(j *job, looks []shown) {
	want := minutes(j.dish.LongestMinutes)
	if want == 0 || len(looks) == 0 {
		return
	}
	share := lasting(looks, j.weights, want)
	if share >= SureShare {
		return
	}
	n := Note{Code: CannotStand, Value: honestplate.Some(j.dish.LongestMinutes), Share: honestplate.Some(share)}
	if from, to := j.shot.Picture.Opens.Likely, j.shot.Picture.Closes.Likely; from.Never {
		n.Second = honestplate.Some(0)
	} else if !to.Never {
		n.Second = honestplate.Some(math.Floor(max(to.After-from.After, 0).Minutes()))
	}
	if c := j.shot.Picture.ClosesBy; c != nil {
		n.Thing = c.Thing
	}
	j.shot.Notes = append(j.shot.Notes, n)
	if share < leastStands {
		j.limits = append(j.limits, limit{0, "picture"})
	}
	j.stands = share
}
