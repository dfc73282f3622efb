"""The centre of a cooling sphere by its series of six terms, Bi = 1."""
import numpy as np
from scipy.optimize import brentq

from measure import figure

roots = np.array([brentq(lambda z: np.sin(z) - z * np.cos(z) - np.sin(z), n * np.pi + 1e-9, (n + 1) * np.pi - 1e-9) for n in range(6)])
factors = 4 * (np.sin(roots) - roots * np.cos(roots)) / (2 * roots - np.sin(2 * roots))
fourier = np.linspace(0.05, 2.0, 1000)
JOB = "sphere series, 6 terms, one evaluation"


def one(i):
    return float(factors @ np.exp(-roots * roots * fourier[i % 1000]))


def all_at_once(_):
    return (np.exp(-np.outer(fourier, roots * roots)) @ factors)[0]


figure(JOB, f"numpy {np.__version__}, one call each", one)

# The vectorised figure is per evaluation of the thousand in one expression.
import json
import sys

from measure import median_of

seconds, answer = median_of(all_at_once)
json.dump({"job": JOB, "side": f"numpy {np.__version__}, 1000 in one expression", "nanos": seconds * 1e9 / 1000, "answer": float(answer), "repeats": 7}, sys.stdout)
print()
