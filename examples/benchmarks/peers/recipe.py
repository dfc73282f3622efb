"""The share of the thick liquid that gives a wanted viscosity by log-mixing, with a
general root finder."""
import math

import scipy
from scipy.optimize import brentq

from measure import figure

THIN, THICK = math.log(0.0021), math.log(1.2)


def share(i):
    want = math.log(0.01 + 0.2 * (i % 997) / 997)
    return brentq(lambda x: (1 - x) * THIN + x * THICK - want, 0.0, 1.0, xtol=5e-5)


figure("recipe: share for a viscosity", f"scipy {scipy.__version__} brentq", share)
