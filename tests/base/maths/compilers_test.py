"""The functions of maths give the same bits from every compiler here, however it optimizes.

compilers_test.py SOURCE: g++ always, clang++ where it is installed.
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

# What every build so far has given. A machine that gives another sum computes something otherwise.
KNOWN = "c1bce8e5fe38a410"

root = pathlib.Path(sys.argv[1])
sources = [*sorted((root / "src/base/maths").glob("*.cpp")),
           root / "tests/base/maths/hash.cpp"]
ways = [["g++", "-O0"], ["g++", "-O3"], ["g++", "-O3", "-march=native"]]
if shutil.which("clang++"):
    ways += [["clang++", "-O0"], ["clang++", "-O3"], ["clang++", "-O3", "-march=native"]]
failed = 0
with tempfile.TemporaryDirectory() as folder:
    for compiler, *options in ways:
        program = f"{folder}/hash"
        subprocess.run([compiler, *options, "-std=c++20", "-ffp-contract=off", f"-I{root}/src",
                        f"-I{root}/include", *map(str, sources), "-o", program], check=True)
        said = subprocess.run([program], capture_output=True, text=True, check=True).stdout.strip()
        good = said == KNOWN
        failed += not good
        print(f"{'ok' if good else 'not ok'} - {compiler} {' '.join(options)}"
              f"{'' if good else f': {said}, not {KNOWN}'}", flush=True)
sys.exit(1 if failed else 0)
