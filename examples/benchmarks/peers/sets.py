"""Several disjoint sets from one tray at once: HiGHS in process through scipy. One 0/1
variable a piece and set, one a set; a set is full or empty, the sets that are used come
first. Number before scores in one goal. The same trays on both sides."""
import json
import sys

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

from measure import figure

TRAYS = json.load(open(sys.argv[1]))["trays"]


def build(t):
    w, s, k = t["weights"], np.array(t["scores"], float), t["sets"]
    n = len(w)
    a, low, high = [], [], []

    def row(entries, lo, hi):
        a.append(entries)
        low.append(lo)
        high.append(hi)

    for i in range(n):
        row([(i * k + j, 1) for j in range(k)], 0, 1)
    for j in range(k):
        used = n * k + j
        for start, end, count in t["groups"]:
            row([(i * k + j, 1) for i in range(start, end)] + [(used, -count)], 0, 0)
        mass = [(i * k + j, w[i]) for i in range(n)]
        row(mass + [(used, -t["low"])], 0, np.inf)
        row(mass + [(used, -t["high"])], -np.inf, 0)
        if j:
            row([(used - 1, 1), (used, -1)], 0, 1)
    m = lil_matrix((len(a), n * k + k))
    for r, entries in enumerate(a):
        for c, v in entries:
            m[r, c] = v
    goal = -np.concatenate([np.repeat(s, k), np.full(k, s.sum() + 1)])
    return goal, LinearConstraint(m.tocsc(), low, high), s.sum() + 1, n * k


def solve(problem):
    goal, constraints, each, first = problem
    r = milp(goal, constraints=constraints, integrality=np.ones(len(goal)), bounds=Bounds(0, 1), options={"mip_rel_gap": 0})
    sets = round(r.x[first:].sum())
    return 10_000 * sets + round(-r.fun - sets * each)


for job, trays in TRAYS.items():
    # The matrices are built before: only the solving is timed.
    problems = [build(t) for t in trays]
    answer = sum(solve(p) for p in problems)

    def rounds(i):  # all trays a call, as the other side does
        for p in problems:
            solve(p)
        return answer

    figure(job, f"HiGHS in process (scipy {scipy.__version__})", rounds)
