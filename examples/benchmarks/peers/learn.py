"""What a second glass teaches once it was seen to bead: an importance sampler in numpy.
Both sides start from the same runs; each is weighed by the likelihood of what was seen,
and the windows of all events follow as weighted quantiles."""
import json
import sys

import numpy as np

from measure import figure

JOB = "a glass seen to bead: 4,096 runs weighed, all windows"
given = json.load(open(sys.argv[1]))["lesson"]
events = {name: np.where(np.array(t) < 0, np.inf, t) for name, t in given["times"].items()}
weights = np.array(given["weights"])


def quantiles(values, w, shares):
    order = np.argsort(values, kind="stable")
    up_to = np.cumsum(w[order])
    return values[order][np.minimum(np.searchsorted(up_to, np.array(shares) * up_to[-1]), len(values) - 1)]


def learn(i):
    off = (events[given["seen"]] - given["at"]) / given["sd"]
    logs = -0.5 * np.minimum(np.abs(off), 30) ** 2
    w = weights * np.exp(logs - logs.max())
    assert w.sum() ** 2 / (w * w).sum() > 200
    windows = {name: quantiles(t, w, (0.025, 0.5, 0.975)) for name, t in events.items()}
    return windows[given["answer"]][1]


figure(JOB, f"numpy {np.__version__}, the runs given", learn)
