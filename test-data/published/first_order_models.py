"""Writes first_order_models.csv: 100 random models with their value and standard uncertainty by `uncertainties`.

/usr/bin/python3 first_order_models.py > first_order_models.csv     (Debian python3-uncertainties 3.1.6)

A model is in postfix notation: x0, x1, ... are inputs; + - * / take two values, sqrt exp log sin neg one. Inputs of
every second model are correlated, by a random positive definite matrix (upper triangle, row by row).
"""
import math
import random

import numpy as np
import uncertainties
from uncertainties import correlated_values_norm, ufloat, umath

random.seed(20260101)
np.random.seed(20260101)


def build(n):
    """Postfix text over n inputs, each used at least once."""
    parts = [f"x{i}" for i in range(n)] + [f"x{random.randrange(n)}" for _ in range(random.randrange(4))]
    random.shuffle(parts)
    parts = [p + " " + random.choice(["sqrt", "log", "sin", "neg exp"]) if random.random() < 0.5 else p for p in parts]
    while len(parts) > 1:
        b, a = parts.pop(), parts.pop()
        parts.insert(random.randrange(len(parts) + 1), f"{a} {b} {random.choice('++-**/')}")
    return parts[0]


def evaluate(text, x):
    one = {"sqrt": umath.sqrt, "exp": umath.exp, "log": umath.log, "sin": umath.sin, "neg": lambda v: -v}
    stack = []
    for word in text.split():
        if word[0] == "x":
            stack.append(x[int(word[1:])])
        elif word in one:
            stack.append(one[word](stack.pop()))
        else:
            b, a = stack.pop(), stack.pop()
            stack.append({"+": lambda: a + b, "-": lambda: a - b, "*": lambda: a * b, "/": lambda: a / b}[word]())
    return stack[0]


print("# source: Python package uncertainties", uncertainties.__version__, "by first_order_models.py, beside this file")
print("model,values,u,correlations,value,standard_uncertainty")
done = 0
while done < 100:
    n = random.randrange(2, 7)
    text = build(n)
    values = [round(random.uniform(1.2, 3.0), 3) for _ in range(n)]
    us = [float(f"{random.uniform(0.001, 0.2):.2g}") for _ in range(n)]
    triangle = ""
    if done % 2:
        factor = np.random.normal(size=(n, n))
        covariance = factor @ factor.T
        scale = np.sqrt(np.diag(covariance))
        r = np.round(covariance / np.outer(scale, scale) * 0.9, 3)
        np.fill_diagonal(r, 1.0)
        triangle = ";".join(repr(float(r[i, j])) for i in range(n) for j in range(i + 1, n))
        x = correlated_values_norm(list(zip(values, us)), r)
    else:
        x = [ufloat(v, u) for v, u in zip(values, us)]
    try:
        y = evaluate(text, x)
    except (ValueError, ZeroDivisionError, OverflowError):
        continue
    if not math.isfinite(y.n) or not math.isfinite(y.s) or y.s == 0 or abs(y.n) > 1e4 or y.s > 1e3:
        continue
    print(",".join([text, ";".join(map(repr, values)), ";".join(map(repr, us)), triangle, repr(float(y.n)),
                    repr(float(y.s))]))
    done += 1
