#!/bin/sh
# Times Wood fits of the same 64 invented lactations by this library, Commons Math and, where installed, R's nls and SciPy's curve_fit, and
# prints how many times faster ours is. By processor time of one thread, so that a busy machine disturbs the ratios little.
# Build first: mvn -q -pl src/benchmarks -am package -DskipTests
set -eu
here=$(cd "$(dirname "$0")" && pwd)
jar="$here/target/benchmarks.jar"
[ -f "$jar" ] || { echo "no $jar: build with mvn -q -pl src/benchmarks -am package -DskipTests" >&2; exit 1; }
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT

java -cp "$jar" org.pailbook.benchmarks.curve.WoodSeries > "$dir/series.csv"
# a line each: name, fits a second of processor time, sum of all residual squares (Commons Math's answers are compared before it is timed)
java -cp "$jar" org.pailbook.benchmarks.curve.FitterCpuTime > "$dir/all"

if command -v Rscript > /dev/null 2>&1; then
    Rscript - "$dir/series.csv" >> "$dir/all" <<'R'
d <- split(read.csv(commandArgs(TRUE)[1]), ~cow)
one <- function(x) nls(kg ~ a * day^b * exp(-c * day), x, start = list(a = 16, b = 0.2, c = 0.0035))
for (x in d[1:8]) one(x)
rss <- 0
rounds <- 4
used <- system.time(for (i in seq_len(rounds)) for (x in d) rss <- rss + deviance(one(x)))
seconds <- used["user.self"] + used["sys.self"]
cat(sprintf("R-%s-nls %.1f %.9f\n", getRversion(), rounds * length(d) / seconds, rss / rounds))
R
else
    echo "R is not installed: left out" >&2
fi

if python3 -c 'import scipy' > /dev/null 2>&1; then
    OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 python3 - "$dir/series.csv" >> "$dir/all" <<'PY'
import sys, time
import numpy as np, scipy
from scipy.optimize import curve_fit
rows = np.loadtxt(sys.argv[1], delimiter=",", skiprows=1)
cows = [rows[rows[:, 0] == c, 1:] for c in np.unique(rows[:, 0])]
def wood(t, a, b, c): return a * np.exp(b * np.log(t) - c * t)
def jac(t, a, b, c):
    e = np.exp(b * np.log(t) - c * t)
    return np.column_stack([e, a * e * np.log(t), -a * e * t])
def one(x):
    p, _ = curve_fit(wood, x[:, 0], x[:, 1], p0=(16, 0.2, 0.0035), jac=jac)
    return ((x[:, 1] - wood(x[:, 0], *p)) ** 2).sum()
for x in cows[:8]: one(x)
rounds, rss, start = 10, 0.0, time.process_time()
for _ in range(rounds):
    for x in cows: rss += one(x)
seconds = time.process_time() - start
print(f"SciPy-{scipy.__version__}-curve_fit {rounds * len(cows) / seconds:.1f} {rss / rounds:.9f}")
PY
else
    echo "SciPy is not installed: left out" >&2
fi

awk '$1 == "ours" { ours = $2 } { line[NR] = $0 }
    END {
        printf "%-36s %14s %12s  %s\n", "fitter", "fits/s", "ours is", "sum of residual squares"
        for (i = 1; i <= NR; i++) {
            split(line[i], p, " ")
            printf "%-36s %14.0f %11.1fx  %s\n", p[1], p[2], ours / p[2], p[3]
        }
    }' "$dir/all"
