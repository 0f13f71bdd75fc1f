"""Writes the spoiled records of this folder, one fault a file. All data are invented.

usage: make.py   (in this folder; README.md says what the reader must answer)
"""
import datetime
import os
import zipfile

HEAD = """Plant,Kestrel Fen Water Works (invented)
Tag,{tag}
Serial,KF-0417
Date,2026-03-14
Technician,T-07
Input range,4 to 20 mA
Output range,4 to 20 mA
Transfer,linear
Tolerance,0.1 % of span
Supply,24.0 V
Load,250 ohm
Ambient,23.1 °C
Phase,as found
Standard,S-01; certificate C-2211; certified 2025-12-02; due 2026-12-01; U 0.003 mA; k 2

"""
COLS = "Point (%),Direction,Applied (mA),Indicated (mA)\n"
UP = [(0, "4.000", "4.003"), (25, "8.001", "8.006"), (50, "12.000", "12.008"), (75, "16.002", "16.011"),
      (100, "20.000", "20.012")]
DOWN = [(75, "15.999", "16.010"), (50, "12.001", "12.011"), (25, "8.000", "8.008"), (0, "4.001", "4.004")]
ROWS = [(p, "up", a, o) for p, a, o in UP] + [(p, "down", a, o) for p, a, o in DOWN]


def table(rows=ROWS, cols=COLS):
    return cols + "".join(",".join(str(c) for c in r) + "\n" for r in rows)


def record(rows=ROWS, cols=COLS, tag="LT-201", **swap):
    text = HEAD.format(tag=tag)
    for old, new in swap.pop("swap", []):
        assert old in text, old
        text = text.replace(old, new)
    return text + table(rows, cols)


def with_out(change):
    """The rows with the indication changed by a function of row index and text."""
    return [(p, d, a, change(i, o)) for i, (p, d, a, o) in enumerate(ROWS)]


def cell(row, column, text):
    rows = [list(r) for r in ROWS]
    rows[row][column] = text
    return rows


def put(name, text, encoding="utf-8"):
    with open(name, "wb") as f:
        f.write(text if isinstance(text, bytes) else text.encode(encoding))


def num(x, places):
    return f"{x:.{places}f}"


