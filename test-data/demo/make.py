#!/usr/bin/env python3
"""Makes the demo records of the invented Kestrel Fen Water Works. Invented data: for showing, never for checking.

The same run of this script gives the same files, byte for byte.
"""
import pathlib
import random

HERE = pathlib.Path(__file__).parent
POINTS = (0, 25, 50, 75, 100)
PREAMBLE = """Plant,Kestrel Fen Water Works (invented)
Tag,{tag}
Serial,{serial}
Date,{date}
Technician,K-07
Input range,{low} to {high} {unit}
Output range,4 to 20 mA
Transfer,linear
Tolerance,±{tolerance} % of span
Phase,as found
Supply,24.1 V
Load,250 ohm
{ambient}Standard,S-02,certificate KF-2231,due 2027-01-31,U 0.015 % of span,k 2
"""


def error(percent, zero, gain, bow, hysteresis, rising):
    """Error in percent of span: zero, gain, a bow and half the hysteresis either way."""
    p = percent / 100
    return zero + gain * p + 4 * bow * p * (1 - p) + (-0.5 if rising else 0.5) * hysteresis * 4 * p * (1 - p)


def traverse(points):
    return [(p, True) for p in points] + [(p, False) for p in reversed(points[:-1])]


def row(rng, percent, rising, span, shape, decimals):
    low, high = span
    applied = low + (high - low) * (percent + rng.gauss(0, 0.01)) / 100
    applied = round(applied, decimals)
    at = 100 * (applied - low) / (high - low)
    indicated = 4 + 0.16 * (at + error(at, *shape, rising) + rng.gauss(0, 0.004))
    return f"{applied:.{decimals}f}", f"{indicated:.3f}"


def bench(name, tag, serial, date, unit, span, tolerance, shape, seed, decimals):
    rng = random.Random(seed)
    lines = [PREAMBLE.format(tag=tag, serial=serial, date=date, low=span[0], high=span[1], unit=unit,
                             tolerance=tolerance, ambient="Ambient,21.5 °C\n"),
             f"Cycle,Point (%),Direction,Applied ({unit}),Indicated (mA)\n"]
    for cycle in (1, 2, 3):
        for percent, rising in traverse(POINTS):
            applied, indicated = row(rng, percent, rising, span, shape, decimals)
            lines.append(f"{cycle},{percent},{'up' if rising else 'down'},{applied},{indicated}\n")
    (HERE / name).write_text("".join(lines), encoding="utf-8", newline="\n")


def chamber(name, tag, serial, date, shape, zero_per_k, span_per_k, curvature, non_return, seed):
    rng = random.Random(seed)
    lines = [PREAMBLE.format(tag=tag, serial=serial, date=date, low=4, high=20, unit="mA", tolerance=0.1, ambient=""),
             "Ambient (°C),Cycle,Point (%),Direction,Applied (mA),Indicated (mA)\n"]
    visits = 0
    for ambient in (21.5, 40, 55, 21.5, 0, -10, -25, 21.5):
        dt = ambient - 21.5
        visits += ambient == 21.5
        zero, gain, bow, hysteresis = shape
        moved = (zero + zero_per_k * dt + curvature * dt * abs(dt) + non_return * (visits - 1),
                 gain + span_per_k * dt, bow, hysteresis)
        for percent, rising in traverse((0, 50, 100)):
            applied, indicated = row(rng, percent, rising, (4, 20), moved, 3)
            lines.append(f"{ambient:.1f},1,{percent},{'up' if rising else 'down'},{applied},{indicated}\n")
    (HERE / name).write_text("".join(lines), encoding="utf-8", newline="\n")


bench("LT-101.csv", "LT-101", "KF-48210", "2026-09-14", "m", (0, 8), 0.1, (0.020, 0.030, 0.015, 0.010), 101, 4)
bench("LT-101A.csv", "LT-101A", "KF-51107", "2026-09-15", "mA", (4, 20), 0.1, (-0.015, 0.030, 0.010, 0.006), 102, 3)
bench("LT-101B.csv", "LT-101B", "KF-60933-3", "2026-09-15", "mA", (4, 20), 0.1, (0.012, -0.025, 0.012, 0.005), 103, 3)
chamber("LT-101A-chamber.csv", "LT-101A", "KF-51107", "2026-06-02", (-0.010, 0.020, 0.010, 0.006),
        0.0015, -0.0022, 0.00001, 0.004, 104)
chamber("LT-101B-chamber.csv", "LT-101B", "KF-60933-3", "2026-06-03", (0.008, -0.010, 0.012, 0.005),
        0.0020, 0.0036, -0.00001, 0.005, 105)
# A channel with an offset and a bow; the same after one turn of its gain trim, which pivots at 0 mA.
bench("LT-102B.csv", "LT-102B", "KF-60933-4", "2026-09-16", "mA", (4, 20), 0.1, (0.070, 0.000, 0.075, 0.005), 106, 3)
bench("LT-102B-turned.csv", "LT-102B", "KF-60933-4", "2026-09-16", "mA", (4, 20), 0.1,
      (0.070 - 0.25 * 0.072, -0.072, 0.075, 0.005), 107, 3)
# Three channels whose errors are round figures in 1 uA: an offset of 0.1 % of span, a bow of 0.1 %, and both. One
# traverse upwards, so hysteresis and repeatability cannot be told. What a turn leaves is worked by hand in notebook 05.
WORKED = [PREAMBLE.format(tag="LT-103", serial="KF-61000", date="2026-09-17", low=4, high=20, unit="mA",
                          tolerance=0.06, ambient="Ambient,21.5 °C\n").replace("Tag,LT-103\nSerial,KF-61000\n", ""),
          "Tag,Cycle,Point (%),Direction,Applied (mA),Indicated (mA)\n"]
for tag, shape in (("LT-103A", (0.1, 0, 0, 0)), ("LT-103B", (0, 0, 0.1, 0)), ("LT-103C", (0.1, 0, 0.1, 0))):
    for percent in POINTS:
        applied = 4 + 0.16 * percent
        indicated = applied + 0.16 * error(percent, *shape, True)
        WORKED.append(f"{tag},1,{percent},up,{applied:.3f},{indicated:.3f}\n")
(HERE / "LT-103.csv").write_text("".join(WORKED), encoding="utf-8", newline="\n")
