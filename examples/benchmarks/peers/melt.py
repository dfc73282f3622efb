"""The melting sphere by the method of lines with scipy's stiff solvers: 200 shells,
the same constants and the same equal shells, enthalpy as the state."""
import numpy as np
import scipy
from scipy.integrate import solve_ivp

from measure import figure

SHELLS, RADIUS, H, ROOM, START = 200, 0.025, 15.0, 25.0, -18.0
RHO, SOLID, LIQUID, LATENT, K_ICE, K_WATER = 917.0, 2100.0, 4180.0, 333.5e3, 2.2, 0.56
MELTED = RHO * LATENT

face = np.linspace(0.0, RADIUS, SHELLS + 1)
area = 4 * np.pi * face**2
volume = 4 / 3 * np.pi * np.diff(face**3)
step = RADIUS / SHELLS


def temperature(e):
    return np.where(e < 0, -1 + e / (RHO * SOLID), np.where(e > MELTED, (e - MELTED) / (RHO * LIQUID), -1 + e / MELTED))


def rate(_, e):
    t = temperature(e)
    k = K_ICE + (K_WATER - K_ICE) * np.clip(e / MELTED, 0, 1)
    between = 2 * k[1:] * k[:-1] / (k[1:] + k[:-1])
    flow = np.empty(SHELLS + 1)
    flow[0] = 0
    flow[1:-1] = between * (t[:-1] - t[1:]) / step * area[1:-1]
    flow[-1] = (t[-1] - ROOM) / (1 / H + step / 2 / k[-1]) * area[-1]
    return (flow[:-1] - flow[1:]) / volume


start = np.full(SHELLS, RHO * SOLID * (START + 1))


def melted(rtol, atol, **solver):
    s = solve_ivp(rate, (0, 1800), start, t_eval=[1800], rtol=rtol, atol=atol, **solver)
    if not s.success:
        raise RuntimeError(s.message)
    return float((np.clip(s.y[:, -1] / MELTED, 0, 1) * volume).sum() / volume.sum())


JOB = "melting sphere, 200 shells, 30 min"
BANDED = dict(method="LSODA", lband=1, uband=1)
SPARSE = dict(method="BDF", jac_sparsity=np.eye(SHELLS) + np.eye(SHELLS, k=1) + np.eye(SHELLS, k=-1))
# At rtol 1e-3 LSODA's melted share is about as far from its own converged value as
# honestplate's default is: the like-for-like row.
figure(JOB, f"scipy {scipy.__version__} LSODA, banded, rtol 1e-3: as accurate", lambda i: melted(1e-3, 1e3, **BANDED))
figure(JOB, f"scipy {scipy.__version__} LSODA, banded, rtol 1e-6", lambda i: melted(1e-6, 1.0, **BANDED))
figure(JOB, f"scipy {scipy.__version__} BDF, sparse Jacobian, rtol 1e-6", lambda i: melted(1e-6, 1.0, **SPARSE))
