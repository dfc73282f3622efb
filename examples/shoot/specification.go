package shoot

import "fmt"

// A Specification is the product as the client's technician gives it: components in
// build order.
type Specification struct {
	Product    string      `json:"product"`
	Version    string      `json:"version"`
	SignedBy   string      `json:"signed_by,omitzero" doc:"left out: not signed, and the plan says so"`
	ValidUntil *Date       `json:"valid_until,omitzero"`
	Components []Component `json:"components" range:"1,60" doc:"from the bottom up"`
}

// A Component is a layer of a build.
type Component struct {
	Name         string  `json:"name"`
	Grams        float64 `json:"grams,omitzero" range:"0.01,10000"`
	Count        int     `json:"count,omitzero" range:"1,1000"`
	MinusGrams   float64 `json:"minus_grams,omitzero" range:"0,5000" doc:"tolerance below"`
	PlusGrams    float64 `json:"plus_grams,omitzero" range:"0,5000" doc:"tolerance above"`
	Cooked       bool    `json:"cooked,omitzero" doc:"the grams are of it cooked; default raw"`
	YieldPercent float64 `json:"yield_percent,omitzero" range:"10,300" doc:"cooked of raw; left out: not cooked"`
	PackGrams    float64 `json:"pack_grams,omitzero" range:"0.1,100000"`
	PackCount    int     `json:"pack_count,omitzero" range:"1,10000"`
}

func (s *Specification) check(c *checker, field string) {
	unique(c, field+".components", len(s.Components), func(i int) string { return s.Components[i].Name })
	for i, k := range s.Components {
		at := fmt.Sprintf("%s.components[%d]", field, i)
		c.unless(k.Grams > 0 || k.Count > 0, at+".grams", "missing", "grams or count")
		c.unless(k.MinusGrams <= k.Grams || k.Grams == 0 && k.Count == 0, at+".minus_grams", fmt.Sprint(k.MinusGrams), fmt.Sprintf("at most the grams, %g", k.Grams))
		c.unless(!k.Cooked || k.YieldPercent > 0, at+".yield_percent", "missing", "it given: what is specified cooked is bought raw")
	}
}
