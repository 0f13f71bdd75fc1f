"""Runs ChainMonteCarlo.java and chain_numpy.py in turn, whole processes, and prints the medians of wall and
processor time and the ratio.

usage: python3 beside_numpy.py CLASSPATH [TRIALS [REPEATS]]

CLASSPATH holds the compiled library and its dependencies: the jar that `mvn package` makes,
notebooks/target/spanwright.jar, or what `mvn dependency:build-classpath` prints, which starts slower. Java starts
from a class archive, as the launcher starts the kernel, and Python from its own compiled files, which the first run of
each makes; neither first run is counted. The options of Java let its compiler begin with loops earlier than it would,
and keep it from compiling the same loops twice.
"""
import os
import statistics
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
JAVA = ["java", "-XX:+UseSerialGC", "-XX:-UsePerfData", "-Xss512k", "-XX:Tier4BackEdgeThreshold=100000000",
        "-XX:InlineSmallCode=500", "-XX:Tier3BackEdgeThreshold=10000", "-XX:Tier3MinInvocationThreshold=20",
        "-XX:Tier3CompileThreshold=500"]


def timed(command):
    start, before = time.perf_counter(), os.times()
    done = subprocess.run(command, stdout=subprocess.PIPE, check=True, text=True)
    after = os.times()
    cpu = sum(after[2:4]) - sum(before[2:4])
    return time.perf_counter() - start, done.stdout.strip(), cpu


def main():
    classpath = sys.argv[1]
    trials = sys.argv[2] if len(sys.argv) > 2 else "10000000"
    repeats = int(sys.argv[3]) if len(sys.argv) > 3 else 5
    with tempfile.TemporaryDirectory() as work:
        subprocess.run(["javac", "-d", work, "-cp", classpath, os.path.join(HERE, "ChainMonteCarlo.java")], check=True)
        bench, archive = os.path.join(work, "bench.jar"), os.path.join(work, "bench.jsa")
        subprocess.run(["jar", "cf", bench, "-C", work, "ChainMonteCarlo.class"], check=True)
        # An archive takes classes from jars only.
        jars = [bench]
        for k, part in enumerate(classpath.split(os.pathsep)):
            if os.path.isdir(part):
                jars.append(os.path.join(work, f"classes{k}.jar"))
                subprocess.run(["jar", "cf", jars[-1], "-C", part, "."], check=True)
            else:
                jars.append(part)
        path = os.pathsep.join(jars)
        arguments = ["-cp", path, "ChainMonteCarlo", trials, "1"]
        subprocess.run(JAVA + ["-XX:ArchiveClassesAtExit=" + archive] + arguments, check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        ours = JAVA + ["-XX:SharedArchiveFile=" + archive, "-Xshare:auto"] + arguments
        theirs = ["/usr/bin/python3", os.path.join(HERE, "chain_numpy.py"), trials, "1"]
        timed(ours), timed(theirs)
        runs = [(timed(ours), timed(theirs)) for _ in range(repeats)]
    java, numpy = ([run[k][0] for run in runs] for k in (0, 1))
    print("Java ", runs[0][0][1])
    print("NumPy", runs[0][1][1])
    print(f"median of {repeats}: Java {statistics.median(java):.3f} s, NumPy {statistics.median(numpy):.3f} s, "
          f"ratio {statistics.median(numpy) / statistics.median(java):.2f}")
    java_cpu, numpy_cpu = (statistics.median(run[k][2] for run in runs) for k in (0, 1))
    print(f"processor time: Java {java_cpu:.2f} s, NumPy {numpy_cpu:.2f} s; load average {os.getloadavg()[0]:.2f}")
    print("Java ", " ".join(f"{t:.3f}" for t in java))
    print("NumPy", " ".join(f"{t:.3f}" for t in numpy))


main()
