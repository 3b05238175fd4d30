#!/usr/bin/env bash
# How fast are summaries read, beside the cheapest answer of the same service?
#
#   src/benchmarks/reads.sh [cows ...]      (100 1000 10000)
#
# Starts the packaged service (SQLite, -Xmx512m), posts a herd of each size as herd-of-ten-thousand.sh does, and asks with wrk, one
# after the other in the same run: /v1/me, a JSON answer that computes nothing; one cow's summary and the herd's, asked again with
# nothing changed; one cow's, each time another cow; and by If-None-Match. Then seconds of each summary after a posted test day, where
# all is computed anew. Every answer is looked at before the clock runs. Prints requests a second and the ratio to /v1/me, p50 and p99,
# and the resident size of the service after each herd.
#
# Needs: the packages built (mvn -B -DskipTests package), python3, wrk.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
if ! command -v wrk >/dev/null; then
    echo "wrk is not installed (Debian: apt-get install wrk); nothing was measured" >&2
    exit 2
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export PAILBOOK_DATA=$work/data PAILBOOK_REQUESTS_PER_MINUTE=0 PAILBOOK_BULKS_PER_MINUTE=0 PAILBOOK_REHEARSAL=false
python3 "$here/reads.py" "${PAILBOOK_TARGET:-$here/../records-api/target}/quarkus-app/quarkus-run.jar" "$work" "${@:-100 1000 10000}"