def main():
    out = [float(o) for *_, o in ROWS]
    put("columns-swapped.csv", record([(p, d, o, num(4 + 16 * p / 100, 3)) for p, d, a, o in ROWS]))
    put("columns-swapped-units.csv", record(
        [(p, d, o, num(8 * p / 100, 4)) for p, d, a, o in ROWS], "Point (%),Direction,Applied (mA),Indicated (m)\n",
        swap=[("Input range,4 to 20 mA", "Input range,0 to 8 m")]))
    put("columns-swapped-ranges.csv", record([(p, d, num(5 * (float(o) - 4) / 4, 3), a) for p, d, a, o in ROWS],
                                             swap=[("Output range,4 to 20 mA", "Output range,0 to 20 mA")]))
    put("columns-swapped-root.csv", record([(p, d, num(4 + 1.6 * p ** 0.5 + float(o) - float(a), 3), a)
                                            for p, d, a, o in ROWS],
                                           swap=[("Transfer,linear", "Transfer,square root")]))
    put("volts-as-milliamps.csv", record(with_out(lambda i, o: num(out[i] / 4, 4))))
    put("amps-as-milliamps.csv", record(with_out(lambda i, o: num(out[i] / 1000, 6))))
    put("percent-as-milliamps.csv", record(with_out(lambda i, o: num((out[i] - 4) / 0.16, 2))))
    put("millivolts-10-ohm-as-milliamps.csv", record(with_out(lambda i, o: num(out[i] * 10, 2))))
    put("millivolts-100-ohm-as-milliamps.csv", record(with_out(lambda i, o: num(out[i] * 100, 1))))
    put("missing-point.csv", record([r for i, r in enumerate(ROWS) if i != 6]))
    put("missing-down-leg.csv", record(ROWS[:5]))
    put("duplicate-point-differs.csv", record(ROWS[:3] + [(50, "up", "12.001", "12.007")] + ROWS[3:]))
    put("duplicate-point-copied.csv", record(ROWS[:3] + [ROWS[2]] + ROWS[3:]))
    put("direction-missing.csv", record([(p, a, o) for p, d, a, o in ROWS],
                                        "Point (%),Applied (mA),Indicated (mA)\n"))
    put("direction-wrong.csv", record([(p, "down" if d == "up" else "up", a, o) for p, d, a, o in ROWS]))
    put("direction-word.csv", record(cell(3, 1, "sideways")))
    put("as-left-copied.csv", record() + "Phase,as left\nAdjusted,yes\n" + table())
    put("errors-all-zero.csv", record([(p, d, a, a) for p, d, a, o in ROWS]))
    put("last-digits-0-5.csv", record(with_out(lambda i, o: num(round(out[i] / 0.005) * 0.005, 3))))
    text = record().replace(",", ";").replace(".", ",")
    put("decimal-comma.csv", text)
    put("decimal-mixed.csv", text.replace("12,008", "12.008"))
    put("decimal-comma-in-comma-file.csv", record(cell(2, 3, "12,008")))
    thousands = [(p, d, f"{int(float(a) * 1000):,}", f"{int(float(o) * 1000):,}") for p, d, a, o in ROWS]
    put("comma-thousands.csv", record([], "", swap=[
        ("Tolerance,0.1 % of span\n", ""), ("24.0 V", "24 V"), ("23.1 °C", "23 °C"), ("; U 0.003 mA; k 2", "")]
        ).replace(",", ";") + "Point (%);Direction;Applied (uA);Indicated (uA)\n"
        + "".join(";".join(map(str, r)) + "\n" for r in thousands))
    put("unit-in-cells.csv", record([(p, d, a + " mA", o + " mA") for p, d, a, o in ROWS],
                                    "Point (%),Direction,Applied,Indicated\n"))
    put("unit-missing.csv", record(cols="Point (%),Direction,Applied (mA),Indicated\n"))
    put("unit-unknown.csv", record(cols="Point (%),Direction,Applied (mA),Indicated (mAmp)\n"))
    put("unit-volts-without-resistor.csv", record(cols="Point (%),Direction,Applied (mA),Indicated (V)\n"))
    put("byte-order-mark.csv", b"\xef\xbb\xbf" + record().encode())
    put("utf-16.csv", record(), "utf-16")
    put("latin-1.csv", record(), "latin-1")
    put("no-break-space.csv", record(cell(1, 3, "8.006\u00a0mA")))
    put("unicode-minus.csv", record(
        [(p, d, num(-1 + 2 * p / 100, 4).replace("-", "\u2212"), o) for p, d, a, o in ROWS],
        "Point (%),Direction,Applied (bar),Indicated (mA)\n",
        swap=[("Input range,4 to 20 mA", "Input range,-1 to 1 bar")]))
    put("range-turned-date.csv", record(swap=[("Output range,4 to 20 mA", "Output range,20-Apr")]))
    put("date-for-number.csv", record(cell(2, 3, "08-Dec")))
    put("tag-turned-number.csv", record(tag="1E+05"))
    put("date-order.csv", record(swap=[("2026-03-14", "03/04/2026")]))
    put("time-without-zone.csv", record(swap=[("2026-03-14", "2026-03-14 10:30")]))
    put("time-in-clock-change.csv", record(
        swap=[("Date,2026-03-14", "Zone,Europe/London\nDate,2026-03-29 01:30")]))
    put("hourly-in-clock-change.csv", record(
        [r + (f"2026-10-25 0{i}:00",) for i, r in enumerate(ROWS)], COLS.strip() + ",Time\n",
        swap=[("Date,2026-03-14", "Zone,Europe/London\nDate,2026-10-25")]))
    put("as-left-not-adjusted.csv", record(swap=[("Phase,as found", "Phase,as found = as left")]))
    put("negative-zero.csv", record(
        [(p, d, num(8 * p / 100, 3) if p else "-0.00", o) for p, d, a, o in ROWS],
        "Point (%),Direction,Applied (m),Indicated (mA)\n",
        swap=[("Input range,4 to 20 mA", "Input range,0 to 8 m")]))
    put("value-missing.csv", record(cell(3, 3, "n/a")))
    put("value-censored.csv", record(cell(4, 3, ">21")))
    put("value-overload.csv", record(cell(4, 3, "OL")))
    put("over-range-clamp.csv", record([(-5, "up", "3.200", "3.801")] + ROWS[:5] + [(110, "up", "21.600", "20.501"),
                                                                                 (105, "down", "20.800", "20.500")]
                                       + ROWS[5:]))
    put("supply-plateau.csv", record(
        [(p, d, a, num(min(float(o), 14.5), 3)) for p, d, a, o in ROWS[:4]] + [(90, "up", "18.400", "14.501")]
        + [(p, d, a, num(min(float(o), 14.5), 3)) for p, d, a, o in ROWS[4:]]))
    put("standard-overdue.csv", record(swap=[("due 2026-12-01", "due 2026-02-28")]))
    put("standard-not-yet-certified.csv", record(swap=[("certified 2025-12-02", "certified 2026-04-02")]))
    put("LT-202.csv", record(tag="LT-201"))
    put("ambient-missing.csv", record(swap=[("Ambient,23.1 °C\n", "")]))
    put("ambient-outside.csv", record(swap=[("Ambient,23.1 °C", "Ambient limits,18 to 28 °C\nAmbient,31.5 °C")]))
    put("tolerance-basis-missing.csv", record(swap=[("0.1 % of span", "0.1 %")]))
    put("phase-missing.csv", record(swap=[("Phase,as found\n", "")]))
    put("range-missing.csv", record(swap=[("Output range,4 to 20 mA\n", "")]))
    put("column-missing.csv", record([(p, d, o) for p, d, a, o in ROWS], "Point (%),Direction,Indicated (mA)\n"))
    put("column-twice.csv", record([r + ("4.0",) for r in ROWS], COLS.strip() + ",Output (mA)\n"))
    put("text-in-number.csv", record(cell(3, 3, "16.O11")))
    put("readings-swapped.csv", record(with_out(lambda i, o: {1: "12.008", 2: "8.006"}.get(i, o))))
    put("row-too-short.csv", record().replace("75,up,16.002,16.011", "75,up,16.002"))
    put("number-too-large.csv", record(cell(3, 3, "1e99")))
    put("quote-not-closed.csv", record(cell(3, 3, '"16.011')))
    put("header-missing.csv", record(cols=""))
    put("empty.csv", "")
    put("no-reading.csv", record([]))
    put("not-a-text.csv", bytes(range(256)) * 4)
    put("header-unreadable.csv", record(swap=[("24.0 V", "about 24")]))
    put("far-off.csv", record(with_out(lambda i, o: num(24 - out[i], 3))))
    put("html-in-a-cell.csv", record(swap=[("Technician,T-07", "Technician,<script>alert(1)</script>\n"
                                            "Location,<img src=x onerror=alert(1)>")]))
    history()
    workbook("workbook-auto-date.xlsx", cell(2, 3, datetime.date(2026, 4, 20)))
    workbook("workbook-clean.xlsx", ROWS)


