"""Our kernel and ipykernel in turn, through the same client, in one run on one machine.

    python3 kernel-beside-ipykernel.py [--repeats N] [--kernel NAME] [--peer NAME]

Needs jupyter_client and ipykernel, and our kernel installed where Jupyter looks (JUPYTER_PATH). Prints the medians
of both and their ratio; a ratio below 1 means that ours is faster. Only ratios of one run may be compared: the
machine matters more than the kernel. Every repeat starts both kernels afresh; within it, first ours and then the
peer's in odd repeats, the other way round in even ones.
"""
import argparse
import statistics
import time
from queue import Empty

from jupyter_client.manager import KernelManager

WAIT = 120
CELLS = {
    "spanwright": {
        "one": "1 + {i}",
        "twenty": "\n".join(f"total = total * 0.5 + {k};" for k in range(20)),
        "before": "double total = 1;",
        "print": 'for (int i = 0; i < 10000; i++) {\n    System.out.println("line " + i);\n}',
        "loop": "while (true) { total++; }",
        "kept": "total > 1",
        "complete": ("java.util.List.of(1).str", 24),
    },
    "python": {
        "one": "1 + {i}",
        "twenty": "\n".join(f"total = total * 0.5 + {k}" for k in range(20)),
        "before": "total = 1.0",
        "print": 'for i in range(10000):\n    print("line", i)',
        "loop": "while True: total += 1",
        "kept": "total > 1",
        "complete": ("[1].app", 7),
    },
}


class Session:
    """A kernel and its client."""

    def __init__(self, name, cells):
        self.cells = cells
        self.manager = KernelManager(kernel_name=name)
        began = time.perf_counter()
        self.manager.start_kernel()
        self.connect()
        self.run("1 + 1")
        self.launched = time.perf_counter() - began

    def connect(self):
        self.client = self.manager.blocking_client()
        self.client.start_channels()

    def reply(self, request):
        """The reply to a request; replies to others are passed over."""
        while True:
            reply = self.client.get_shell_msg(timeout=WAIT)
            if reply["parent_header"].get("msg_id") == request:
                return reply

    def until_idle(self, request):
        """All that is published for a request, up to its idle."""
        published = []
        while True:
            message = self.client.get_iopub_msg(timeout=WAIT)
            if message["parent_header"].get("msg_id") == request:
                published.append(message)
                if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                    return published

    def run(self, code):
        """Runs a cell and waits for its reply; returns the seconds that took."""
        began = time.perf_counter()
        request = self.client.execute(code)
        reply = self.reply(request)
        seconds = time.perf_counter() - began
        assert reply["content"]["status"] == "ok", reply["content"]
        return seconds

    def quiet(self):
        while True:
            try:
                self.client.get_iopub_msg(timeout=0.3)
            except Empty:
                return

    def printed(self):
        """Seconds until the last of 10 000 lines has come and the kernel is idle."""
        self.quiet()
        began = time.perf_counter()
        request = self.client.execute(self.cells["print"])
        published = self.until_idle(request)
        seconds = time.perf_counter() - began
        text = "".join(m["content"]["text"] for m in published if m["msg_type"] == "stream")
        assert text.count("\n") == 10000 and text.rstrip().endswith("9999"), len(text)
        self.reply(request)
        return seconds

    def interrupted(self):
        """Seconds from the interrupt of an endless loop to its reply; the session must be alive after it."""
        request = self.client.execute(self.cells["loop"])
        time.sleep(0.5)
        began = time.perf_counter()
        self.manager.interrupt_kernel()
        reply = self.reply(request)
        seconds = time.perf_counter() - began
        assert reply["content"]["status"] == "error", reply["content"]
        self.quiet()
        self.run(self.cells["kept"])
        return seconds

    def completed(self):
        code, cursor = self.cells["complete"]
        began = time.perf_counter()
        reply = self.reply(self.client.complete(code, cursor))
        seconds = time.perf_counter() - began
        assert reply["content"]["matches"], reply["content"]
        return seconds

    def restarted(self):
        self.client.stop_channels()
        began = time.perf_counter()
        self.manager.restart_kernel(now=False)
        self.connect()
        self.run("1 + 1")
        return time.perf_counter() - began

    def resident(self):
        """Resident memory in MB (Linux)."""
        with open(f"/proc/{self.manager.provisioner.pid}/status", encoding="ascii") as status:
            return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmRSS"))

    def close(self):
        self.client.stop_channels()
        self.manager.shutdown_kernel(now=True)


def ready(name):
    """Seconds from launch to the first result as notebook clients take it: they wait for readiness first."""
    manager = KernelManager(kernel_name=name)
    began = time.perf_counter()
    manager.start_kernel()
    client = manager.blocking_client()
    client.start_channels()
    client.wait_for_ready(timeout=WAIT)
    client.execute_interactive("1 + 1", output_hook=lambda message: None, timeout=WAIT)
    seconds = time.perf_counter() - began
    client.stop_channels()
    manager.shutdown_kernel(now=True)
    return seconds


def measure(name, cells):
    rows = {"launch to first result, client waits for readiness, s": ready(name)}
    session = Session(name, cells)
    try:
        rows["launch to first result, s"] = session.launched
        session.run(cells["before"])
        for i in range(30):
            session.run(cells["one"].format(i=i))
        rows["one-line cell, warm, ms"] = 1e3 * statistics.median(
            session.run(cells["one"].format(i=i)) for i in range(30))
        for _ in range(10):
            session.run(cells["twenty"])
        rows["20-statement cell, warm, ms"] = 1e3 * statistics.median(
            session.run(cells["twenty"]) for _ in range(15))
        rows["10 000 printed lines, ms"] = 1e3 * statistics.median(session.printed() for _ in range(3))
        rows["completion, ms"] = 1e3 * statistics.median(session.completed() for _ in range(9))
        rows["interrupt of an endless loop, ms"] = 1e3 * statistics.median(
            session.interrupted() for _ in range(3))
        rows["resident memory after all this, MB"] = session.resident()
        rows["restart to first result, s"] = session.restarted()
    finally:
        session.close()
    return rows


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--repeats", type=int, default=7)
    parser.add_argument("--kernel", default="spanwright")
    parser.add_argument("--peer", default="python3")
    arguments = parser.parse_args()
    pairs = [(arguments.kernel, CELLS["spanwright"]), (arguments.peer, CELLS["python"])]
    found = {name: {} for name, _ in pairs}
    for repeat in range(arguments.repeats):
        for name, cells in pairs if repeat % 2 == 0 else reversed(pairs):
            for row, value in measure(name, cells).items():
                found[name].setdefault(row, []).append(value)
    print(f"medians of {arguments.repeats}, lowest and highest in brackets")
    print(f"{'':56}{arguments.kernel:>24}{arguments.peer:>24}{'ratio':>8}")
    for row in found[arguments.kernel]:
        ours, peer = (found[name][row] for name, _ in pairs)
        print(f"{row:56}{text(ours):>24}{text(peer):>24}"
              f"{statistics.median(ours) / statistics.median(peer):8.2f}")


def text(values):
    return f"{statistics.median(values):.3g} [{min(values):.3g}, {max(values):.3g}]"


if __name__ == "__main__":
    main()
