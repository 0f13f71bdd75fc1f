#!/usr/bin/python3
"""Writes false_accept_risk.csv: 200 random cases of global false accept and false reject, by SciPy.

Run in this folder with Debian's SciPy 1.10.1:  /usr/bin/python3 false_accept_risk.py > false_accept_risk.csv

True error t ~ N(mean, sd), whole or truncated to [trunc_lower, trunc_upper]; result y ~ N(t, u). False accept: t
outside [limit_lower, limit_upper] and y inside [accept_lower, accept_upper]; false reject: the other way round.
An empty cell is an absent side. The value is SciPy's adaptive quadrature (quad) over t. For whole populations it is
confirmed by a second route without quadrature, rectangles of the bivariate normal distribution by Owen's T function
(scipy.special.owens_t); the script stops if the two differ by more than 1e-11.
"""
import math
import sys

import numpy as np
from scipy.integrate import quad
from scipy.special import ndtr, owens_t

INF = math.inf


def bivariate(h, k, r):
    """P(X <= h, Y <= k) of standard normals with correlation r, |r| < 1 (Owen 1956)."""
    if h == -INF or k == -INF:
        return 0.0
    if h == INF:
        return float(ndtr(k))
    if k == INF:
        return float(ndtr(h))
    root = math.sqrt(1 - r * r)
    ah, ak = (k / h - r) / root, (h / k - r) / root
    delta = 0.0 if h * k > 0 or (h * k == 0 and h + k >= 0) else 0.5
    return float(0.5 * (ndtr(h) + ndtr(k)) - owens_t(h, ah) - owens_t(k, ak) - delta)


def rectangle(t0, t1, y0, y1, r):
    return bivariate(t1, y1, r) - bivariate(t0, y1, r) - bivariate(t1, y0, r) + bivariate(t0, y0, r)


def by_owen(c):
    s = math.hypot(c["sd"], c["u"])
    r = c["sd"] / s
    t = lambda v: (v - c["mean"]) / c["sd"]
    y = lambda v: (v - c["mean"]) / s
    both = rectangle(t(c["tl"]), t(c["tu"]), y(c["al"]), y(c["au"]), r)
    accepted = ndtr(y(c["au"])) - ndtr(y(c["al"]))
    within = ndtr(t(c["tu"])) - ndtr(t(c["tl"]))
    return accepted - both, within - both


def by_quad(c):
    m, s, u = c["mean"], c["sd"], c["u"]
    lo, up = max(c["rl"], m - 38 * s), min(c["ru"], m + 38 * s)
    density = lambda t: math.exp(-((t - m) / s) ** 2 / 2) / (s * math.sqrt(2 * math.pi))
    accept = lambda t: ndtr((c["au"] - t) / u) - ndtr((c["al"] - t) / u)
    reject = lambda t: ndtr((c["al"] - t) / u) + ndtr((t - c["au"]) / u)
    marks = [m + k * s for k in (-8, -4, -2, 0, 2, 4, 8)]
    marks += [a + k * u for a in (c["al"], c["au"]) if math.isfinite(a) for k in (-8, -3, -1, 0, 1, 3, 8)]

    def integral(f, a, b):
        a, b = max(a, lo), min(b, up)
        if a >= b:
            return 0.0
        cuts = [a] + sorted(v for v in marks if a < v < b) + [b]
        return sum(quad(f, x, y, epsabs=1e-16, epsrel=1e-12, limit=200)[0] for x, y in zip(cuts, cuts[1:]))

    mass = integral(density, lo, up)
    fa = integral(lambda t: density(t) * accept(t), -INF, c["tl"]) \
        + integral(lambda t: density(t) * accept(t), c["tu"], INF)
    fr = integral(lambda t: density(t) * reject(t), c["tl"], c["tu"])
    return fa / mass, fr / mass


def cases():
    g = np.random.default_rng(20260301)
    for i in range(200):
        half = 10 ** g.uniform(-2, 1)
        mean = half * g.uniform(-1.3, 1.3)
        sd, u = half * 10 ** g.uniform(-1.3, 0.7), half * 10 ** g.uniform(-1.7, 0.3)
        tl, tu = -half * g.uniform(0.6, 1), half * g.uniform(0.6, 1)
        wl, wu = u * g.uniform(0, 2, 2) if i % 3 else (0.0, 0.0)
        while tl + wl >= tu - wu:
            wl, wu = wl / 2, wu / 2
        al, au = tl + wl, tu - wu
        if i % 5 == 3:
            tl = al = -INF
        if i % 5 == 4:
            tu = au = INF
        rl = ru = None
        if i % 4 == 1:
            rl, ru = mean - sd * g.uniform(0.5, 3), mean + sd * g.uniform(0.5, 3)
        yield {"mean": mean, "sd": sd, "u": u, "tl": tl, "tu": tu, "al": al, "au": au,
               "rl": -INF if rl is None else rl, "ru": INF if ru is None else ru}


def main():
    print("# what:   global false-accept and false-reject probability of 200 random cases, any unit")
    print("# source: SciPy 1.10.1 (quad, confirmed by owens_t where not truncated);"
          " /usr/bin/python3 false_accept_risk.py > false_accept_risk.csv")
    print("mean,sd,u,limit_lower,limit_upper,accept_lower,accept_upper,trunc_lower,trunc_upper,"
          "false_accept,false_reject")
    for c in cases():
        fa, fr = by_quad(c)
        if not math.isfinite(c["rl"]):
            oa, orj = by_owen(c)
            if abs(oa - fa) > 1e-11 or abs(orj - fr) > 1e-11:
                sys.exit("two routes differ: %r %g %g %g %g" % (c, fa, oa, fr, orj))
        cells = [c[k] for k in ("mean", "sd", "u", "tl", "tu", "al", "au", "rl", "ru")] + [fa, fr]
        print(",".join("" if math.isinf(v) else repr(float(v)) for v in cells))


main()