def history():
    """Three channels in two years, shifted by one in the second; one tag under two serial numbers,
    and one whose serial number lost its leading zeros."""
    os.makedirs("history", exist_ok=True)
    zero = [0.004, -0.006, 0.011]
    for year in (2025, 2026):
        for c in range(3):
            error = zero[c if year == 2025 else (c + 1) % 3]
            rows = [(p, "up", a, num(float(a) + error + 1e-5 * p, 3)) for p, a, _ in UP]
            rows += [(p, "down", a, num(float(a) + error + 0.001, 3)) for p, a, _ in DOWN]
            put(f"history/MK-8{c + 1}-{year}.csv", record(rows, tag=f"MK-8{c + 1}", swap=[
                ("2026-03-14", f"{year}-12-14"), ("due 2026-12-01", f"due {year + 1}-12-01"),
                ("certified 2025-12-02", f"certified {year}-12-02"), ("KF-0417", f"KF-081{c + 1}")]))
    put("history/LT-301-2025.csv", record(tag="LT-301", swap=[
        ("2026-03-14", "2025-12-14"), ("KF-0417", "KF-0590")]))
    put("history/LT-301-2026.csv", record(tag="LT-301"))
    put("history/LT-302-2025.csv", record(tag="LT-302", swap=[("2026-03-14", "2025-12-14"), ("KF-0417", "00417")]))
    put("history/LT-302-2026.csv", record(tag="LT-302", swap=[("KF-0417", "417")]))


def workbook(name, rows):
    """The least workbook that holds the record: numbers with the format 0.000, dates as a spreadsheet has them."""
    def xml_cell(ref, value):
        if isinstance(value, datetime.date):
            days = (value - datetime.date(1899, 12, 30)).days
            return f'<c r="{ref}" s="2"><v>{days}</v></c>'
        try:
            return f'<c r="{ref}" s="{1 if "." in str(value) else 0}"><v>{float(value):.17g}</v></c>'
        except ValueError:
            return f'<c r="{ref}" t="inlineStr"><is><t>{value}</t></is></c>'
    lines = [l.split(",") for l in HEAD.format(tag="LT-201").strip().split("\n")] + [COLS.strip().split(",")] + [
        list(r) for r in rows]
    sheet = ""
    for r, line in enumerate(lines, 1):
        sheet += f'<row r="{r}">' + "".join(xml_cell("ABCDEFGH"[c] + str(r), v) for c, v in enumerate(line)) + "</row>"
    ns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
    rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    parts = {
        "[Content_Types].xml": '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Default Extension="xml" ContentType="application/xml"/>'
        '<Override PartName="/xl/workbook.xml" ContentType='
        '"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
        '<Override PartName="/xl/worksheets/sheet1.xml" ContentType='
        '"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>'
        '<Override PartName="/xl/styles.xml" ContentType='
        '"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>',
        "_rels/.rels": '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="r1" Type="{rel}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<workbook {ns} xmlns:r="{rel}"><sheets><sheet name="Bench" sheetId="1" r:id="r1"/>'
        "</sheets></workbook>",
        "xl/_rels/workbook.xml.rels":
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="r1" Type="{rel}/worksheet" Target="worksheets/sheet1.xml"/>'
        f'<Relationship Id="r2" Type="{rel}/styles" Target="styles.xml"/></Relationships>',
        "xl/styles.xml": f'<styleSheet {ns}><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts>'
        '<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>'
        '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0"/>'
        '<xf numFmtId="164" applyNumberFormat="1"/><xf numFmtId="16" applyNumberFormat="1"/></cellXfs></styleSheet>',
        "xl/worksheets/sheet1.xml": f"<worksheet {ns}><sheetData>{sheet}</sheetData></worksheet>",
    }
    with zipfile.ZipFile(name, "w", zipfile.ZIP_DEFLATED) as z:
        for path, text in parts.items():
            z.writestr(zipfile.ZipInfo(path, (2026, 1, 1, 0, 0, 0)), '<?xml version="1.0" encoding="UTF-8"?>\n' + text)


if __name__ == "__main__":
    main()
