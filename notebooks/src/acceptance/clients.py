"""nbclient, nbconvert and the console, as people call them, against the installed kernel "spanwright"."""
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

import nbclient
import nbformat

NOTEBOOKS = pathlib.Path(__file__).resolve().parents[2]
FIRST = NOTEBOOKS / "01-does-the-chain-meet-its-target.ipynb"
SECOND = NOTEBOOKS / "02-checked-against-published-values.ipynb"


class Clients(unittest.TestCase):
    def test_nbclient_runs_every_worked_notebook(self):
        for path in sorted(NOTEBOOKS.glob("*.ipynb")):
            with self.subTest(path.name):
                notebook = nbformat.read(path, as_version=4)
                nbclient.NotebookClient(notebook, timeout=120, kernel_name="spanwright",
                                        resources={"metadata": {"path": str(NOTEBOOKS)}}).execute()
                outputs = [o for c in notebook.cells if c.cell_type == "code" for o in c.outputs]
                self.assertTrue(outputs)
                self.assertFalse([o for o in outputs if o.output_type == "error"])
                nbformat.validate(notebook)

    def test_nbconvert_executes_to_html(self):
        with tempfile.TemporaryDirectory() as folder:
            subprocess.run(["/usr/bin/jupyter-nbconvert", "--to", "html", "--execute", "--output-dir", folder,
                            str(FIRST)], check=True, capture_output=True, timeout=180)
            html = (pathlib.Path(folder) / FIRST.with_suffix(".html").name).read_text(encoding="utf-8")
            self.assertIn("<svg", html)
            self.assertIn("% of span", html)

    def test_the_console_answers(self):
        console = shutil.which("jupyter-console", path="/usr/bin")
        self.assertIsNotNone(console)
        done = subprocess.run([console, "--kernel", "spanwright", "--simple-prompt", "--no-confirm-exit"],
                              input="var x = 20.5;\nx * 2\nexit\n", capture_output=True, text=True, timeout=120)
        self.assertIn("41.0", done.stdout, done.stderr)


if __name__ == "__main__":
    result = unittest.main(exit=False, verbosity=2).result
    print(f"ran {result.testsRun}, skipped {len(result.skipped)}")
    sys.exit(0 if result.wasSuccessful() and result.testsRun == 3 and not result.skipped else 1)
