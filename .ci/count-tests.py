#!/usr/bin/env python3
"""Adds up JUnit reports; prints 'N passed, N failed, N skipped'; exit status 1 unless all passed and there were any."""
import sys
import xml.etree.ElementTree as tree

tests = failed = skipped = 0
for report in sys.argv[1:]:
    if report.endswith("failsafe-summary.xml"):
        continue
    suite = tree.parse(report).getroot()
    tests += int(suite.get("tests", 0))
    failed += int(suite.get("failures", 0)) + int(suite.get("errors", 0))
    skipped += int(suite.get("skipped", 0))
print(f"{tests - failed - skipped} passed, {failed} failed, {skipped} skipped")
sys.exit(0 if tests and not failed and not skipped else 1)
