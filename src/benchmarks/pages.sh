#!/usr/bin/env bash
# How long does the service take for a page, at the median?
#
#   src/benchmarks/pages.sh [cows] [seconds]      (500, 10)
#
# Starts the packaged service (-Xmx512m) with an invented herd of so many cows in milk, ten tests each in two lactations, signs in with the key in a header
# and lets wrk ask for the herd's page, one cow's, and three lists, one connection at a time, after as many seconds to warm up. Prints median and
# 99th percentile. The herd is not changed between the requests, so what it teaches is learned once; the page itself is made anew each time.
#
# Needs: the packages built (mvn -B -DskipTests package), python3 and wrk.
set -euo pipefail
cows=${1:-500}
seconds=${2:-10}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
command -v wrk >/dev/null || { echo "wrk is not on this machine, so nothing was measured"; exit 2; }
work=$(mktemp -d)
service=
trap '[ -z "$service" ] || kill "$service"; rm -rf "$work"' EXIT
port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
base=http://127.0.0.1:$port
key=pages-of-an-invented-herd
PAILBOOK_DATA=$work/data PAILBOOK_ADMIN_KEY=$key QUARKUS_HTTP_PORT=$port PAILBOOK_REQUESTS_PER_MINUTE=0 PAILBOOK_BULKS_PER_MINUTE=0 PAILBOOK_REHEARSAL=false \
    java -Xmx512m -XX:+UseParallelGC -jar "${PAILBOOK_TARGET:-$here/../records-api/target}/quarkus-app/quarkus-run.jar" >"$work/log" &
service=$!
until grep -q 'Listening on' "$work/log"; do sleep 0.2; done

curl -sSf -o /dev/null -H "X-API-Key: $key" -H 'Content-Type: application/json' "$base/v1/herds" \
    -d '{"code":"pages","name":"Pages","timeZone":"Europe/Dublin"}'
python3 - "$cows" "$work" <<'PYTHON'
import datetime, math, sys
cows, folder = int(sys.argv[1]), sys.argv[2]
day = datetime.date
with open(f"{folder}/animals", "w") as animals, open(f"{folder}/calvings", "w") as calvings, open(f"{folder}/test-days", "w") as tests:
    animals.write("animal_scheme,animal_id,breed\n")
    calvings.write("animal_scheme,animal_id,date,parity\n")
    tests.write("animal_scheme,animal_id,date,milk_kg,fat_pct,protein_pct,scc_thousand_per_ml\n")
    for cow in range(cows):
        name = f"example.eartag,{cow:05d}"
        animals.write(f"{name},HOL\n")
        for parity, calved in ((1, day(2024, 6, 1) + datetime.timedelta(cow % 60)), (2, day(2025, 7, 1) + datetime.timedelta(cow % 60))):
            calvings.write(f"{name},{calved},{parity}\n")
            for test in range(9 if parity == 1 else 4):
                dim = 15 + 30 * test
                kg = (22 + 4 * parity + cow % 7) * (dim / 60) ** 0.2 * math.exp(-0.003 * (dim - 60))
                tests.write(f"{name},{calved + datetime.timedelta(dim)},{kg:.1f},4.{test},3.{test},{60 + 37 * (cow % 9)}\n")
PYTHON
for kind in animals calvings test-days; do
    curl -sSf -o /dev/null -H "X-API-Key: $key" -H 'Content-Type: text/csv' "$base/v1/herds/pages/$kind/bulk" --data-binary "@$work/$kind"
done

echo "load $(cut -d' ' -f1-3 /proc/loadavg), $(nproc) processors, $cows cows in milk"
for page in '' /animals/example.eartag:00007 /lists/milk-withheld /lists/to-breed /lists/udder-health; do
    address="$base/pages/herds/pages$page?asOf=2025-12-01"
    wrk -t1 -c1 -d"${seconds}s" -H "X-API-Key: $key" "$address" >/dev/null
    wrk -t1 -c1 -d"${seconds}s" --latency -H "X-API-Key: $key" "$address" >"$work/wrk"
    if grep -q 'Non-2xx' "$work/wrk"; then cat "$work/wrk"; exit 1; fi
    printf '%-36s median %s, 99 %% %s\n' "${page:-herd}" "$(awk '$1 == "50%" {print $2}' "$work/wrk")" "$(awk '$1 == "99%" {print $2}' "$work/wrk")"
done
