# Makes loop_topologies.csv. Run: /usr/bin/python3 loop_topologies.py > loop_topologies.csv (needs ngspice 39, from Debian)
# 80 random loops of the arrangements that loop_circuits.py leaves out, solved by a general nodal solver: a split supply
# and a shared one with other loops on it; an output card that drives a field device; nests of up to 12 isolators; a
# receiver tapped by a second one; with the power of every kind of element, from the solver's node voltages. The devices
# are behavioural sources as in loop_circuits.py; the 0.001 ohm of the transmitter is part of its resistance in the table,
# and an output at its compliance is off by 0.02 A / 1e5 S = 2e-7 V.
import random
import subprocess
import tempfile

random.seed(11)
STEEP = ("1e5", "5e4", "2e4")


def draw(low, high, digits=3):
    return round(random.uniform(low, high), digits)


def circuit(number):
    kind = ("split", "shared", "card", "shared")[number % 4]
    c = {"id": number, "kind": kind, "asked_mA": draw(3.6, 22.5), "e1_V": 0, "r1_ohm": 0, "e2_V": 0, "r2_ohm": 0,
         "others_mA": 0, "shared_ohm": 0, "card_V": 0, "cable_ohm": draw(0.1, 80), "lift_V": 0, "lift_ohm": 0,
         "isolators": random.randint(0, 12), "drop_V": draw(0.5, 3), "drop_ohm": draw(0.01, 30), "wire_ohm": draw(0.01, 5),
         "device_V": draw(0.5, 3) if kind == "card" else 0, "load_ohm": draw(50, 400), "tap_ohm": draw(5e3, 1e5, 0)}
    spare = draw(1.5, 14)
    fixed = c["isolators"] * c["drop_V"] + c["device_V"]
    if kind == "card":
        c["card_V"] = round(fixed + spare, 3)
        return c
    c["lift_V"], c["lift_ohm"] = draw(8, 15), draw(0.01, 40)
    whole = fixed + c["lift_V"] + spare
    c["e1_V"], c["r1_ohm"] = round(whole, 3), draw(0.5, 30)
    if kind == "split":
        c["e1_V"], c["e2_V"], c["r2_ohm"] = round(whole / 2, 3), round(whole / 2, 3), draw(0.5, 30)
    else:
        c["others_mA"], c["shared_ohm"] = draw(0, 350), draw(0.1, 4)
    return c


def netlist(c, G):
    n = ["* loop"]
    asked, half = c["asked_mA"] / 1000, c["cable_ohm"] / 2
    if c["kind"] == "card":
        # The card holds its current as long as its output stays under its compliance.
        n += [f"BO 0 sup I=min({asked!r},{G}*({c['card_V']}-V(sup)))", f"RC1 sup tn {half!r}", "VI tn n0 0", f"RC2 back 0 {half!r}"]
    else:
        if c["kind"] == "split":
            n += [f"V1 a1 m1 {c['e1_V']}", f"V2 m1 m2 {c['e2_V']}", f"R1 a1 sup {c['r1_ohm'] + c['r2_ohm']!r}", "VG m2 0 0"]
        else:
            n += [f"V1 a1 0 {c['e1_V']}", f"R1 a1 bus {c['r1_ohm']}", f"RS bus sup {c['shared_ohm']}",
                  f"IO sup 0 {c['others_mA'] / 1000!r}"]
        n += [f"RC1 sup tp {half!r}", f"BT tp tq I=min({asked!r},1000*(V(tp,tq)-{c['lift_V']}))",
              f"RT tq tx {c['lift_ohm'] - 0.001!r}", f"RC2 tx tn {half!r}", "VI tn n0 0", "VB back 0 0"]
    at = "n0"
    for k in range(1, c["isolators"] + 1):
        ground = "back" if k == 1 else "0"
        n += [f"VS{k} {at} x{k} 0", f"RI{k} x{k} y{k} {c['drop_ohm']}",
              f"BI{k} y{k} {ground} V={c['drop_V']}+V(o{k})", f"F{k} 0 o{k} VS{k} 1", f"RW{k} o{k} n{k} {c['wire_ohm']}"]
        at = f"n{k}"
    end = "back" if c["isolators"] == 0 else "0"
    n += [f"VD {at} d {c['device_V']}", f"RL d {end} {c['load_ohm']}", f"RP d {end} {c['tap_ohm']}"]
    tight = {"1e5": "1e-12", "5e4": "1e-11", "2e4": "1e-9"}[G]
    n += [f".options reltol=1e-9 abstol={tight} vntol=1e-12 itl1=2000", ".control", "set numdgt=15", "op",
          f"print v(sup) v(n0) {'v(tp) v(tx)' if c['kind'] != 'card' else ''} v(d) v(back) i(vi) v({at})"
          + (" v(o1)" if c["isolators"] else ""), ".endc", ".end"]
    return "\n".join(n) + "\n"


def solve(c):
    for steep in STEEP:
        with tempfile.NamedTemporaryFile("w", suffix=".cir") as f:
            f.write(netlist(c, steep))
            f.flush()
            out = subprocess.run(["ngspice", "-b", f.name], capture_output=True, text=True)
        v = {line.split(" = ")[0]: float(line.split(" = ")[1]) for line in out.stdout.splitlines()
             if line.startswith(("v(", "i(")) and " = " in line}
        if "i(vi)" in v:
            return v
    raise SystemExit(f"circuit {c['id']} not solved:\n{netlist(c, STEEP[0])}\n{out.stdout}{out.stderr}")


def main():
    print("# Source: loop_topologies.py with ngspice 39; volts from the supply's minus; powers in mW from the node voltages")
    header = None
    for number in range(80):
        c = circuit(number)
        v = solve(c)
        amps, end = v["i(vi)"], (v["v(back)"] if c["isolators"] == 0 else 0)
        card = c["kind"] == "card"
        load = v["v(d)"] - end
        cable = v["v(sup)"] - v["v(n0)"] + v["v(back)"] - (0 if card else v["v(tp)"] - v["v(tx)"])
        # What all isolators keep: from the input of the first to the load's own node and the wires between.
        first = v["v(n0)"] - v["v(back)"]
        kept = first * amps - (load + c["device_V"]) * amps - c["isolators"] * c["wire_ohm"] * amps * amps
        row = dict(c, supply_V=v["v(sup)"], nest_V=first, load_V=load, current_mA=amps * 1000,
                   cable_mW=cable * amps * 1000, transmitter_mW=0 if card else (v["v(tp)"] - v["v(tx)"]) * amps * 1000,
                   isolators_mW=kept * 1000 if c["isolators"] else 0, load_mW=(load + c["device_V"]) * amps * 1000)
        if header is None:
            header = list(row)
            print(",".join(header))
        print(",".join(str(row[h]) for h in header))


main()
