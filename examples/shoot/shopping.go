package shoot

import (
	"math"
	"slices"

	"example.org/honestplate"
)

// losses is what is bought beyond what the units take: tasting, spilling, a dropped one.
// Common practice, no source.
const losses = 0.1

// buy adds to what a job buys. Amounts are what the worst permitted course uses, losses
// not yet in them.
func (j *job) buy(p Purchase) {
	j.buys = append(j.buys, p)
}

// tool puts something on the kit list.
func (j *job) tool(what string, count int) {
	for i := range j.kit {
		if j.kit[i].What == what {
			j.kit[i].Count = max(j.kit[i].Count, count)
			return
		}
	}
	j.kit = append(j.kit, Kit{What: what, Count: count})
}

// things buys everything in the frame that no part of its own buys: of what is
// advertised, or has an amount, for every unit, of a stand-in and another prop once.
func (j *job) things() {
	for i := range j.dish.Things {
		t := &j.dish.Things[i]
		n := float64(j.shot.Units.Prepare)
		if t.Drink != nil && t.StandIn == "" {
			j.tool("glasses for "+t.Name, j.shot.Units.Prepare)
		}
		switch {
		case t.Pour != nil || t.Drizzle != nil || t.Build:
		case t.StandIn != "":
			j.buy(Purchase{What: t.StandIn, Count: 1, StandIn: true, once: true})
		case !t.Advertised && t.Grams == 0 && t.Count == 0:
			j.buy(Purchase{What: t.Name, Count: 1, Prop: true, once: true})
		case t.Pieces != nil:
			j.buy(Purchase{What: t.Name, Count: max(j.piecesToWeigh(t), t.Count*int(n)), PackCount: t.PackCount, Prop: !t.Advertised})
		default:
			p := Purchase{What: t.Name, PackGrams: t.PackGrams, PackCount: t.PackCount, Prop: !t.Advertised}
			if t.Count > 0 && (t.PackCount > 0 || t.Grams == 0) {
				p.Count = t.Count * int(n)
			} else {
				p.Grams = t.Grams * n
			}
			j.buy(p)
		}
	}
}

func (j *job) piecesToWeigh(t *Thing) int {
	for _, p := range j.shot.Things {
		if p.Name == t.Name && p.Pieces != nil {
			return p.Pieces.Weigh
		}
	}
	return 0
}

// purchases adds up what all jobs buy, with losses, in whole packs. What is used up is
// never rounded down.
func purchases(jobs []*job) []Purchase {
	var out []Purchase
	for _, j := range jobs {
		if j.shot.Done {
			continue
		}
		for _, p := range j.buys {
			k := slices.IndexFunc(out, func(o Purchase) bool {
				return o.What == p.What && o.StandIn == p.StandIn && o.Prop == p.Prop && o.once == p.once && o.PackGrams == p.PackGrams && o.PackCount == p.PackCount
			})
			if k < 0 {
				k = len(out)
				out = append(out, Purchase{What: p.What, StandIn: p.StandIn, Prop: p.Prop, PackGrams: p.PackGrams, PackCount: p.PackCount, once: p.once})
			}
			out[k].Grams += p.Grams
			out[k].Count += p.Count
			if !slices.Contains(out[k].Shots, j.shot.Number) {
				out[k].Shots = append(out[k].Shots, j.shot.Number)
			}
		}
	}
	for i := range out {
		p := &out[i]
		if !p.once {
			p.Grams = math.Ceil(p.Grams * (1 + losses) * (1 - 1e-12))
			p.Count = int(math.Ceil(float64(p.Count) * (1 + losses) * (1 - 1e-12)))
		}
		switch {
		case p.PackGrams > 0:
			p.Packs = int(math.Ceil(p.Grams / p.PackGrams * (1 - 1e-12)))
		case p.PackCount > 0:
			p.Packs = (p.Count + p.PackCount - 1) / p.PackCount
		case p.Count > 0:
			p.Packs = p.Count
		default:
			p.Packs = 1
		}
		p.Packs = max(p.Packs, 1)
		slices.Sort(p.Shots)
	}
	slices.SortStableFunc(out, func(a, b Purchase) int {
		return compare(a.Prop, b.Prop, compare(a.StandIn, b.StandIn, 0))
	})
	return out
}

func compare(a, b bool, or int) int {
	switch {
	case a == b:
		return or
	case b:
		return -1
	}
	return 1
}

// kit adds up the tools of all jobs.
func kitOf(b *Brief, jobs []*job) []Kit {
	out := []Kit{{What: scaleName(b.Scale), Count: 1}, {What: "thermometer", Count: 1}, {What: "hygrometer", Count: 1}, {What: "stop-watch", Count: 1}}
	for _, j := range jobs {
		for _, k := range j.kit {
			i := slices.IndexFunc(out, func(o Kit) bool { return o.What == k.What })
			if i < 0 {
				i = len(out)
				out = append(out, Kit{What: k.What})
			}
			out[i].Count = max(out[i].Count, k.Count)
			out[i].Shots = append(out[i].Shots, j.shot.Number)
		}
	}
	for i := range out {
		slices.Sort(out[i].Shots)
	}
	return out
}

func scaleName(s Scale) string {
	if s.StepGrams == 0 {
		return "scale, 0.1 g steps"
	}
	return "scale, " + honestplate.Exactly(s.StepGrams).String() + " g steps"
}
