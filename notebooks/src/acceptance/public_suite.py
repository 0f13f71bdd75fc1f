"""The public kernel test suite, every one of its tests active, against the installed kernel "spanwright"."""
import sys
import unittest

import jupyter_kernel_test


class SpanwrightKernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = "spanwright"
    language_name = "java"
    file_extension = ".java"
    code_hello_world = 'System.out.println("hello, world");'
    code_stderr = 'System.err.println("to the error stream");'
    completion_samples = [
        {"text": "Math.hyp", "matches": {"hypot("}},
        {"text": "Runtim", "matches": {"Runtime", "RuntimeException", "RuntimePermission"}},
    ]
    complete_code_samples = ["1", "int x = 3;", "int x = 3", "for (int i = 0; i < 3; i++) { }", "// only a comment", ""]
    incomplete_code_samples = ["for (int i = 0; i < 3; i++) {", "class A {", "Math.max(1,", 'var t = """\n  text']
    invalid_code_samples = ['"abc', "}"]
    code_page_something = 'page("more than fits")'
    code_generate_error = 'throw new IllegalStateException("on purpose");'
    code_execute_result = [
        {"code": "6 * 7", "result": "42"},
        {"code": '"Kestrel " + "Fen"', "result": "Kestrel Fen"},
        {"code": "percentOfSpan(0.5)", "result": "0.5 % of span"},
    ]
    code_display_data = [
        {"code": "display(List.of(1, 2))", "mime": "text/plain"},
        {"code": 'display(Readings.read("../../../test-data/demo/LT-101A.csv"))', "mime": "text/html"},
    ]
    code_history_pattern = "6 ?*"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "Math.hypot"
    code_clear_output = "clearOutput();"


if __name__ == "__main__":
    result = unittest.main(exit=False, verbosity=2).result
    ran, skipped = result.testsRun, len(result.skipped)
    print(f"ran {ran}, skipped {skipped}")
    sys.exit(0 if result.wasSuccessful() and ran == 12 and skipped == 0 else 1)
