"""What to weigh out of two liquids for a wanted viscosity, by log-mixing with an
interaction term and a general root finder: grams in whole steps of the scale, the
viscosity of that batch, and the band that the mixing step leaves."""
import math

import scipy
from scipy.optimize import brentq

from measure import figure

D, HALF = -1.1, 0.9  # interaction; half-width of the band per unit of spread
BATCH, STEP = 1000.0, 0.1  # g
STEPS = round(BATCH / STEP)
PEER = f"scipy {scipy.__version__} brentq, xtol 1e-12"


def batch(ln_thin, ln_thick, want):
    """Grams of the thick and the thin liquid, and the viscosity with its band."""
    ln_want = math.log(want)

    def excess(w):
        return (1 - w) * ln_thin + w * ln_thick + w * (1 - w) * D - ln_want

    k = math.floor(brentq(excess, 0.0, 1.0, xtol=1e-12) * STEPS)
    if k < STEPS and excess((k + 1) / STEPS) < -excess(k / STEPS):
        k += 1
    w = k / STEPS
    ln = excess(w) + ln_want
    half = HALF * w * (1 - w) * (ln_thick - ln_thin)
    return k * STEP, (STEPS - k) * STEP, math.exp(ln), math.exp(ln - half), math.exp(ln + half)


def wanted(i):
    return 0.01 + 0.05 * (i % 997) / 997


THIN, THICK = math.log(0.0026), math.log(0.09)


def given(i):
    return batch(THIN, THICK, wanted(i))[0] / BATCH


def whole(i):
    return batch(math.log(0.0026), math.log(0.09), wanted(i))[0] / BATCH


figure("recipe, two viscosities given", PEER, given)
figure("recipe, milk and cream as measured", PEER, whole)
figure("recipe, the liquids evaluated before", PEER, given)
