#!/usr/bin/env bash
# How long does a herd of 10,000 cows in milk take to be projected anew over the API?
#
#   src/benchmarks/herd-of-ten-thousand.sh [cows] [rounds] [asked first]      (10000, 5, the summary; or reports/projections.csv)
#
# Starts the packaged service (-Xmx512m) on an empty database, posts the cows with monthly tests of an invented lactation, asks for the herd's summary, which
# has the 305-day projection with both intervals of every cow, then posts a test day, so that everything has to be computed anew, and asks
# again. Prints the seconds of each summary, of the answer over the loopback included. Then the same for the stateless address: 2,000 lactations
# with as many in their history in one request.
#
# Needs: the packages built (mvn -B -DskipTests package) and python3.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export PAILBOOK_DATA=$work/data PAILBOOK_REQUESTS_PER_MINUTE=0 PAILBOOK_BULKS_PER_MINUTE=0
python3 "$here/herd_of_ten_thousand.py" "${PAILBOOK_TARGET:-$here/../records-api/target}/quarkus-app/quarkus-run.jar" "$work" "${1:-10000}" "${2:-5}" "${@:3}"
