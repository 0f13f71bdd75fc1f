"""Every row of the messaging protocol that the kernel answers, asked by Jupyter's own Python client.

    python3 protocol_rows.py [-v] [name of a test ...]

Needs jupyter_client and the installed kernel "spanwright" where Jupyter looks (JUPYTER_PATH). What is expected is
what "Messaging in Jupyter", the documentation of the protocol, says; text is our own where a test quotes a sentence.
"""
import os
import re
import signal
import subprocess
import sys
import tempfile
import textwrap
import time
import unittest
from queue import Empty

from jupyter_client.blocking import BlockingKernelClient
from jupyter_client.manager import KernelManager

WAIT = 60
STATE = tempfile.TemporaryDirectory()
ENVIRONMENT = {**os.environ, "SPANWRIGHT_STATE": STATE.name}


class Exchange:
    """What came of one request: its reply and what was published under its header, in order."""

    def __init__(self, reply, published):
        self.reply = reply
        self.content = reply["content"]
        self.published = published

    def types(self):
        return [m["msg_type"] for m in self.published]

    def contents(self, message_type):
        return [m["content"] for m in self.published if m["msg_type"] == message_type]

    def text(self, name="stdout"):
        return "".join(c["text"] for c in self.contents("stream") if c["name"] == name)

    def shown(self):
        return [c["data"]["text/plain"] for c in self.contents("execute_result")]


class Asker:
    """A client and the ways to ask with it."""

    def __init__(self, client):
        self.client = client
        client.start_channels()

    def send(self, message_type, content=None, channel="shell"):
        message = self.client.session.msg(message_type, content or {})
        getattr(self.client, f"{channel}_channel").send(message)
        return message["header"]["msg_id"]

    def reply(self, request, channel="shell"):
        receive = self.client.get_shell_msg if channel == "shell" else self.client.get_control_msg
        while True:
            message = receive(timeout=WAIT)
            if message["parent_header"].get("msg_id") == request:
                return message

    def published(self, request):
        """Up to the idle of that request; what belongs to others is passed over."""
        found = []
        while True:
            message = self.client.get_iopub_msg(timeout=WAIT)
            if message["parent_header"].get("msg_id") == request:
                found.append(message)
                if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                    return found

    def until(self, request, message_type):
        """The first such message that is published for the request."""
        while True:
            message = self.client.get_iopub_msg(timeout=WAIT)
            if message["msg_type"] == message_type and message["parent_header"].get("msg_id") == request:
                return message

    def ask(self, message_type, content=None, channel="shell"):
        request = self.send(message_type, content, channel)
        return Exchange(self.reply(request, channel), self.published(request))

    def execute(self, code, **how):
        request = self.client.execute(code, **how)
        return Exchange(self.reply(request), self.published(request))

    def start(self, code, **how):
        """Sends a cell that prints "begun" and waits until it has."""
        request = self.client.execute('System.out.println("begun");\n' + code, **how)
        assert "begun" in self.until(request, "stream")["content"]["text"]
        return request

    def silence(self, seconds=0.4):
        """Whatever is still published within that time."""
        late = []
        while True:
            try:
                late.append(self.client.get_iopub_msg(timeout=seconds))
            except Empty:
                return late

    def close(self):
        self.client.stop_channels()


class Kernel:
    """A kernel process of its own."""

    def __init__(self):
        self.manager = KernelManager(kernel_name="spanwright")
        self.manager.start_kernel(env=ENVIRONMENT)
        self.askers = []

    def asker(self):
        asker = Asker(self.manager.blocking_client())
        asker.client.wait_for_ready(timeout=WAIT)
        self.askers.append(asker)
        return asker

    @property
    def pid(self):
        return self.manager.provisioner.pid

    def close(self):
        for asker in self.askers:
            asker.close()
        self.manager.shutdown_kernel(now=True)


