#!/usr/bin/env bash
# How fast are test days taken over HTTP, beside a plain JDBC batch upsert of the same rows into the same database?
#
#   src/benchmarks/bulk.sh [rows] [sqlite|postgresql|both] [rows a turn]      (1000000, both, 100000)
#
# Needs what kill-nine.sh needs. The service runs with -Xmx512m. CSV, plain, NDJSON, plain take turns with the same rows, so that what else the
# machine does hits all alike; processor time is counted too, that of the PostgreSQL server included. PLAIN_REFERENCES=false leaves the
# references to herds and animals out of the plain table.
set -euo pipefail
rows=${1:-1000000}
databases=${2:-both}
turn=${3:-100000}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
source "$here/postgresql.sh"

if [ "$databases" != postgresql ]; then
    url="jdbc:sqlite:$work/data/pailbook.db?journal_mode=WAL&synchronous=FULL&transaction_mode=IMMEDIATE&busy_timeout=10000&foreign_keys=true"
    PAILBOOK_DATA=$work/data python3 "$here/bulk.py" SQLite "$target/quarkus-app/quarkus-run.jar" "$rows" "$turn" "$work" "$url" -
fi
if [ "$databases" != sqlite ]; then
    start_postgresql
    url="$QUARKUS_DATASOURCE_JDBC_URL&user=$QUARKUS_DATASOURCE_USERNAME&password=${QUARKUS_DATASOURCE_PASSWORD:-}"
    python3 "$here/bulk.py" PostgreSQL "$target/quarkus-app-postgresql/quarkus-run.jar" "$rows" "$turn" "$work" "$url" "$cluster/postmaster.pid"
fi
