package sets

import (
	"math"
	"math/rand/v2"
	"slices"

	"example.org/honestplate/portion/internal/subset"
)

// A Supply asks how many more pieces to weigh until a number of disjoint sets exists with
// a chance, where the masses of pieces spread normally.
type Supply struct {
	Have     []int64        // masses already weighed, steps
	Mean, SD float64        // of the pieces to come, steps
	Want     subset.Problem // one set of it: a count, Low, High and Target
	Sets     int
	Chance   float64 // wanted, above 0 and below 1
	Most     int     // pieces to weigh at the most
	Trays    int     // simulated
	Effort   int     // for one tray of some size
}

// A Need is the answer to a Supply: pieces to weigh, with the band of a simulation.
type Need struct {
	Low, Likely, High int // High is Most+1 where the band does not close below
	// Reached tells whether the chance is reached with Most pieces.
	Reached bool
	// Share is the part of the simulated trays that held the sets with Likely pieces, or
	// with Most where the chance is not reached, with its 95 % band (Wilson 1927, J. Am.
	// Stat. Assoc. 22:209; from memory).
	Share, ShareLow, ShareHigh float64
	Trays                      int // simulated
}

// Need simulates trays. Each piece takes its mass from a stratum of its own in every tray,
// all strata once over all trays (Latin hypercube: McKay, Beckman and Conover 1979,
// Technometrics 21:239; from memory), shuffled by a fixed seed. A tray in which the sets
// are not found within the effort counts as one without, so the answer leans to more
// pieces, never to fewer.
func (s Supply) Need() Need {
	first := make([]int, s.Trays) // new pieces each tray needs; Most+1 for more than that
	columns := make([][]int64, s.Most)
	for j := range columns {
		columns[j] = s.column(j)
	}
	failed, guess := 0, 0
	hopeless := float64(s.Trays) * (1 - s.Chance)
	hopeless += 4*math.Sqrt(hopeless) + 1
	for r := range first {
		masses := slices.Clone(s.Have)
		for _, c := range columns {
			masses = append(masses, c[r])
		}
		n := s.first(masses, guess)
		guess = n
		if first[r] = n; n > s.Most {
			if failed++; float64(failed) > hopeless {
				first = first[:r+1]
				break
			}
		}
	}
	return s.read(first)
}

// column returns the masses of one piece over all trays.
func (s Supply) column(j int) []int64 {
	out := make([]int64, s.Trays)
	order := rand.New(rand.NewPCG(1979, uint64(j))).Perm(s.Trays)
	for r, k := range order {
		u := (float64(k) + 0.5) / float64(s.Trays)
		out[r] = max(1, int64(math.Round(s.Mean+s.SD*math.Sqrt2*math.Erfinv(2*u-1))))
	}
	return out
}

// first returns with how many of the new masses the sets exist. It looks around guess, what
// another tray needed: proving that there are none is what takes time, and far below the
// answer there is much to prove.
func (s Supply) first(masses []int64, guess int) int {
	from := 0
	if n := s.Want.Groups[0].Count; n != subset.AnyCount {
		from = max(0, n*s.Sets-len(s.Have))
	}
	if from > s.Most {
		return s.Most + 1
	}
	// A piece more never takes a set away: steps that double, then halving, between low,
	// which does not hold the sets, and high, which does or is beyond Most.
	low, high := from-1, s.Most+1
	at := min(max(guess, from), s.Most)
	for step := 1; low < at && at < high; step *= 2 {
		if s.exist(masses[:len(s.Have)+at]) {
			if high = at; low >= from {
				break
			}
			at = max(at-step, from)
		} else {
			if low = at; high <= s.Most {
				break
			}
			at = min(at+step, s.Most)
		}
	}
	for high-low > 1 {
		mid := low + (high-low)/2
		if s.exist(masses[:len(s.Have)+mid]) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

func (s Supply) exist(masses []int64) bool {
	if len(masses) == 0 {
		return false
	}
	p := Problem{Problem: s.Want, Goal: Exist, Sets: s.Sets}
	p.Masses, p.Scores, p.Effort = masses, make([]int64, len(masses)), s.Effort
	p.Groups = []subset.Group{{To: len(masses), Count: s.Want.Groups[0].Count}}
	return newTray(&p).exist()
}

// read turns the pieces each tray needs into the answer.
func (s Supply) read(first []int) Need {
	slices.Sort(first)
	n := Need{Low: s.Most + 1, Likely: s.Most + 1, High: s.Most + 1, Trays: len(first)}
	for k := 0; k < len(first); {
		at := first[k]
		for k < len(first) && first[k] == at {
			k++
		}
		if at > s.Most {
			break
		}
		share := float64(k) / float64(len(first))
		low, high := wilson(share, float64(len(first)))
		if n.Low > at && high >= s.Chance {
			n.Low = at
		}
		if n.Likely > at && share >= s.Chance {
			n.Likely, n.Reached = at, true
		}
		if n.High > at && low >= s.Chance {
			n.High = at
		}
		if n.Likely == at || !n.Reached {
			n.Share, n.ShareLow, n.ShareHigh = share, low, high
		}
	}
	if n.ShareHigh == 0 {
		n.ShareLow, n.ShareHigh = wilson(0, float64(len(first)))
	}
	return n
}

// wilson returns the 95 % score interval of a share of n.
func wilson(p, n float64) (low, high float64) {
	const z = 1.959964
	mid := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n)) / (1 + z*z/n)
	// At 0 and 1 the interval ends there, but for the last bit.
	return min(p, max(0, mid-half)), max(p, min(1, mid+half))
}
