package thermal

import "testing"

func TestPullOpensBeforeItCloses(t *testing.T) {
	k, err := Cheese{Grams: 150, Diameter: 0.28}.Clock(Air{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if k.Opens.Likely >= k.Closes.Likely || k.Closes.Likely == Never {
		t.Errorf("opens %v, closes %v", k.Opens, k.Closes)
	}
	if e := k.Balance.Error(); e > 1e-6 {
		t.Errorf("%g of the heat is missing: %+v", e, k.Balance)
	}
	if len(k.Decides) == 0 {
		t.Error("nothing decides it")
	}
}
