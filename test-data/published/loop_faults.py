# Makes loop_faults.csv. Run: /usr/bin/python3 loop_faults.py > loop_faults.csv (needs ngspice 39, from Debian)
# 80 random loops, each with one fault wired into the netlist (a short of 1 uohm, an opening of 1 Gohm, swapped terminals),
# solved by a general nodal solver: supply, cable, transmitter, an input-loop-powered isolator that feeds a card and an
# output-loop-powered isolator with a far receiver on a supply of its own. Devices are behavioural sources as in
# loop_circuits.py; none of them takes a negative current. Currents are good to 1 uA: a limit of 1e3 S per device.
import random
import subprocess
import tempfile

random.seed(23)
FAULTS = ("output shorted", "output open", "input open", "transmitter shorted", "end output shorted", "supply at minimum",
          "card reversed", "common broken")


def draw(low, high, digits=3):
    return round(random.uniform(low, high), digits)


def circuit(number):
    c = {"id": number, "fault": FAULTS[number % len(FAULTS)], "asked_mA": draw(4, 20), "tolerance_percent": draw(1, 20),
         "r1_ohm": draw(0.5, 30), "cable_ohm": draw(5, 80), "lift_V": draw(8, 13), "drop_V": draw(1, 4), "drop_ohm": draw(5, 60),
         "clamp_V": 0, "card_ohm": draw(50, 300), "end_in_V": draw(0.5, 2), "end_V": draw(6, 9), "end_supply_V": draw(18, 26),
         "far_ohm": draw(300, 500)}
    # The sound loop must carry what is asked; the clamp lies above what the load takes.
    needed = c["lift_V"] + c["drop_V"] + c["end_in_V"] + c["asked_mA"] / 1000 * (
        c["r1_ohm"] + c["cable_ohm"] + c["drop_ohm"] + c["card_ohm"])
    c["e1_V"] = round(needed + draw(0.2, 3), 3)
    c["clamp_V"] = round(c["end_in_V"] + c["asked_mA"] / 1000 * c["card_ohm"] + draw(0.5, 6), 3)
    return c


def netlist(c, S, leak):
    f, asked, half = c["fault"], c["asked_mA"] / 1000, c["cable_ohm"] / 2
    e1 = c["e1_V"] * (1 - c["tolerance_percent"] / 100) if f == "supply at minimum" else c["e1_V"]
    n = ["* loop with a fault", f"V1 a1 m {e1!r}", f"RG m 0 {'1e9' if f == 'common broken' else '1e-9'}", f"R1 a1 sup {c['r1_ohm']}",
         f"RC1 sup tp {half!r}"]
    if f == "transmitter shorted":
        n.append("RT tp tn 1e-6")
    else:
        n += [f"BT tp tn I=max(0,min({asked!r},{S}*(V(tp,tn)-{c['lift_V']})))", f"RT tp tn {leak}"]
    n += [f"RC2 tn i0 {half!r}", f"RIN i0 i1 {'1e9' if f == 'input open' else '1e-6'}", "VS1 i1 x1 0", f"RI1 x1 y1 {c['drop_ohm']}",
          f"BI1 y1 0 V={c['drop_V']}+V(o)", "F1 0 o VS1 1", f"BC o 0 I=max(0,{S}*(V(o)-{c['clamp_V']}))", f"RO o 0 {leak}"]
    if f == "output shorted":
        n.append("RSH o 0 1e-6")
    n += [f"RW o w {'1e9' if f == 'output open' else '1e-6'}"]
    # The card reads from its + to its - terminal, whichever way it is wired.
    n += ["VCARD w c1 0", f"RCARD c1 e {c['card_ohm']}", "VE e e1 0", f"BD e1 0 I=max(0,{S}*(V(e1)-{c['end_in_V']}))", f"RD e1 0 {leak}",
          f"V3 s3 0 {c['end_supply_V']}"]
    if f == "end output shorted":
        n.append("RQ s3 q 1e-6")
    else:
        n.append(f"BQ s3 q I=max(0,min(I(VE),{S}*(V(s3,q)-{c['end_V']})))")
    n += ["VFAR q r 0", f"RFAR r 0 {c['far_ohm']}", ".options reltol=1e-8 abstol=1e-12 vntol=1e-11 itl1=5000", ".control",
          "set numdgt=15", "op", "print i(vs1) i(vcard) i(vfar)", ".endc", ".end"]
    return "\n".join(n) + "\n"


def solve(c):
    for S, leak in (("1e3", "1e9"), ("1e3", "1e8"), ("300", "1e8"), ("100", "1e8"), ("100", "1e7")):
        with tempfile.NamedTemporaryFile("w", suffix=".cir") as f:
            f.write(netlist(c, S, leak))
            f.flush()
            out = subprocess.run(["ngspice", "-b", f.name], capture_output=True, text=True)
        v = {line.split(" = ")[0]: float(line.split(" = ")[1]) * 1000 for line in out.stdout.splitlines()
             if line.startswith("i(") and " = " in line}
        if "i(vs1)" in v:
            return dict(v, steep=S, leak=leak)
    raise SystemExit(f"circuit {c['id']} not solved:\n{netlist(c, '1e3', '1e9')}\n{out.stdout}{out.stderr}")


def main():
    print("# Source: loop_faults.py with ngspice 39; currents from + to - of isolator input, card and far receiver")
    header = None
    for number in range(80):
        c = circuit(number)
        v = solve(c)
        sign = -1 if c["fault"] == "card reversed" else 1
        row = dict(c, device_S=v["steep"], leak_ohm=v["leak"], primary_mA=v["i(vs1)"], card_mA=sign * v["i(vcard)"], far_mA=v["i(vfar)"])
        if header is None:
            header = list(row)
            print(",".join(header))
        print(",".join(str(row[h]) for h in header))


main()
