"""A long session through Jupyter's own client: what ten thousand cells leave behind.

    python3 ten-thousand-cells.py [--cells N] [--kernel NAME]

Needs jupyter_client, and our kernel installed where Jupyter looks (JUPYTER_PATH). The cells are those of a person
at work, who runs most of them again and again: values, statements, printing, displays, definitions anew, errors at
compile time and at run time, and a new variable in one of a hundred. Fails if the heap after collection has grown by
10 KB a cell or more, or if a one-line cell takes twice as long at the end as after the first hundred.
"""
import argparse
import statistics
import sys
import time

from jupyter_client.manager import KernelManager

WAIT = 120
FIRST = 100
KB_A_CELL = 10
SLOWER = 2
HEAP = "for (int k = 0; k < 3; k++) System.gc();\nRuntime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()"
KINDS = [
    ("{i} * 0.5 + total", "ok"),
    ("total = total * 0.5 + {i};", "ok"),
    ("double reading = 4 + 16 * {i} / 10_000.0;\nreading", "ok"),
    ("var points = List.of(4.0, 8.0, 12.0, 16.0, {i}.0);\npoints.stream().mapToDouble(p -> p * p).sum()", "ok"),
    ('for (int k = 0; k < 20; k++) {{ System.out.println("line " + k + " of {i}"); }}', "ok"),
    ('display("shown {i}", "place");', "ok"),
    ("double scaled(double x) {{ return x * {i}; }}\nscaled(2)", "ok"),
    ("record Point(double x, double y) {{ double r() {{ return Math.hypot(x, y); }} }}\nnew Point(3, {i}).r()", "ok"),
    ("List.of(1, 2).get({i} + 5)", "error"),
    ("int wrong = noSuchName{i};", "error"),
]


class Session:
    """A kernel and its client."""

    def __init__(self, name):
        self.manager = KernelManager(kernel_name=name)
        self.manager.start_kernel()
        self.client = self.manager.blocking_client()
        self.client.start_channels()
        self.client.wait_for_ready(timeout=WAIT)

    def run(self, code, status="ok"):
        """Runs a cell, takes all that is published for it; seconds to its reply and the result's text."""
        began = time.perf_counter()
        request = self.client.execute(code, stop_on_error=False)
        while True:
            reply = self.client.get_shell_msg(timeout=WAIT)
            if reply["parent_header"].get("msg_id") == request:
                break
        seconds = time.perf_counter() - began
        assert reply["content"]["status"] == status, (code, reply["content"])
        shown = None
        while True:
            message = self.client.get_iopub_msg(timeout=WAIT)
            if message["parent_header"].get("msg_id") != request:
                continue
            if message["msg_type"] == "execute_result":
                shown = message["content"]["data"]["text/plain"]
            if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                return seconds, shown

    def cells(self, numbers):
        for i in numbers:
            code, status = KINDS[i % len(KINDS)]
            self.run(code.format(i=i), status)
            if i % 100 == 0:
                self.run(f"double kept{i} = {i};")

    def probe(self):
        """Milliseconds of a one-line cell, median of 31; heap after collection in KB; resident memory in MB."""
        milliseconds = 1e3 * statistics.median(self.run("1 + 1")[0] for _ in range(31))
        heap = int(self.run(HEAP)[1]) / 1024
        with open(f"/proc/{self.manager.provisioner.pid}/status", encoding="ascii") as status:
            resident = next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmRSS"))
        return milliseconds, heap, resident

    def close(self):
        self.client.stop_channels()
        self.manager.shutdown_kernel(now=True)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--cells", type=int, default=10_000)
    parser.add_argument("--kernel", default="spanwright")
    arguments = parser.parse_args()
    session = Session(arguments.kernel)
    try:
        session.run("double total = 1;")
        print(f"{'cells':>8}{'one line, ms':>15}{'heap, KB':>12}{'resident, MB':>15}", flush=True)
        done, probes = 0, []
        for upto in sorted({FIRST, *(arguments.cells * k // 5 for k in range(1, 6))}):
            session.cells(range(done, upto))
            done = upto
            probes.append(session.probe())
            print("{:8}{:15.1f}{:12.0f}{:15.0f}".format(upto, *probes[-1]), flush=True)
    finally:
        session.close()
    growth = (probes[-1][1] - probes[0][1]) / (arguments.cells - FIRST)
    slower = probes[-1][0] / probes[0][0]
    print(f"heap after collection: {growth:.2f} KB a cell; one-line cell: {slower:.2f} times that after {FIRST}")
    return 0 if growth < KB_A_CELL and slower < SLOWER else 1


if __name__ == "__main__":
    sys.exit(main())
