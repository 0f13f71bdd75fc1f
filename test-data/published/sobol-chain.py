# Makes sobol-chain.csv. Run: /usr/bin/python3 sobol-chain.py > sobol-chain.csv
# First-order and total Sobol indices of e = q0 + (a1 + a2) (T - 23), by the estimators of Saltelli (2010)
# and Jansen (1999) with 2^21 trials, from NumPy alone: q0 uniform +-0.1, a1 uniform 0.002 +-0.004, a2 uniform +-0.006 (both
# % of span per K), T uniform -10..45 degC. The mean of a1 is not 0, so that T acts alone too.
import numpy as np

rng = np.random.default_rng(20240229)
n = 2 ** 21


def draw():
    return np.column_stack([rng.uniform(-0.1, 0.1, n), rng.uniform(-0.004, 0.004, n) + 0.002,
                            rng.uniform(-0.006, 0.006, n), rng.uniform(-10, 45, n)])


def model(x):
    return x[:, 0] + (x[:, 1] + x[:, 2]) * (x[:, 3] - 23)


a, b = draw(), draw()
fa, fb = model(a), model(b)
v = np.var(np.concatenate([fa, fb]))
print("# what: Sobol indices of a chain of two elements at one temperature, estimates good to about 0.002")
print("# source: NumPy", np.__version__, "with sobol-chain.py; not a publication")
print("input,first_order,total")
for i, name in enumerate(["q0", "a1", "a2", "T"]):
    ab = a.copy()
    ab[:, i] = b[:, i]
    fab = model(ab)
    first = np.mean(fb * (fab - fa)) / v
    total = np.mean((fa - fab) ** 2) / 2 / v
    print(f"{name},{first:.3f},{total:.3f}")
