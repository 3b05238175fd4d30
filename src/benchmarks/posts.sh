#!/usr/bin/env bash
# How many test days posted one by one are taken a second, beside what the disk can make durable?
#
#   src/benchmarks/posts.sh [seconds] [sqlite|postgresql|both]      (20, both)
#
# Eight writers and eight readers at once (wrk), the service with -Xmx512m. The probe appends 4 KiB and calls fdatasync, one after the other, in
# the folder of the database, before and after. Needs wrk and what kill-nine.sh needs.
set -euo pipefail
seconds=${1:-20}
databases=${2:-both}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
source "$here/postgresql.sh"

if [ "$databases" != postgresql ]; then
    PAILBOOK_DATA=$work/data python3 "$here/posts.py" SQLite "$target/quarkus-app/quarkus-run.jar" "$seconds" "$work"
fi
if [ "$databases" != sqlite ]; then
    start_postgresql
    python3 "$here/posts.py" PostgreSQL "$target/quarkus-app-postgresql/quarkus-run.jar" "$seconds" "$work"
fi
