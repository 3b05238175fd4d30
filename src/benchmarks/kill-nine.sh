#!/usr/bin/env bash
# Is a record that was answered "stored" still there after the service is killed?
#
#   src/benchmarks/kill-nine.sh [runs] [sqlite|postgresql|both]      (5 runs, both)
#
# Each run starts the packaged service, lets four clients post single test days, one bulks of 200 and one bulks of 300 with
# atomic=true, kills the service with SIGKILL after 2 to 4 seconds, starts it again and compares what it lists with everything that
# was acknowledged, then reads the whole change feed: numbers without gap or repeat (a fault counts as misfed), and the records it leaves
# are those listed. Exit 1 if anything acknowledged is lost or changed, if an atomic bulk is there in part, or if SQLite's
# integrity_check complains. Twenty runs of each: src/benchmarks/kill-nine.sh 20 both
#
# Needs: the packages built (mvn -B -DskipTests package), python3, and for postgresql the server programs of PostgreSQL on the
# PATH or below /usr/lib/postgresql; run as root, the server runs as user postgres. SIGKILL says nothing about a power cut.
set -euo pipefail
runs=${1:-5}
databases=${2:-both}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
source "$here/postgresql.sh"

failed=0
if [ "$databases" != postgresql ]; then
    (
        export PAILBOOK_DATA=$work/data
        python3 "$here/kill_nine.py" SQLite "$target/quarkus-app/quarkus-run.jar" "$runs" "$work"
    ) || failed=1
fi
if [ "$databases" != sqlite ]; then
    start_postgresql
    python3 "$here/kill_nine.py" PostgreSQL "$target/quarkus-app-postgresql/quarkus-run.jar" "$runs" "$work" || failed=1
fi
exit $failed
