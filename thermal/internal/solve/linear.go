package solve

import "math"

const (
	maxSolves = 40 // in one stage
	slack     = 1  // unsolved heat allowed in a stage, in units of the step error
)

// solve finds the potentials u with V H(u) - vg = w * heat in at time t, by
// solving the linear system of the current pieces of the curve until no shell
// leaves its piece, or the heat misplaced by those that do is negligible.
//
// The matrix is symmetric with three diagonals. It is eliminated from both ends
// towards the middle, so that the two chains of dependent divisions run side by
// side, and solved from the middle outwards. Its diagonal outweighs the rest, so no
// pivoting is needed; gonum's mat.Tridiag pivots and goes from one end, at several
// times the cost.
func (e *Engine) solve(w, t float64, u []float64) bool {
	n, c := e.Shells, e.Curve
	last := n - 1
	allowed := slack * e.tolerance * (e.moved + e.least + math.Abs(w*e.Flow))
	skin, area := e.skin[last], e.area[last]
	us, js := e.u[n], int(e.seg[n])
	u = u[:n+1]
	link, square := e.wlink[:n], e.square[:n]
	vg, vs, vb := e.vg[:n], e.vs[:n], e.vb[:n]
	d, r, low, high := e.d[:n], e.r[:n], e.low[:n], e.high[:n]
	q, dq := e.x.At(c.tempOn(js, us), t)
	for range maxSolves {
		// The surface: area (q + dq (us' - us)) = skin (us' - u of the last shell).
		dq = min(dq, 0) / c.k[js]
		inv := 1 / (skin - area*dq)
		ds, rs := skin*inv, area*(q-dq*us)*inv

		// D is what is left of a diagonal, y of a right side; both run inwards.
		i, j := 0, last
		dIn, yIn := vs[0]+link[0], vg[0]-vb[0]
		dOut, yOut := vs[last]+w*skin*(1-ds)+link[last-1], vg[last]-vb[last]+w*skin*rs
		for ; j-i > 2; i, j = i+1, j-1 {
			a, b := 1/dIn, 1/dOut
			dIn = vs[i+1] + link[i] + link[i+1] - square[i]/dIn
			dOut = vs[j-1] + link[j-1] + link[j-2] - square[j-1]/dOut
			r[i], r[j] = yIn*a, yOut*b
			a, b = link[i]*a, link[j-1]*b
			d[i], d[j] = a, b
			yIn = vg[i+1] - vb[i+1] + a*yIn
			yOut = vg[j-1] - vb[j-1] + b*yOut
		}
		if j-i == 2 {
			// One shell more on the inner side, then the two meet.
			a := 1 / dIn
			dIn = vs[i+1] + link[i] + link[i+1] - square[i]*a
			r[i], d[i] = yIn*a, link[i]*a
			yIn = vg[i+1] - vb[i+1] + d[i]*yIn
			i++
		}
		// The last two: dIn u[i] - link u[j] = yIn, dOut u[j] - link u[i] = yOut.
		det := 1 / (dIn*dOut - square[i])
		mid := i
		u[i] = (yIn*dOut + link[i]*yOut) * det
		u[j] = (yOut*dIn + link[i]*yIn) * det
		for i, j, v, x := mid-1, mid+2, u[mid], u[mid+1]; i >= 0 || j < n; i, j = i-1, j+1 {
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
			if v < low[i] || v > high[i] {
				wrong += e.Volumes[i] * e.move(i, v)
			}
		}
		// The law is not linear in the surface temperature: repeat while it moves.
		q, dq = e.x.At(c.tempOn(js, us), t)
		wrong += math.Abs(area*q-skin*(us-u[last])) * w
		if wrong <= allowed {
			u[n], js = e.meet(us, js, u[last], q, dq, t)
			e.seg[n] = int32(js)
			return true
		}
		if math.IsNaN(wrong) {
			return false
		}
	}
	return false
}

// meet brings the surface to where the law and the flow from the last shell agree,
// to rounding, so that the heat counted is the heat of the law.
func (e *Engine) meet(us float64, js int, inside, q, dq, t float64) (u float64, j int) {
	c, last := e.Curve, e.Shells-1
	skin, area := e.skin[last], e.area[last]
	for range 4 {
		step := (area*q - skin*(us-inside)) / (skin - area*min(dq, 0)/c.k[js])
		if math.Abs(step) <= 1e-14*(math.Abs(us)+math.Abs(inside)) {
			break
		}
		us += step
		js = c.walkU(js, us)
		q, dq = e.x.At(c.tempOn(js, us), t)
	}
	return us, js
}

// move puts a shell whose potential has left its piece on a new one and returns by
// how much its enthalpy, J/m3, was misjudged. Of the pieces that hold the potential
// and the enthalpy of the old line it takes the nearer: going by the potential
// through a change of phase, or by the enthalpy out of one, would overshoot and
// swing.
func (e *Engine) move(i int, u float64) float64 {
	c, j := e.Curve, int(e.seg[i])
	h := c.piece[j].base + c.piece[j].slope*u
	byU, byH := c.walkU(j, u), c.walkH(j, h)
	wrong := math.Abs(c.piece[byU].base + c.piece[byU].slope*u - h)
	if max(byH-j, j-byH) < max(byU-j, j-byU) {
		byU = byH
	}
	e.put(i, byU)
	return wrong
}

// put lays shell i on piece j of the curve and keeps what solve reads of it.
func (e *Engine) put(i, j int) {
	p, v := &e.Curve.piece[j], e.Volumes[i]
	e.seg[i] = int32(j)
	e.vs[i], e.vb[i], e.low[i], e.high[i] = v*p.slope, v*p.base, p.low, p.high
	if e.Flank != nil {
		c, g := e.Curve, e.weight*e.fg[i]
		e.vs[i] += g / c.k[j]
		e.vb[i] += g*(c.temp[j]-c.u[j]/c.k[j]) - e.weight*e.fq[i]
	}
}