def gone(pid, seconds):
    """Whether the process ends within that time; one that nobody has waited for yet has ended too."""
    deadline = time.monotonic() + seconds
    while time.monotonic() < deadline:
        try:
            with open(f"/proc/{pid}/stat", encoding="ascii") as stat:
                if stat.read().rsplit(")", 1)[1].split()[0] == "Z":
                    return True
        except FileNotFoundError:
            return True
        time.sleep(0.05)
    return False


class OneKernel(unittest.TestCase):
    """Rows that leave the kernel as it was."""

    @classmethod
    def setUpClass(cls):
        cls.kernel = Kernel()
        cls.addClassCleanup(cls.kernel.close)
        cls.client = cls.kernel.asker()

    def setUp(self):
        self.client.silence(0.05)

    def ok(self, exchange):
        self.assertEqual(exchange.content["status"], "ok", exchange.content)
        return exchange

    def test_kernel_info_on_shell_and_control(self):
        for channel in ("shell", "control"):
            with self.subTest(channel):
                told = self.ok(self.client.ask("kernel_info_request", channel=channel)).content
                self.assertEqual(told["protocol_version"], "5.5")
                self.assertEqual(told["implementation"], "spanwright")
                self.assertEqual(told["language_info"]["name"], "java")
                self.assertEqual(told["language_info"]["file_extension"], ".java")
                self.assertFalse(told["debugger"])
                self.assertEqual(told["supported_features"], [])

    def test_every_request_has_one_busy_first_and_one_idle_last(self):
        requests = [("kernel_info_request", {}), ("complete_request", {"code": "Math.", "cursor_pos": 5}),
                    ("inspect_request", {"code": "Math.max", "cursor_pos": 8, "detail_level": 0}),
                    ("is_complete_request", {"code": "1"}), ("comm_info_request", {}),
                    ("history_request", {"hist_access_type": "tail", "n": 1, "output": False, "raw": True}),
                    ("execute_request", {"code": "1", "silent": False})]
        for message_type, content in requests:
            with self.subTest(message_type):
                exchange = self.client.ask(message_type, content)
                states = [c["execution_state"] for c in exchange.contents("status")]
                self.assertEqual(states, ["busy", "idle"])
                self.assertEqual((exchange.types()[0], exchange.types()[-1]), ("status", "status"))

    def test_connect_request_tells_the_ports(self):
        told = self.client.ask("connect_request").content
        for port in ("shell_port", "iopub_port", "stdin_port", "control_port", "hb_port"):
            self.assertEqual(told[port], getattr(self.kernel.manager, port))

    def test_the_heart_beats(self):
        self.client.client.hb_channel.unpause()
        time.sleep(2 * self.client.client.hb_channel.time_to_dead)
        self.assertTrue(self.client.client.hb_channel.is_beating())

    def test_a_subscriber_is_welcomed(self):
        client = BlockingKernelClient()
        client.load_connection_info(self.kernel.manager.get_connection_info())
        client.start_channels(shell=False, stdin=False, hb=False, control=False)
        self.addCleanup(client.stop_channels)
        first = client.get_iopub_msg(timeout=WAIT)
        self.assertEqual(first["msg_type"], "iopub_welcome")
        self.assertEqual(first["content"], {"subscription": ""})
        self.assertEqual(first["parent_header"], {})

    def test_a_result_is_numbered_as_its_cell(self):
        exchange = self.ok(self.client.execute("6 * 7"))
        self.assertEqual(exchange.types(), ["status", "execute_input", "execute_result", "status"])
        count = exchange.content["execution_count"]
        self.assertEqual(exchange.contents("execute_input")[0], {"code": "6 * 7", "execution_count": count})
        self.assertEqual(exchange.contents("execute_result")[0]["execution_count"], count)
        self.assertEqual(exchange.shown(), ["42"])

    def test_silent_publishes_status_only_and_does_not_count(self):
        before = self.ok(self.client.execute("1")).content["execution_count"]
        self.ok(self.client.execute("int seenAfterSilence = 5;", silent=True))
        for code in ('System.out.println("x"); display(1); 2', 'throw new IllegalStateException("x");'):
            exchange = self.client.execute(code, silent=True)
            self.assertEqual(exchange.types(), ["status", "status"])
            self.assertEqual(exchange.content["execution_count"], before)
        self.assertEqual(exchange.content["status"], "error")
        self.assertEqual(self.client.execute("seenAfterSilence").shown(), ["5"])

    def test_without_store_history_a_cell_is_shown_but_neither_counted_nor_kept(self):
        before = self.ok(self.client.execute("1")).content["execution_count"]
        exchange = self.ok(self.client.execute('"not kept"', store_history=False))
        self.assertEqual(exchange.shown(), ["not kept"])
        self.assertEqual(exchange.content["execution_count"], before)
        kept = self.history("tail", n=1)
        self.assertEqual(kept[0][1:], [before, "1"])

    def test_user_expressions_each_have_their_own_status(self):
        exchange = self.ok(self.client.execute("double span = 16;", user_expressions={
            "good": "span / 2", "bad": "1 / 0", "unknown": "noSuchName"}))
        found = exchange.content["user_expressions"]
        self.assertEqual(found["good"]["status"], "ok")
        self.assertEqual(found["good"]["data"]["text/plain"], "8.0")
        self.assertEqual((found["bad"]["status"], found["bad"]["ename"]), ("error", "ArithmeticException"))
        self.assertEqual(found["unknown"]["status"], "error")
        self.assertIn("noSuchName", "".join(found["unknown"]["traceback"]))
        self.assertNotIn("error", exchange.types())

    def test_an_error_stops_what_is_queued(self):
        requests = [self.client.client.execute(code) for code in
                    ('Thread.sleep(300); throw new IllegalStateException("first");', "int ran = 1;", "2")]
        replies = [self.client.reply(r)["content"] for r in requests]
        self.assertEqual([r["status"] for r in replies], ["error", "aborted", "aborted"])
        self.assertIn("ran", "".join(self.client.execute("ran").content["traceback"]))
        self.assertEqual(self.ok(self.client.execute("3")).shown(), ["3"])

    def test_aborted_requests_are_busy_and_idle_too(self):
        first = self.client.client.execute("Thread.sleep(300); int zero = 0; 1 / zero")
        second = self.client.client.execute("2")
        self.client.published(first)
        states = [m["content"]["execution_state"] for m in self.client.published(second)]
        self.assertEqual(states, ["busy", "idle"])

    def test_without_stop_on_error_what_is_queued_runs(self):
        requests = [self.client.client.execute('Thread.sleep(200); throw new IllegalStateException("on");',
                                               stop_on_error=False), self.client.client.execute("2")]
        self.assertEqual([self.client.reply(r)["content"]["status"] for r in requests], ["error", "ok"])

    def test_an_error_names_itself_and_the_line_of_the_cell(self):
        exchange = self.client.execute('int before = 1;\nObject o = null;\no.toString();')
        self.assertEqual(exchange.content["ename"], "NullPointerException")
        trace = "\n".join(exchange.content["traceback"])
        self.assertIn("\x1b[", trace)
        self.assertIn("line 3", re.sub("\x1b\\[[0-9;]*m", "", trace))
        self.assertNotIn("$JShell", trace)
        published = exchange.contents("error")
        self.assertEqual(len(published), 1)
        for field in ("ename", "evalue", "traceback"):
            self.assertEqual(published[0][field], exchange.content[field])

    def test_input_is_refused_where_the_front_end_cannot_be_asked(self):
        exchange = self.client.execute('input("Tag? ")', allow_stdin=False)
        self.assertEqual(exchange.content["status"], "error")
        self.assertIn("does not allow", exchange.content["evalue"])

    def asked(self, code, answer):
        request = self.client.client.execute(code, allow_stdin=True)
        question = self.client.client.get_stdin_msg(timeout=WAIT)
        self.assertEqual(question["parent_header"]["msg_id"], request)
        self.client.client.input(answer)
        return question["content"], Exchange(self.client.reply(request), self.client.published(request))

    def test_input_asks_and_gets_the_line(self):
        question, exchange = self.asked('input("Tag? ")', "LT-101A")
        self.assertEqual(question, {"prompt": "Tag? ", "password": False})
        self.assertEqual(exchange.shown(), ["LT-101A"])

    def test_a_password_is_asked_as_such(self):
        question, exchange = self.asked('password("Key? ").length()', "abcd")
        self.assertEqual(question, {"prompt": "Key? ", "password": True})
        self.assertEqual(exchange.shown(), ["4"])

    def test_system_in_asks_too(self):
        question, exchange = self.asked("new Scanner(System.in).nextInt() + 1", "41")
        self.assertFalse(question["password"])
        self.assertEqual(exchange.shown(), ["42"])

    def test_display_and_update_display(self):
        exchange = self.ok(self.client.execute('display("cold", "loop"); updateDisplay("hot", "loop");'))
        shown, updated = exchange.contents("display_data")[0], exchange.contents("update_display_data")[0]
        self.assertEqual(shown["data"]["text/plain"], "cold")
        self.assertEqual(shown["transient"], {"display_id": "loop"})
        self.assertEqual(updated["data"]["text/plain"], "hot")
        self.assertEqual(updated["transient"], {"display_id": "loop"})
        again = self.ok(self.client.execute('updateDisplay("cooled", "loop");'))
        self.assertEqual(again.contents("update_display_data")[0]["data"]["text/plain"], "cooled")

    def test_progress_moves_in_place(self):
        exchange = self.ok(self.client.execute(
            'try (var p = progress("Sampling", 4)) { for (int i = 0; i < 4; i++) { Thread.sleep(120); p.step(); } }'))
        first, updates = exchange.contents("display_data"), exchange.contents("update_display_data")
        self.assertEqual(len(first), 1)
        self.assertGreaterEqual(len(updates), 2)
        self.assertEqual({u["transient"]["display_id"] for u in updates}, {first[0]["transient"]["display_id"]})
        self.assertIn("4 of 4", updates[-1]["data"]["text/plain"])
        self.assertIn("<progress", updates[-1]["data"]["text/html"])

    def test_clear_output_at_once_and_with_the_next(self):
        exchange = self.ok(self.client.execute(
            'System.out.print("a"); clearOutput(true); System.out.print("b"); clearOutput();'))
        self.assertEqual(exchange.contents("clear_output"), [{"wait": True}, {"wait": False}])
        self.assertEqual(exchange.types()[2:-1], ["stream", "clear_output", "stream", "clear_output"])

    def test_the_pager_is_a_payload(self):
        payload = self.ok(self.client.execute('page("long text")')).content["payload"]
        self.assertEqual(payload, [{"source": "page", "start": 0, "data": {"text/plain": "long text"}}])

    def test_streams_are_told_apart_and_keep_their_order(self):
        exchange = self.ok(self.client.execute(
            'System.out.print("1"); System.err.print("2"); System.out.print("3");'))
        self.assertEqual([(c["name"], c["text"]) for c in exchange.contents("stream")],
                         [("stdout", "1"), ("stderr", "2"), ("stdout", "3")])

    def test_a_hundred_thousand_lines_come_in_few_messages(self):
        exchange = self.ok(self.client.execute("for (int i = 0; i < 100_000; i++) System.out.println(i);"))
        self.assertEqual(exchange.text(), "".join(f"{i}\n" for i in range(100_000)))
        self.assertLess(len(exchange.contents("stream")), 60)

    def test_a_cell_that_prints_too_much_is_cut_with_a_notice(self):
        exchange = self.ok(self.client.execute(
            'String block = "x".repeat(1 << 20); for (int i = 0; i < 20; i++) System.out.print(block);'))
        self.assertEqual(len(exchange.text()), 16 << 20)
        self.assertEqual(exchange.text("stderr").count("the rest is not sent"), 1)
        self.assertEqual(self.ok(self.client.execute('System.out.print("next");')).text(), "next")

    def test_a_late_thread_writes_under_the_header_of_its_cell(self):
        first = self.client.client.execute("new Thread(() -> { try { Thread.sleep(600); } "
                                           'catch (InterruptedException e) { } System.out.print("late"); }).start();')
        self.client.reply(first)
        second = self.client.client.execute('Thread.sleep(1200); System.out.print("second");')
        self.client.reply(second)
        parents = {m["content"]["text"]: m["parent_header"]["msg_id"] for m in self.client.silence()
                   if m["msg_type"] == "stream"}
        self.assertEqual(parents, {"late": first, "second": second})

    def test_completion_with_types_while_a_cell_runs(self):
        self.ok(self.client.execute("double loopMilliamps = 12;"))
        running = self.client.start("Thread.sleep(20_000);")
        code = '"\U0001f527"; loopMill'
        content = self.client.ask("complete_request", {"code": code, "cursor_pos": len(code)}).content
        self.assertEqual(content["matches"], ["loopMilliamps"])
        self.assertEqual((content["cursor_start"], content["cursor_end"]), (len(code) - 8, len(code)))
        self.assertEqual(content["metadata"]["_jupyter_types_experimental"],
                         [{"start": len(code) - 8, "end": len(code), "text": "loopMilliamps", "type": "instance",
                           "signature": "double loopMilliamps"}])
        self.client.ask("interrupt_request", channel="control")
        self.assertEqual(self.client.reply(running)["content"]["ename"], "Interrupted")

    def test_inspection_at_both_details(self):
        self.ok(self.client.execute("/** Twice. */ int twice(int n) { return 2 * n; }\nint gauge = 7;"))
        brief, full = (self.client.ask("inspect_request", {"code": "twice(3)", "cursor_pos": 3, "detail_level": d})
                       .content for d in (0, 1))
        self.assertTrue(brief["found"] and full["found"])
        self.assertIn("int twice(int n)", brief["data"]["text/plain"])
        self.assertNotIn("return 2 * n", brief["data"]["text/plain"])
        self.assertIn("return 2 * n", full["data"]["text/plain"])
        value = self.client.ask("inspect_request", {"code": "gauge", "cursor_pos": 5, "detail_level": 0}).content
        self.assertIn("value: 7", value["data"]["text/plain"])
        nothing = self.client.ask("inspect_request", {"code": "noSuch", "cursor_pos": 6, "detail_level": 0}).content
        self.assertEqual((nothing["status"], nothing["found"], nothing["data"]), ("ok", False, {}))

    def test_is_complete_with_indent(self):
        for code, expected in (("int x = 3;", {"status": "complete"}), ("}", {"status": "invalid"}),
                               ("for (int i = 0; i < 3; i++) {", {"status": "incomplete", "indent": "    "}),
                               ("if (true) {\n    while (true) {", {"status": "incomplete", "indent": " " * 8})):
            with self.subTest(code):
                self.assertEqual(self.client.ask("is_complete_request", {"code": code}).content, expected)

    def history(self, access, **how):
        content = {"hist_access_type": access, "output": False, "raw": True, **how}
        return self.client.ask("history_request", content).content["history"]

    def test_history_by_tail_range_and_search(self):
        for code in ('"first" + 1', '"second" + 2', '"first" + 1', '"third" + 3'):
            count = self.ok(self.client.execute(code)).content["execution_count"]
        self.assertEqual([line[1:] for line in self.history("tail", n=2)],
                         [[count - 1, '"first" + 1'], [count, '"third" + 3']])
        self.assertEqual([line[1:] for line in self.history("range", session=0, start=count - 2, stop=count)],
                         [[count - 2, '"second" + 2'], [count - 1, '"first" + 1']])
        self.assertEqual([line[2] for line in self.history("search", pattern='"first*', n=10)],
                         ['"first" + 1', '"first" + 1'])
        self.assertEqual([line[1] for line in self.history("search", pattern='"first*', n=10, unique=True)],
                         [count - 1])
        self.assertEqual(self.history("tail", n=1, output=True)[0][2], ['"third" + 3', "third3"])

    def test_a_comm_opened_by_the_front_end(self):
        self.ok(self.client.execute(
            'Comms.ofSession().register("demo.echo", (comm, first) -> {\n'
            '    comm.send(Map.of("hello", first.data().get("name")));\n'
            '    comm.onMessage(m -> comm.send(Map.of("echo", m.data().get("x"))));\n'
            '    comm.onClose(m -> System.out.print("closed"));\n'
            '});'))
        opened = self.client.send("comm_open", {"comm_id": "c1", "target_name": "demo.echo", "data": {"name": "LT"}})
        told = [m["content"] for m in self.client.published(opened) if m["msg_type"] == "comm_msg"]
        self.assertEqual(told, [{"comm_id": "c1", "data": {"hello": "LT"}}])
        sent = self.client.send("comm_msg", {"comm_id": "c1", "data": {"x": [1, 2.5, None]}})
        told = [m["content"] for m in self.client.published(sent) if m["msg_type"] == "comm_msg"]
        self.assertEqual(told, [{"comm_id": "c1", "data": {"echo": [1, 2.5, None]}}])
        info = self.client.ask("comm_info_request", {"target_name": "demo.echo"}).content
        self.assertEqual(info["comms"], {"c1": {"target_name": "demo.echo"}})
        self.assertEqual(self.client.ask("comm_info_request", {"target_name": "other"}).content["comms"], {})
        closed = self.client.send("comm_close", {"comm_id": "c1", "data": {}})
        self.assertEqual(Exchange({"content": {}}, self.client.published(closed)).text(), "closed")
        self.assertEqual(self.client.ask("comm_info_request", {"target_name": "demo.echo"}).content["comms"], {})

    def test_a_comm_opened_by_a_cell(self):
        exchange = self.ok(self.client.execute(
            'var comm = Comms.ofSession().open("demo.gauge", CommMessage.of(Map.of("value", 12)));\n'
            'comm.send(Map.of("value", 13)); comm.close();'))
        opened = exchange.contents("comm_open")[0]
        self.assertEqual((opened["target_name"], opened["data"]), ("demo.gauge", {"value": 12}))
        self.assertEqual([c["data"] for c in exchange.contents("comm_msg")], [{"value": 13}])
        self.assertEqual(exchange.contents("comm_close")[0]["comm_id"], opened["comm_id"])

    def test_a_comm_of_an_unknown_target_is_closed(self):
        opened = self.client.send("comm_open", {"comm_id": "c2", "target_name": "nobody.knows", "data": {}})
        closed = [m["content"]["comm_id"] for m in self.client.published(opened) if m["msg_type"] == "comm_close"]
        self.assertEqual(closed, ["c2"])

    def test_an_interrupt_stops_a_cell_and_its_reply_says_so(self):
        running = self.client.start("while (true);")
        self.assertEqual(self.client.ask("interrupt_request", channel="control").content, {"status": "ok"})
        self.assertEqual(self.client.reply(running)["content"]["ename"], "Interrupted")
        self.assertEqual(self.ok(self.client.execute("1 + 1")).shown(), ["2"])

    def test_an_interrupt_stops_a_cell_that_asks(self):
        request = self.client.client.execute('input("Tag? ")', allow_stdin=True)
        self.client.client.get_stdin_msg(timeout=WAIT)
        self.kernel.manager.interrupt_kernel()
        self.assertEqual(self.client.reply(request)["content"]["ename"], "Interrupted")

    def test_control_is_answered_while_a_cell_runs(self):
        running = self.client.start("Thread.sleep(20_000);")
        self.ok(self.client.ask("kernel_info_request", channel="control"))
        figures = self.client.ask("usage_request", channel="control").content
        self.assertEqual(figures["pid"], self.kernel.pid)
        self.assertGreater(figures["kernel_memory"], 50e6)
        self.assertGreaterEqual(figures["kernel_cpu"], 0)
        self.assertEqual(figures["cpu_count"], len(os.sched_getaffinity(0)))
        self.kernel.manager.interrupt_kernel()
        self.client.reply(running)

    def test_system_exit_ends_the_cell_and_says_so(self):
        self.ok(self.client.execute("int stillHere = 4;"))
        exchange = self.client.execute("System.exit(3);")
        self.assertEqual(exchange.content["status"], "error")
        self.assertIn("System.exit(3)", exchange.content["evalue"])
        self.assertIn("the session goes on", exchange.content["evalue"])
        self.assertEqual(self.ok(self.client.execute("stillHere")).shown(), ["4"])

    def test_a_message_with_a_wrong_signature_gets_no_answer(self):
        stranger = self.kernel.manager.blocking_client()
        stranger.session.key = b"not the key"
        stranger.start_channels()
        self.addCleanup(stranger.stop_channels)
        stranger.shell_channel.send(stranger.session.msg("kernel_info_request", {}))
        published = [m for m in self.client.silence(0.5) if m["msg_type"] != "iopub_welcome"]
        self.assertEqual(published, [])
        with self.assertRaises(Empty):
            stranger.get_shell_msg(timeout=0.1)
        self.ok(self.client.ask("kernel_info_request"))

    def test_two_clients_each_get_their_replies_and_both_see_the_output(self):
        other = self.kernel.asker()
        mine = self.client.client.execute('Thread.sleep(300); "mine"')
        theirs = other.client.execute('"theirs"')
        self.assertEqual(self.client.reply(mine)["content"]["status"], "ok")
        self.assertEqual(other.reply(theirs)["content"]["status"], "ok")
        for client in (self.client, other):
            seen = {m["parent_header"]["msg_id"]: m["content"]["data"]["text/plain"] for m in client.silence()
                    if m["msg_type"] == "execute_result"}
            self.assertEqual((seen[mine], seen[theirs]), ("mine", "theirs"))
        with self.assertRaises(Empty):
            other.client.get_shell_msg(timeout=0.2)

    def test_a_front_end_that_reconnects_while_a_cell_runs_gets_the_reply(self):
        leaving = self.kernel.asker()
        running = leaving.start("Thread.sleep(1500); 5")
        session = leaving.client.session
        leaving.close()
        self.kernel.askers.remove(leaving)
        client = BlockingKernelClient(session=session)
        client.load_connection_info({**self.kernel.manager.get_connection_info(), "key": session.key})
        back = Asker(client)
        self.kernel.askers.append(back)
        self.assertEqual(back.reply(running)["content"]["status"], "ok")

    def test_a_client_that_is_killed_takes_nothing_with_it(self):
        script = textwrap.dedent("""
            import os, signal, sys
            from jupyter_client.blocking import BlockingKernelClient
            client = BlockingKernelClient(connection_file=sys.argv[1])
            client.load_connection_file()
            client.start_channels()
            client.wait_for_ready(timeout=60)
            client.execute('for (int i = 0; i < 3; i++) { Thread.sleep(300); System.out.println(i); }\\nint done = 3;')
            while client.get_iopub_msg(timeout=60)["msg_type"] != "stream":
                pass
            os.kill(os.getpid(), signal.SIGKILL)
            """)
        ended = subprocess.run([sys.executable, "-c", script, self.kernel.manager.connection_file],
                               timeout=2 * WAIT, check=False)
        self.assertEqual(ended.returncode, -signal.SIGKILL)
        self.assertEqual(self.ok(self.client.execute("done")).shown(), ["3"])


