#!/usr/bin/env python3
"""The main job on the example stays within its memory (release builds); its time is told, not tested:
speed is measured by the benchmarks, against a floor.

usage: cost_test.py TOOL"""

import os
import resource
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, check, done  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
MOST_MIB, RUNS = 64, 5

with tempfile.TemporaryDirectory() as folder:
    seconds = []
    for _ in range(RUNS):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        status = subprocess.run([TOOL, "make", EXAMPLE, "-o", folder], stdout=subprocess.DEVNULL,
                                stderr=subprocess.DEVNULL).returncode
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        seconds.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    mib = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
check("the example makes", status == 0, status)
# The least of some runs: what else the machine does can only add.
print(f"# CPU time, the least of {RUNS} runs: {min(seconds):.3f} s")
check(f"its memory at the peak, {mib:.0f} MiB, is under {MOST_MIB} MiB", mib < MOST_MIB)
done()
