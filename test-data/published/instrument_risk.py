#!/usr/bin/python3
"""Writes instrument_risk.csv: false accept and false reject of whole instruments with correlated points, by SciPy.

Run in this folder with Debian's SciPy 1.10.1:  /usr/bin/python3 instrument_risk.py > instrument_risk.csv

n points, each with true error t ~ N(mean, sd), limit -1 to 1, result t + N(0, u), accepted within -a to a. Any two
true errors have correlation r_true, any two measurements r_meas. False accept: some |t| > 1 and every |result| <= a;
false reject: every |t| <= 1 and some |result| > a. Rectangles of the multivariate normal distribution by Genz's method
(scipy.stats mvn.mvnun, 4e6 points), which is randomised: the mean of two runs is given, and the script stops where
they differ by more than 1e-5.
"""
import sys

import numpy as np
from scipy.stats import _mvn as mvn

CASES = [  # n, mean, sd, u, a, r_true, r_meas
    (2, 0.0, 0.5, 0.125, 1.0, 0.8, 0.5),
    (3, 0.2, 0.6, 0.2, 0.8, 0.6, 0.3),
    (3, -0.3, 0.4, 0.25, 1.0, 0.9, 0.9),
    (2, 0.1, 1.2, 0.4, 0.7, 0.0, 0.0),
]


def rectangle(bounds, mean, cov):
    value, inform = mvn.mvnun(-np.array(bounds), np.array(bounds), mean, cov, maxpts=4_000_000, abseps=1e-7,
                              releps=1e-7)
    if inform not in (0, 1):
        sys.exit("mvnun reports %d" % inform)
    return value


def main():
    print("# what:   false accept and false reject of instruments with correlated points, limit -1 to 1, any unit")
    print("# source: SciPy 1.10.1 (Genz's multivariate normal rectangles);"
          " /usr/bin/python3 instrument_risk.py > instrument_risk.csv")
    print("points,mean,sd,u,accept,r_true,r_meas,false_accept,false_reject")
    for n, mean, sd, u, a, rt, rm in CASES:
        one, eye = np.ones((n, n)), np.eye(n)
        ct = sd * sd * (rt * one + (1 - rt) * eye)
        cy = ct + u * u * (rm * one + (1 - rm) * eye)
        joint = np.block([[ct, ct], [ct, cy]])
        values = []
        for _ in range(2):
            both = rectangle([1.0] * n + [a] * n, [mean] * (2 * n), joint)
            accepted = rectangle([a] * n, [mean] * n, cy)
            within = rectangle([1.0] * n, [mean] * n, ct)
            values.append((accepted - both, within - both))
        if max(abs(x - y) for x, y in zip(*values)) > 1e-5:
            sys.exit("not converged: %r" % values)
        print("%d,%s,%s,%s,%s,%s,%s,%.5f,%.5f" % (n, mean, sd, u, a, rt, rm, *np.mean(values, axis=0)))


main()
