package main

import (
	"fmt"
	"testing"

	"example.org/honestplate/portion"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The hero is the one in front of the camera. For the pull of the melted cheese it is
// a fresh bread every time: a slice is drawn away once, the strings form or they tear,
// and that bread is done. Three good pulls are wanted: the picture, a closer one, one
// in hand. With this cheese three pulls in five come out well. How many breads does
// the kitchen bake?
//
// # Five is the answer to another question
//
// Three divided by 0.6 is five. Five breads give three good pulls on average, and that
// is just what is wrong with five: many days are worse than average.
func Example_knownRate() {
	pulls := portion.Heroes{SuccessRate: 0.6, Wanted: 3, Confidence: 0.95}
	for breads := 5; breads <= 9; breads++ {
		chance, err := pulls.Chance(breads)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%d breads: three good pulls with a chance of %2.0f %%\n", breads, 100*chance)
	}
	breads, err := pulls.Units()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("For 95 %% bake %d.\n", breads)
	// Output:
	// 5 breads: three good pulls with a chance of 68 %
	// 6 breads: three good pulls with a chance of 82 %
	// 7 breads: three good pulls with a chance of 90 %
	// 8 breads: three good pulls with a chance of 95 %
	// 9 breads: three good pulls with a chance of 97 %
	// For 95 % bake 8.
}

// With five breads one shoot in three goes home without its third picture. Eight bring
// that down to one in twenty. The sum behind it is the binomial distribution, which
// needs two things: that every bread has the same chance, and that they do not fail
// together.
//
// # Who says three in five?
//
// Usually the rate is not known; it is remembered. Say the log holds five earlier
// pulls, three of them good. That is also three in five, but a bread that in truth
// succeeds one time in three could have given such a log by luck, and so could one
// that succeeds four times in five. LowestRate says which rates the log supports, and
// Units takes all of them into account.
func Example_pastTakes() {
	for _, log := range []struct{ good, takes int }{{3, 5}, {6, 10}, {12, 20}, {60, 100}} {
		pulls := portion.Heroes{Good: log.good, Takes: log.takes, Wanted: 3, Confidence: 0.95}
		breads, err := pulls.Units()
		if err != nil {
			fmt.Println(err)
			return
		}
		lowest, err := pulls.LowestRate()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("log of %2d good in %3d: at least %2.0f %% succeed; bake %d\n", log.good, log.takes, 100*lowest, breads)
	}
	// Output:
	// log of  3 good in   5: at least 27 % succeed; bake 13
	// log of  6 good in  10: at least 35 % succeed; bake 11
	// log of 12 good in  20: at least 42 % succeed; bake 10
	// log of 60 good in 100: at least 52 % succeed; bake 9
}

// The same three in five each time, and the number falls from thirteen to nine as the
// log grows longer. The five breads between thirteen and eight are the price of not
// knowing. It is a fair price for a first shoot and a poor one for the tenth: keeping
// a log of takes, one line each, good or not, is the cheapest way to bake less.
//
// Figure: chance-of-three
//
// The band in the figure is wide, and that is what five takes are worth. The line of 3
// good takes of 5 through it is what Units goes by: an average over the band, which reaches 95 %
// late because the low rates in it drag.
//
// # Bake some, then ask again
//
// Nobody has to bake thirteen at once. Breads that come out in turn are also a log.
// Suppose the shoot starts on 6 good of 10, and the first four breads give one good
// pull. Put what happened into the log and ask what is still needed.
func Example_askAgain() {
	morning := portion.Heroes{Good: 6, Takes: 10, Wanted: 3, Confidence: 0.9}
	planned, err := morning.Units()
	if err != nil {
		fmt.Println(err)
		return
	}
	afterFour := portion.Heroes{Good: 6 + 1, Takes: 10 + 4, Wanted: 3 - 1, Confidence: 0.9}
	more, err := afterFour.Units()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("planned %d; after one good pull in four, %d more\n", planned, more)
	// Output:
	// planned 9; after one good pull in four, 8 more
}

// The plan was nine breads for a confidence of 90 %; four are used, five of the plan
// are left, and the honest answer is now eight. Better to hear it at eleven in the
// morning, with flour in the house, than at five.
//
// # How sure to be
//
// The last per cents are dear. Confidence is not a matter of taste: it is the cost of
// a bread against the cost of coming back tomorrow. Here it is for the log of 12 in
// 20.
func Example_howSure() {
	for _, confidence := range []float64{0.5, 0.8, 0.9, 0.95, 0.99} {
		breads, err := portion.Heroes{Good: 12, Takes: 20, Wanted: 3, Confidence: confidence}.Units()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f %% sure: bake %d\n", 100*confidence, breads)
	}
	// Output:
	// 50 % sure: bake 5
	// 80 % sure: bake 7
	// 90 % sure: bake 8
	// 95 % sure: bake 10
	// 99 % sure: bake 13
}

// # When they fail together
//
// All of the above takes breads one by one. A dough that did not rise spoils every
// bread made of it. How far breads of one dough go right or wrong together is their
// correlation: 0 if they do not care, near 1 if one tells all. Three tenths is a guess
// that a log by doughs can replace. Here are twelve breads from one dough, from two, from
// four and from twelve.
func Example_twoDoughs() {
	for _, dough := range []int{12, 6, 3, 1} {
		pulls := portion.Heroes{SuccessRate: 0.6, Correlation: 0.3, Batch: dough, Wanted: 3, Confidence: 0.95}
		twelve, err := pulls.Chance(12)
		if err != nil {
			fmt.Println(err)
			return
		}
		needed, err := pulls.Units()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2d breads of a dough: three good pulls of twelve with %.1f %%; for 95 %% bake %d\n", dough, 100*twelve, needed)
	}
	// Output:
	// 12 breads of a dough: three good pulls of twelve with 87.3 %; for 95 % bake 15
	//  6 breads of a dough: three good pulls of twelve with 95.1 %; for 95 % bake 12
	//  3 breads of a dough: three good pulls of twelve with 98.4 %; for 95 % bake 10
	//  1 breads of a dough: three good pulls of twelve with 99.7 %; for 95 % bake 8
}

// The first line's fifteen are twelve of one dough and three of another: from one dough
// alone it would take more. A second bowl is worth more than more breads. Whatever can
// fail for all at once, a dough, an oven, a delivery, a freezer, is worth having twice
// before the number of breads is worth raising.
//
// # What yesterday is worth
//
// Earlier days count, but not in full: the crew was another, the oven was cold. A prior
// holds them at a discount that somebody has to choose. Half of what Monday showed, all
// of what the trial breads of this morning did:
func Example_earlierDays() {
	monday, err := portion.Prior{}.After(20, 12, 0.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	today := portion.Heroes{Prior: monday, Takes: 3, Good: 2, Wanted: 3, Confidence: 0.9}
	breads, err := today.Units()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("bake %d\n", breads)
	chances, err := today.Finish(breads, false, true, false, true)
	if err != nil {
		fmt.Println(err)
		return
	}
	for n, chance := range chances {
		fmt.Printf("after %d takes: three in all with %2.0f %%\n", n, 100*chance)
	}
	// Output:
	// bake 8
	// after 0 takes: three in all with 91 %
	// after 1 takes: three in all with 82 %
	// after 2 takes: three in all with 93 %
	// after 3 takes: three in all with 84 %
	// after 4 takes: three in all with 95 %
}

// Each bad take costs nine points, and it is known at once, with time left to put one more
// into the oven.
//
// # When to stop
//
// If a third good pull is nice to have and every bread costs twenty-five minutes, going
// on is a bet. Say a good pull is worth an hour of everybody's time, and there is dough
// for ten. Stop gives the rule that is best on average: how few good ones, after so many
// takes, make the next bread cost more than it brings.
func Example_whenToStop() {
	plan, err := portion.Heroes{Good: 1, Takes: 2, Wanted: 3}.Stop(10, 60, 25)
	if err != nil {
		fmt.Println(err)
		return
	}
	for n, few := range plan.StopAt {
		if few >= 0 {
			fmt.Printf("after %d takes stop with %d good or fewer\n", n, few)
		}
	}
	fmt.Printf("%.1f takes, %.1f good pulls, all three with %.0f %%\n", plan.Takes, plan.Heroes, 100*plan.Chance)
	// Output:
	// after 2 takes stop with 0 good or fewer
	// after 3 takes stop with 0 good or fewer
	// after 4 takes stop with 1 good or fewer
	// after 5 takes stop with 1 good or fewer
	// after 6 takes stop with 2 good or fewer
	// after 7 takes stop with 2 good or fewer
	// after 8 takes stop with 2 good or fewer
	// after 9 takes stop with 2 good or fewer
	// 3.5 takes, 1.8 good pulls, all three with 53 %
}

// # Does it add up?
//
// The sums have been done before, and published. The figure sets the library beside a
// printed table: at least five successes, a chance of 40 % each.
//
// Figure: chance-of-five
//
// # What could go wrong
//
// What counts as good has to be settled before the first take. A client who grows
// stricter in the afternoon lowers the success rate of the morning.
//
// Skill is not constant. The first takes of a crew are worse than the later ones, so
// an old log may be gloomy; tired hands at six make it too rosy. Start a new log when
// the recipe, the maker or the lamps change.
//
// With an empty log every rate is taken as equally likely, and the numbers are large:
// nine breads for one good pull at 90 %. Make two or three trial breads the day before
// and begin with those.
//
// Many heroes are for choosing among honest ones. Each is made to the recipe, the
// weight and the price of what is sold; the number prepared must not become a way to
// build one that no guest would ever be served.
//
// What was baked and not shown is food. Plan who takes it while it is still safe: what
// stood warm under lamps is thrown away, and what was kept hot or cold as the local
// food code asks can be eaten, with its allergens named. Many hot trays and many
// hurried hands make burns: clear the way from oven to set first.
//
// # Sources
//
// The binomial and beta-binomial distributions are textbook matter. The package is
// checked against the printed tables of the negative binomial examples of Boost.Math,
// a general-purpose library (tables chance_of_five and trials_for_successes), and
// LowestRate against a printed table of the success-run theorem in its Bayesian form
// (success_run). That every success rate was equally likely before the first take is
// an assumption, and a cautious one for skilled hands. Keeping a log of takes, and
// preparing spare heroes, is common practice, no source. Batches as beta-binomial numbers,
// and earlier days counted at a discount (a power prior), are textbook matter too; the
// rule for stopping is solved here. All takes, rates, correlations and worths are
// invented.
func Example_sources() {}
