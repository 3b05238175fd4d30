#!/usr/bin/env python3
"""Smoothing spline of scipy beside which ours is held (CurveFitPeerTest). Prints 12 significant digits."""
import numpy as np
import scipy
from scipy.interpolate import CubicSpline, make_smoothing_spline
from scipy.optimize import least_squares

t = np.array([15, 45, 72, 103, 132, 165, 192, 227, 258, 283], float)
y = np.array([23.656, 28.23, 28.291, 27.473, 25.668, 24.293, 21.667, 23.001, 17.844, 19.671])
print("numpy", np.__version__, "scipy", scipy.__version__)
for smoothing in (1e5, 3e5):
    s = make_smoothing_spline(t, y, lam=smoothing)
    print("smoothing", smoothing, "at tests", [float(f"{v:.12g}") for v in s(t)], "rss", f"{((y - s(t)) ** 2).sum():.12g}")
    print("  at 30, 100, 250:", [float(f"{s(x):.12g}") for x in (30, 100, 250)], "slope at 100", f"{s.derivative()(100):.12g}")
c = CubicSpline([1, 155, 305], [20, 25, 15], bc_type="natural")
print("natural spline at 60, 230", f"{c(60):.12g} {c(230):.12g}", "integral", f"{c.integrate(1, 305):.12g}", "slope at 60", f"{c(60, 1):.12g}")


def jacobian(f, p):
    """Complex-step derivatives: exact to rounding, where finite differences stop least_squares seven digits in."""
    rows = []
    for k in range(len(p)):
        q = p.astype(complex)
        q[k] += 1e-30j
        rows.append(f(q).imag / 1e-30)
    return np.column_stack(rows)


def fit(name, f, start):
    p = least_squares(lambda p: f(p) - y, start, jac=lambda p: jacobian(f, p), method="lm", x_scale=np.abs(start), max_nfev=100000).x
    for _ in range(200):
        p = p + np.linalg.lstsq(jacobian(f, p) * np.abs(start), y - f(p), rcond=None)[0] * np.abs(start)
    print(name, [float(f"{v:.12g}") for v in p], "rss", f"{((y - f(p)) ** 2).sum():.12g}")


fit("Nelder", lambda p: t / (p[0] + p[1] * t + p[2] * t**2), [0.3, 0.02, 1e-4])
fit("Cobby and Le Du", lambda p: p[0] - p[1] * t - p[0] * np.exp(-p[2] * t), [30, 0.04, 0.05])
fit("Wilmink free rate", lambda p: p[0] + p[1] * np.exp(-p[3] * t) + p[2] * t, [31, -16, -0.045, 0.04])
