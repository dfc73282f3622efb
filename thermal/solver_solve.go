package thermal

import "math"

// solve finds the potentials u with V (H(u) - g) = w * heat in at time t, by
// solving the linear system of the current pieces of the curve until no shell
// leaves its piece, or the heat misplaced by those that do is negligible.
//
// The matrix is symmetric with three diagonals. It is eliminated from both ends
// towards the middle, so that the two chains of dependent divisions run side by
// side, and solved from the middle outwards.
func (e *engine) solve(w, t float64, u []float64) bool {
	n, c := e.n, e.c
	last, mid := n-1, n/2
	allowed := slack * e.tolerance * (e.moved + e.least + math.Abs(w*e.q))
	skin, area := e.skin[last], e.area[last]
	us, js := e.u[n], int(e.seg[n])
	u = u[:n+1]
	vol, link, seg, pieces := e.vol[:n], e.wlink[:n], e.seg[:n], e.c.piece
	g, d, r := e.g[:n], e.d[:n], e.r[:n]
	q, dq := e.x.at(c.tempOn(js, us), t)
	for range maxSolves {
		e.solves++
		// The surface: area (q + dq (us' - us)) = skin (us' - u of the last shell).
		dq = min(dq, 0) / c.k[js]
		inv := 1 / (skin - area*dq)
		ds, rs := skin*inv, area*(q-dq*us)*inv

		inner, dIn, rIn := 0.0, 0.0, 0.0
		outer, dOut, rOut := w*skin, ds, rs
		i, j := 0, last
		for ; j > mid; i, j = i+1, j-1 {
			p, o := &pieces[seg[i]], &pieces[seg[j]]
			right, left := link[i], link[j-1]
			v, x := vol[i], vol[j]
			a := 1 / (v*p.slope + right + inner*(1-dIn))
			b := 1 / (x*o.slope + left + outer*(1-dOut))
			dIn, rIn = right*a, (v*(g[i]-p.base)+inner*rIn)*a
			dOut, rOut = left*b, (x*(g[j]-o.base)+outer*rOut)*b
			d[i], r[i], d[j], r[j] = dIn, rIn, dOut, rOut
			inner, outer = right, left
		}
		// One shell is left in the middle, or two.
		for ; i < mid; i++ {
			p := &pieces[seg[i]]
			a := 1 / (vol[i]*p.slope + link[i] + inner*(1-dIn))
			dIn, rIn = link[i]*a, (vol[i]*(g[i]-p.base)+inner*rIn)*a
			d[i], r[i] = dIn, rIn
			inner = link[i]
		}
		p := &pieces[seg[mid]]
		u[mid] = (vol[mid]*(g[mid]-p.base) + inner*rIn + outer*rOut) /
			(vol[mid]*p.slope + inner*(1-dIn) + outer*(1-dOut))
		for i, j, v, x := mid-1, mid+1, u[mid], u[mid]; i >= 0 || j < n; i, j = i-1, j+1 {
			if i >= 0 {
				v = r[i] + d[i]*v
				u[i] = v
			}
			if j < n {
				x = r[j] + d[j]*x
				u[j] = x
			}
		}
		us = rs + ds*u[last]
		js = c.walkU(js, us)
		u[n] = us

		wrong := 0.0
		for i, v := range u[:n] {
			if p := &pieces[seg[i]]; v >= p.low && v <= p.high {
				continue
			}
			wrong += vol[i] * e.move(i, v)
		}
		// The law is not linear in the surface temperature: repeat while it moves.
		q, dq = e.x.at(c.tempOn(js, us), t)
		wrong += math.Abs(area*q-skin*(us-u[last])) * w
		if wrong <= allowed {
			e.seg[n] = int32(js)
			e.ql = area * q
			return true
		}
		if math.IsNaN(wrong) {
			return false
		}
	}
	return false
}

// move puts a shell whose potential has left its piece on a new one and returns by
// how much its enthalpy, J/m3, was misjudged. Of the pieces that hold the potential
// and the enthalpy of the old line it takes the nearer: going by the potential
// through a change of phase, or by the enthalpy out of one, would overshoot and
// swing.
func (e *engine) move(i int, u float64) float64 {
	c, j := e.c, int(e.seg[i])
	h := c.piece[j].base + c.piece[j].slope*u
	byU, byH := c.walkU(j, u), c.walkH(j, h)
	wrong := math.Abs(c.piece[byU].base + c.piece[byU].slope*u - h)
	if abs(byH-j) < abs(byU-j) {
		byU = byH
	}
	e.seg[i] = int32(byU)
	return wrong
}

func abs(i int) int {
	if i < 0 {
		return -i
	}
	return i
}
