"""Writes an invented CSV of readings: rows x 7 columns, 27 rows for each channel (9 points, 3 cycles).

usage: make_readings.py ROWS FILE
"""
import random
import sys

rows, path = int(sys.argv[1]), sys.argv[2]
random.seed(20261125)
points = [0, 25, 50, 75, 100, 75, 50, 25, 0]
with open(path, "w", newline="\n") as f:
    f.write("Tag,Cycle,Direction,Point (%),Applied (mA),Indicated (mA),Ambient (degC)\n")
    n = 0
    channel = 0
    while n < rows:
        channel += 1
        zero, gain, ambient = random.gauss(0, .008), random.gauss(1, .0005), random.uniform(18, 28)
        for cycle in (1, 2, 3):
            for i, p in enumerate(points):
                if n == rows:
                    break
                applied = 4 + 16 * p / 100 + random.gauss(0, .002)
                indicated = zero + gain * applied + (.003 if i > 4 else 0) + random.gauss(0, .001)
                f.write(f"KF-{channel:05d},{cycle},{'up' if i < 5 else 'down'},{p},{applied:.3f},{indicated:.4f},"
                        f"{ambient:.1f}\n")
                n += 1
