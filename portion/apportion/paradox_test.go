package apportion

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate/testdata"
)

// house reads weights by name from a table, where keep accepts the row.
func house(t *testing.T, table, weight string, keep func(testdata.Row) bool, least int64) (names []string, claims []Claim) {
	t.Helper()
	data, err := testdata.Load(table)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range data.Rows {
		if !keep(r) {
			continue
		}
		w, err := r.Float(weight)
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, r.Text("state"))
		claims = append(claims, Claim{Weight: w, Min: least})
	}
	return names, claims
}

// changes lists who gets what at two totals, where it differs.
func changes(t *testing.T, m Method, names []string, claims []Claim, from, to int64) map[string][2]int64 {
	t.Helper()
	a, err := m.Apportion(from, claims)
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Apportion(to, claims)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][2]int64{}
	for i, n := range names {
		if a[i] != b[i] {
			out[n] = [2]int64{a[i], b[i]}
		}
	}
	return out
}

func every(testdata.Row) bool { return true }

// One seat more in the House of 1880, and Alabama would have lost one (sources in
// testdata, apportionment_us_1880). The paradox needs the one seat that every state
// has: without it Nevada's 0.377 seats leave the cut elsewhere. No divisor method
// shows it.
func TestAlabamaParadoxNeedsTheOneSeatMinimum(t *testing.T) {
	names, claims := house(t, "apportionment_us_1880", "population", every, 1)
	want := map[string][2]int64{"Alabama": {8, 7}, "Illinois": {18, 19}, "Texas": {9, 10}}
	if diff := cmp.Diff(want, changes(t, Vinton, names, claims, 299, 300)); diff != "" {
		t.Error(diff)
	}
	names, claims = house(t, "apportionment_us_1880", "population", every, 0)
	for name, seats := range changes(t, LargestRemainder, names, claims, 299, 300) {
		if seats[1] < seats[0] {
			t.Errorf("without the minimum %s goes from %d to %d", name, seats[0], seats[1])
		}
	}
	for _, m := range allMethods[1:] {
		for name, seats := range changes(t, m, names, claims, 299, 300) {
			if seats[1] < seats[0] {
				t.Errorf("%v: %s goes from %d to %d", m, name, seats[0], seats[1])
			}
		}
	}
}

// The populations of 1900 would have given Colorado two seats at a House of 357 and
// three at every other size from 350 to 400 (Balinski and Young, Fair
// Representation, from memory).
func TestColoradoIn1900(t *testing.T) {
	names, claims := house(t, "apportionment_us_1900", "population_1900", func(r testdata.Row) bool { return r.Text("population_1900") != "" }, 1)
	for size := int64(350); size <= 400; size++ {
		got, err := Vinton.Apportion(size, claims)
		if err != nil {
			t.Fatal(err)
		}
		for i, n := range names {
			want := int64(3)
			if size == 357 {
				want = 2
			}
			if n == "CO" && got[i] != want {
				t.Errorf("%d seats: Colorado gets %d, want %d", size, got[i], want)
			}
		}
	}
}

// In 2020 the last seat went to Minnesota; New York needed 89 more people to take
// it (89: from memory, reproduced by the read populations).
func TestLastSeatOf2020(t *testing.T) {
	names, claims := house(t, "apportionment_us_1970_2020", "population", func(r testdata.Row) bool { return r.Text("census_year") == "2020" }, 1)
	if diff := cmp.Diff(map[string][2]int64{"Minnesota": {7, 8}}, changes(t, HuntingtonHill, names, claims, 434, 435)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(map[string][2]int64{"New York": {26, 27}}, changes(t, HuntingtonHill, names, claims, 435, 436)); diff != "" {
		t.Error(diff)
	}
	for more, want := range map[float64]int64{88: 26, 89: 27} {
		for i, n := range names {
			if n != "New York" {
				continue
			}
			claims[i].Weight += more
			got, err := HuntingtonHill.Apportion(435, claims)
			if err != nil {
				t.Fatal(err)
			}
			if got[i] != want {
				t.Errorf("%v more people: New York gets %d, want %d", more, got[i], want)
			}
			claims[i].Weight -= more
		}
	}
}

// Webster's method would have moved one seat of 2010 from Rhode Island to North
// Carolina (For All Practical Purposes, 10th edition, chapter 14, example 22).
func TestWebsterIn2010(t *testing.T) {
	names, claims := house(t, "apportionment_us_1970_2020", "population", func(r testdata.Row) bool { return r.Text("census_year") == "2010" }, 1)
	hill, err := HuntingtonHill.Apportion(435, claims)
	if err != nil {
		t.Fatal(err)
	}
	webster, err := Webster.Apportion(435, claims)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int64{}
	for i, n := range names {
		if d := webster[i] - hill[i]; d != 0 {
			got[n] = d
		}
	}
	if diff := cmp.Diff(map[string]int64{"North Carolina": 1, "Rhode Island": -1}, got); diff != "" {
		t.Error(diff)
	}
}
