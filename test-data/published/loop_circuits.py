# Makes loop_circuits.csv. Run: /usr/bin/python3 loop_circuits.py > loop_circuits.csv (needs ngspice 39, from Debian)
# 200 random loops, solved by a general nodal solver. Devices are behavioural sources: a transmitter is a source of
# current min(asked, 1000 S x (V - lift)), an input-loop-powered isolator mirrors its input current into its output and
# puts the output voltage on top of its own drop, a diode conducts 1000 S beyond its voltage, a clamp and an output at its
# limit G. The 0.001 ohm of transmitter and diode are part of their resistance in the table; a clamp and an output are off
# by 0.02 A / 1e5 S = 2e-7 V. Steeper ones cost more by rounding than they gain.
import random
import subprocess
import tempfile

random.seed(7)
# In S; the second only where the solver does not converge with the first.
STEEP = ("1e5", "5e4", "2e4")
TIGHT = {"1e5": "1e-12", "5e4": "1e-11", "2e4": "1e-9"}


def draw(low, high, digits=3):
    return round(random.uniform(low, high), digits)


def circuit(number):
    c = {"id": number, "asked_mA": draw(3.6, 22.5), "e1_V": 0, "r1_ohm": draw(0.5, 30),
         "e2_V": 0, "r2_ohm": 0, "diode_V": 0, "cable_ohm": draw(0.1, 80), "lift_V": draw(8, 15), "lift_ohm": draw(0.01, 40),
         "meter_V": 0, "meter_ohm": 0.01, "isolators": random.randint(0, 3), "load_ohm": draw(50, 300),
         "end": random.choice(["none", "output-loop-powered", "separately powered"])}
    if number % 4 == 0:
        c["meter_V"], c["meter_ohm"] = draw(0, 1.5), draw(1, 50)
    for k in range(1, 4):
        here = k <= c["isolators"]
        c[f"drop{k}_V"] = draw(1, 4) if here else 0
        c[f"drop{k}_ohm"] = draw(0.01, 60) if here else 0
        c[f"wire{k}_ohm"] = draw(0.01, 30) if here else 0
        # A clamp in every second nest, sometimes so low that it cuts the current short.
        c[f"clamp{k}_V"] = draw(3, 14) if here and number % 2 and k == c["isolators"] else 0
    c["end_supply_V"] = draw(15, 28) if c["end"] == "output-loop-powered" else 0
    c["end_V"] = draw(6, 12) if c["end"] != "none" else 0
    c["end_in_V"] = draw(0.5, 2) if c["end"] != "none" else 0
    c["end_load_ohm"] = draw(100, 900) if c["end"] != "none" else 0
    # Enough for some current, often not for all that is asked.
    fixed = c["lift_V"] + c["meter_V"] + c["end_in_V"] + sum(c[f"drop{k}_V"] for k in (1, 2, 3))
    c["e1_V"] = round(fixed + draw(1.5, 14), 3)
    if number % 3 == 0:
        c["e2_V"], c["r2_ohm"], c["diode_V"] = round(c["e1_V"] + draw(-0.4, 0.4), 3), draw(0.5, 30), draw(0.2, 0.8)
    return c


def netlist(c, G):
    n = ["* loop"]
    if c["e2_V"]:
        for k in (1, 2):
            n += [f"V{k} a{k} 0 {c[f'e{k}_V']}", f"R{k} a{k} b{k} {c[f'r{k}_ohm'] - 0.001!r}",
                  f"BD{k} b{k} sup I=max(0,1000*(V(b{k},sup)-{c['diode_V']}))", f"RL{k} b{k} sup 1e12"]
    else:
        n += [f"V1 a1 0 {c['e1_V']}", f"R1 a1 sup {c['r1_ohm']}"]
    half = c["cable_ohm"] / 2
    n += [f"RC1 sup tp {half!r}", f"BT tp tq I=min({c['asked_mA'] / 1000!r},1000*(V(tp,tq)-{c['lift_V']}))",
          f"RT tq tn {c['lift_ohm'] - 0.001!r}", f"RC2 tn m {half!r}",
          f"VM m m1 {c['meter_V']}", f"RM m1 n0 {c['meter_ohm']}"]
    # The ring goes on from n0; whatever stands behind an isolator is another circuit with the same reference.
    at = "n0"
    for k in range(1, c["isolators"] + 1):
        n += [f"VS{k} {at} x{k} 0", f"RI{k} x{k} y{k} {c[f'drop{k}_ohm']}",
              f"BI{k} y{k} 0 V={c[f'drop{k}_V']}+V(o{k})", f"F{k} 0 o{k} VS{k} 1"]
        if c[f"clamp{k}_V"]:
            n.append(f"BC{k} o{k} 0 I=max(0,{G}*(V(o{k})-{c[f'clamp{k}_V']}))")
        n += [f"RW{k} o{k} n{k} {c[f'wire{k}_ohm']}"]
        at = f"n{k}"
    n += [f"VL {at} l 0", f"RLD l e {c['load_ohm']}"]
    if c["end"] == "none":
        n += ["VE e 0 0", "VR r 0 0", "RR r 0 1"]
    else:
        n += [f"VE e e1 0", f"VQ e1 0 {c['end_in_V']}"]
        if c["end"] == "output-loop-powered":
            n += [f"V3 s3 0 {c['end_supply_V']}", f"BO s3 q I=min(I(VE),{G}*(V(s3,q)-{c['end_V']}))"]
        else:
            n += [f"BO 0 q I=min(I(VE),{G}*({c['end_V']}-V(q)))"]
        n += ["VR q r 0", f"RR r 0 {c['end_load_ohm']}"]
    n += [f".options reltol=1e-9 abstol={TIGHT[G]} vntol=1e-12 itl1=2000", ".control", "set numdgt=15", "op",
          "print v(sup) v(tp) v(tn) v(n0) v(l,e) v(r) i(vm)", ".endc", ".end"]
    return "\n".join(n) + "\n"


def solve(c):
    for steep in STEEP:
        values = attempt(c, steep)
        if len(values) == 7:
            return values
    raise SystemExit(f"circuit {c['id']} not solved:\n{netlist(c, STEEP[0])}")


def attempt(c, steep):
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as f:
        f.write(netlist(c, steep))
        f.flush()
        out = subprocess.run(["ngspice", "-b", f.name], capture_output=True, text=True)
    values = {}
    for line in out.stdout.splitlines():
        if " = " in line and line.split(" = ")[0] in ("v(sup)", "v(tp)", "v(tn)", "v(n0)", "v(l,e)", "v(r)", "i(vm)"):
            values[line.split(" = ")[0]] = float(line.split(" = ")[1])
    return values


def main():
    print("# Source: loop_circuits.py with ngspice 39; volts from the supply's minus, of the load across it")
    header = None
    for number in range(1, 201):
        c = circuit(number)
        v = solve(c)
        row = dict(c, supply_V=v["v(sup)"], transmitter_plus_V=v["v(tp)"], transmitter_minus_V=v["v(tn)"],
                   nest_V=v["v(n0)"], load_V=v["v(l,e)"], end_load_V=v["v(r)"], current_mA=v["i(vm)"] * 1000)
        if header is None:
            header = list(row)
            print(",".join(header))
        print(",".join(str(row[h]) for h in header))


main()
