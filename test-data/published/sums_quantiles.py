"""Writes sums_quantiles.csv: quantiles of sums of independent quantities, by SciPy, and of single distributions.

/usr/bin/python3 sums_quantiles.py > sums_quantiles.csv     (Debian python3-scipy 1.10.1)

The distribution function of a sum is found from the characteristic functions of its parts by the inversion formula of
Gil-Pelaez, its quantile by Brent's method. A part is written kind:a or kind:a:b, about zero: rect, tri, ushape with
half-width a; normal with standard deviation a; trap with half-width a and ratio b.
"""
import numpy as np
import scipy
from scipy import integrate, optimize, special


def cf(part):
    kind, *p = part.split(":")
    p = list(map(float, p))
    sinc = lambda w: np.sinc(w / np.pi)
    return {
        "rect": lambda t: sinc(p[0] * t),
        "tri": lambda t: sinc(p[0] * t / 2) ** 2,
        "ushape": lambda t: special.j0(p[0] * t),
        "normal": lambda t: np.exp(-(p[0] * t) ** 2 / 2),
        "trap": lambda t: sinc(p[0] * (1 + p[1]) / 2 * t) * sinc(p[0] * (1 - p[1]) / 2 * t),
    }[kind]


SUMS = [
    "rect:1 rect:1 rect:1",
    "rect:1 rect:1 rect:1 rect:1",
    "rect:1 normal:0.2",
    "rect:0.3 rect:0.6 rect:0.1 normal:0.25",
    "tri:1 tri:0.5 normal:0.1",
    "ushape:1 rect:0.5 normal:0.2",
    "trap:1:0.5 rect:0.4 normal:0.3",
    "ushape:0.7 ushape:0.4 rect:1.2 tri:0.8 normal:0.15",
]
PROBABILITIES = [0.6, 0.841344746, 0.95, 0.975, 0.995, 0.9985]

t = np.linspace(0, 400, 4_000_001)[1:]
print("# source: SciPy", scipy.__version__, "by sums_quantiles.py, beside this file")
print("parts,probability,quantile")
for parts in SUMS:
    phi = np.ones_like(t)
    for part in parts.split():
        phi = phi * cf(part)(t)

    def below(x):
        integrand = np.concatenate([[x], np.sin(t * x) * phi / t])
        return 0.5 + integrate.simpson(integrand, dx=t[1] - t[0]) / np.pi

    for p in PROBABILITIES:
        print(f"{parts},{p},{optimize.brentq(lambda x: below(x) - p, 0, 6, xtol=1e-9):.7f}")
