# Makes panel_circuits.csv. Run: /usr/bin/python3 panel_circuits.py > panel_circuits.csv (needs ngspice 39, from Debian)
# 30 random panels: four loops and a module that draws a constant current, on one supply (every third one of two units in
# parallel through diodes) with a feed that all share. A general nodal solver finds the voltage of the feed with the loops
# that are short of voltage drawing less. Devices are behavioural sources as in loop_circuits.py; the 0.001 ohm of
# transmitter and diode are part of their resistance in the table.
import random
import subprocess
import tempfile

random.seed(31)
LOOPS = 4


def draw(low, high, digits=3):
    return round(random.uniform(low, high), digits)


def panel(number):
    c = {"id": number, "asked_mA": draw(12, 22.5), "e1_V": draw(18, 26), "r1_ohm": draw(0.5, 15), "e2_V": 0, "r2_ohm": 0,
         "diode_V": 0, "shared_ohm": draw(1, 25), "module_mA": draw(0, 120)}
    if number % 3 == 0:
        c["e2_V"], c["r2_ohm"], c["diode_V"] = round(c["e1_V"] + draw(-0.5, 0.5), 3), draw(0.5, 15), draw(0.3, 0.8)
    for k in range(1, LOOPS + 1):
        c[f"lift{k}_V"], c[f"lift{k}_ohm"], c[f"loop{k}_ohm"] = draw(9, 13), draw(0.01, 20), draw(100, 400)
    return c


def netlist(c):
    n = ["* panel"]
    if c["e2_V"]:
        for k in (1, 2):
            n += [f"V{k} a{k} 0 {c[f'e{k}_V']}", f"R{k} a{k} b{k} {c[f'r{k}_ohm'] - 0.001!r}", f"VI{k} b{k} d{k} 0",
                  f"BD{k} d{k} bus I=max(0,1000*(V(d{k},bus)-{c['diode_V']}))", f"RL{k} d{k} bus 1e12"]
    else:
        n += [f"V1 a1 0 {c['e1_V']}", f"R1 a1 b1 {c['r1_ohm']}", "VI1 b1 bus 0"]
    n += [f"RS bus feed {c['shared_ohm']}", f"IM feed 0 {c['module_mA'] / 1000!r}"]
    for k in range(1, LOOPS + 1):
        n += [f"BT{k} feed q{k} I=min({c['asked_mA'] / 1000!r},1000*(V(feed,q{k})-{c[f'lift{k}_V']}))",
              f"RT{k} q{k} x{k} {c[f'lift{k}_ohm'] - 0.001!r}", f"VC{k} x{k} c{k} 0", f"RC{k} c{k} 0 {c[f'loop{k}_ohm']}"]
    n += [".options reltol=1e-9 abstol=1e-12 vntol=1e-12 itl1=2000", ".control", "set numdgt=15", "op",
          "print v(feed) v(bus) i(vi1) " + ("i(vi2) v(b1) v(b2) " if c["e2_V"] else "v(b1) ")
          + " ".join(f"i(vc{k})" for k in range(1, LOOPS + 1)), ".endc", ".end"]
    return "\n".join(n) + "\n"


def main():
    print("# Source: panel_circuits.py with ngspice 39; the units' power is at their terminals, before diodes and feed")
    header = None
    for number in range(30):
        c = panel(number)
        with tempfile.NamedTemporaryFile("w", suffix=".cir") as f:
            f.write(netlist(c))
            f.flush()
            out = subprocess.run(["ngspice", "-b", f.name], capture_output=True, text=True)
        v = {line.split(" = ")[0]: float(line.split(" = ")[1]) for line in out.stdout.splitlines()
             if line.startswith(("v(", "i(")) and " = " in line}
        if "i(vi1)" not in v:
            raise SystemExit(f"panel {number} not solved:\n{netlist(c)}\n{out.stdout}{out.stderr}")
        part = 0.001 if c["e2_V"] else 0
        units = sum((v[f"v(b{k})"] - part * v[f"i(vi{k})"]) * v[f"i(vi{k})"] for k in (1, 2) if f"i(vi{k})" in v)
        total = v["i(vi1)"] + v.get("i(vi2)", 0)
        row = dict(c, feed_V=v["v(feed)"], total_mA=total * 1000, units_mW=units * 1000,
                   feed_mW=(v["v(bus)"] - v["v(feed)"]) * total * 1000,
                   **{f"current{k}_mA": v[f"i(vc{k})"] * 1000 for k in range(1, LOOPS + 1)})
        if header is None:
            header = list(row)
            print(",".join(header))
        print(",".join(str(row[h]) for h in header))


main()
