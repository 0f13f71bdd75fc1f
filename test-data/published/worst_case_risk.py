#!/usr/bin/python3
"""Writes worst_case_risk.csv: what common decision rules risk at worst, by SciPy.

Run in this folder with Debian's SciPy 1.10.1:  /usr/bin/python3 worst_case_risk.py > worst_case_risk.csv

The tolerance is -1 to 1, the expanded uncertainty U = 1/ratio with k = 2. True errors are normal with mean 0 and
standard deviation s; the measurement adds a normal error with standard deviation U/2. Accepted is what lies within
-A to A: A = 1 (simple), 1 - U (whole), 1 - U M with M = 1.04 - exp(0.38 ln ratio - 0.54), at least 0 (multiplier),
sqrt(1 - 1/ratio^2) (root difference). worst_accept_percent is the largest probability over s that an error outside
the tolerance is accepted; reject_percent the probability that one inside is rejected where 95 % are in tolerance.
Both are adaptive quadratures (quad); the largest is found by bounded search in ln s.
"""
import math

from scipy.integrate import quad
from scipy.optimize import minimize_scalar
from scipy.special import ndtr, ndtri


def accepted(t, a, u):
    """Probability that an error t is measured within -a to a."""
    return ndtr((a - t) / u) - ndtr((-a - t) / u)


def density(t, s):
    return math.exp(-0.5 * (t / s) ** 2) / (s * math.sqrt(2 * math.pi))


def false_accept(s, a, u):
    far = 1 + 40 * u
    inside = quad(lambda t: density(t, s) * accepted(t, a, u), 1, far, epsabs=1e-15, epsrel=1e-12, limit=500)[0]
    return 2 * inside


def false_reject(s, a, u):
    points = [p for p in (a - 3 * u, a, a + 3 * u) if 0 < p < 1]
    return 2 * quad(lambda t: density(t, s) * (1 - accepted(t, a, u)), 0, 1, points=points or None,
                    epsabs=1e-15, epsrel=1e-12, limit=500)[0]


def multiplier(ratio):
    return max(0.0, 1.04 - math.exp(0.38 * math.log(ratio) - 0.54))


RULES = {
    "simple": lambda r: 1.0,
    "whole": lambda r: 1 - 1 / r,
    "multiplier": lambda r: 1 - multiplier(r) / r,
    "root difference": lambda r: math.sqrt(1 - 1 / r ** 2),
}

print("# what:   what common decision rules risk at worst over the spread of a centred normal population, percent")
print("# source: SciPy 1.10.1 (quad, minimize_scalar); /usr/bin/python3 worst_case_risk.py > worst_case_risk.csv")
print("rule,ratio,worst_accept_percent,reject_percent")
in_tolerance_95 = 1 / ndtri(0.975)
for name, zone in RULES.items():
    for ratio in (1.5, 2, 2.5, 3, 3.5, 4, 4.6, 5, 10):
        a, u = zone(ratio), 0.5 / ratio
        best = minimize_scalar(lambda ln: -false_accept(math.exp(ln), a, u), bounds=(math.log(0.1), math.log(10)),
                               method="bounded", options={"xatol": 1e-8})
        print(f"{name},{ratio},{-100 * best.fun:.12g},{100 * false_reject(in_tolerance_95, a, u):.12g}")
