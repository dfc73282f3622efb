"""Twelve of sixty pieces: HiGHS in process through scipy, GLPK and CBC as processes
reading an LP file. The same instances on both sides; the answer is summed over them."""
import json
import os
import re
import subprocess
import sys
import tempfile

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp

from measure import figure

data = json.load(open(sys.argv[1]))
COUNT, TARGET, TOLERANCE, TRAYS = data["count"], data["target"], data["tolerance"], data["instances"]
N = len(TRAYS[0]["weights"])
JOBS = ("12 of 60, closest sum", "12 of 60, best looks within 2 g", "12 of 60, best looks at the exact sum")


def highs(kind, tray):
    w, s, ones = np.array(tray["weights"], float), np.array(tray["scores"], float), np.ones(N)
    if kind == 0:
        rows = np.array([np.append(w, -1), np.append(w, 1), np.append(ones, 0)])
        r = milp(np.append(np.zeros(N), 1), constraints=LinearConstraint(rows, [-np.inf, TARGET, COUNT], [TARGET, np.inf, COUNT]),
                 integrality=np.append(ones, 0), bounds=Bounds(0, np.append(ones, np.inf)), options={"mip_rel_gap": 0})
        return round(r.fun)
    tol = TOLERANCE if kind == 1 else 0
    r = milp(-s, constraints=LinearConstraint(np.array([w, ones]), [TARGET - tol, COUNT], [TARGET + tol, COUNT]),
             integrality=ones, bounds=Bounds(0, 1), options={"mip_rel_gap": 0})
    return round(-r.fun)


def lp(kind, tray):
    def total(values):
        return "\n + ".join(f"{v} x{k}" for k, v in enumerate(values))
    w = total(tray["weights"])
    if kind == 0:
        goal, rows = "Minimize\n goal: d", f" a: {w} - d <= {TARGET}\n b: {w} + d >= {TARGET}\n"
    else:
        tol = TOLERANCE if kind == 1 else 0
        goal, rows = "Maximize\n goal: " + total(tray["scores"]), f" a: {w} <= {TARGET + tol}\n b: {w} >= {TARGET - tol}\n"
    picked = "\n ".join(f"x{k}" for k in range(N))
    return f"{goal}\nSubject To\n{rows} c: {total([1] * N)} = {COUNT}\nBinaries\n {picked}\nEnd\n"


def glpk(path, out):
    subprocess.run(["glpsol", "--lp", path, "--cuts", "--tmlim", "60", "-o", out], check=True, capture_output=True)
    return float(re.search(r"Objective:\s+goal = (\S+)", open(out).read()).group(1))


def cbc(path, out):
    subprocess.run(["cbc", path, "ratio", "0", "sec", "60", "solve", "solu", out, "quit"], check=True, capture_output=True)
    return abs(float(re.search(r"objective value (\S+)", open(out).read()).group(1)))


with tempfile.TemporaryDirectory() as folder:
    out = os.path.join(folder, "solution")
    versions = {
        glpk: re.search(r"\d+\.\d+", subprocess.run(["glpsol", "--version"], capture_output=True, text=True).stdout).group(),
        cbc: re.search(r"Version: (\S+)", subprocess.run(["cbc", "quit"], capture_output=True, text=True).stdout).group(1),
    }
    for kind, job in enumerate(JOBS):
        answer = sum(highs(kind, t) for t in TRAYS)

        def in_process(i):
            highs(kind, TRAYS[i % len(TRAYS)])
            return answer

        figure(job, f"HiGHS in process (scipy {scipy.__version__})", in_process)
        paths = []
        for k, tray in enumerate(TRAYS):
            paths.append(os.path.join(folder, f"{kind}-{k}.lp"))
            with open(paths[-1], "w") as f:
                f.write(lp(kind, tray))
        for tool, name in ((glpk, "GLPK"), (cbc, "CBC")):
            answer = sum(tool(p, out) for p in paths)

            def process(i):
                tool(paths[i % len(paths)], out)
                return answer

            figure(job, f"{name} {versions[tool]}, a process each", process)