class AKernelThatEnds(unittest.TestCase):
    """Rows after which the kernel is another, or none."""

    def setUp(self):
        self.kernel = Kernel()
        self.addCleanup(self.kernel.close)
        self.client = self.kernel.asker()

    def test_shutdown_is_answered_announced_and_done(self):
        pid = self.kernel.pid
        exchange = self.client.ask("shutdown_request", {"restart": False}, channel="control")
        self.assertEqual(exchange.content, {"status": "ok", "restart": False})
        self.assertIn("shutdown_reply", exchange.types())
        self.assertTrue(gone(pid, 5))

    def test_shutdown_ends_a_kernel_whose_cell_does_not_end(self):
        pid = self.kernel.pid
        self.client.start("new java.net.ServerSocket(0).accept()")
        request = self.client.send("shutdown_request", {"restart": False}, channel="control")
        self.assertEqual(self.client.reply(request, "control")["content"]["status"], "ok")
        self.assertTrue(gone(pid, 5))

    def test_a_restart_forgets_the_session_and_keeps_the_history(self):
        self.client.execute('String mark = "before the restart";')
        ends = self.client.send("shutdown_request", {"restart": True}, channel="control")
        self.assertTrue(self.client.reply(ends, "control")["content"]["restart"])
        self.client.close()
        self.kernel.askers.clear()
        self.kernel.manager.restart_kernel(now=False)
        self.client = self.kernel.asker()
        exchange = self.client.execute("mark")
        self.assertEqual((exchange.content["status"], exchange.content["execution_count"]), ("error", 1))
        asked = {"output": False, "raw": True}
        tail = self.client.ask("history_request", {"hist_access_type": "tail", "n": 2, **asked}).content["history"]
        self.assertEqual([line[2] for line in tail], ['String mark = "before the restart";', "mark"])
        before = self.client.ask("history_request", {"hist_access_type": "range", "session": -1, "start": 1,
                                                     "stop": 2, **asked}).content["history"]
        self.assertEqual(before, [[tail[1][0] - 1, 1, 'String mark = "before the restart";']])
        found = self.client.ask("history_request", {"hist_access_type": "search", "pattern": "*before the*", "n": 1,
                                                    **asked}).content["history"]
        self.assertEqual(found, before)

    def test_a_process_that_ends_under_a_cell_says_so(self):
        pid = self.kernel.pid
        request = self.client.client.execute("Runtime.getRuntime().exit(3);")
        told = self.client.reply(request)["content"]
        self.assertEqual(told["status"], "error")
        self.assertIn("has ended while this cell ran", told["evalue"])
        self.assertTrue(gone(pid, 10))


class AnOrphan(unittest.TestCase):
    def test_a_kernel_whose_client_is_killed_ends_also_if_nobody_takes_note_of_that(self):
        script = textwrap.dedent("""
            import time
            from jupyter_client.manager import KernelManager
            manager = KernelManager(kernel_name="spanwright")
            manager.start_kernel()
            client = manager.blocking_client()
            client.start_channels()
            client.wait_for_ready(timeout=60)
            print(manager.provisioner.pid, flush=True)
            time.sleep(600)
            """)
        with subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True,
                              env=ENVIRONMENT) as client:
            pid = int(client.stdout.readline())
            client.kill()
            # Not waited for until the end of this block: the client stays in the table of processes.
            ended = gone(pid, 10)
            if not ended:
                os.kill(pid, signal.SIGKILL)
            self.assertTrue(ended)


if __name__ == "__main__":
    result = unittest.main(exit=False, verbosity=2).result
    print(f"ran {result.testsRun}, skipped {len(result.skipped)}")
    sys.exit(0 if result.wasSuccessful() and not result.skipped else 1)
