#!/usr/bin/env bash
# How fast are test days taken over HTTP, beside a plain JDBC batch upsert of the same rows into the same database?
#
#   src/benchmarks/bulk.sh [rows] [sqlite|postgresql|both]      (1000000, both)
#
# Needs what kill-nine.sh needs. The service runs with -Xmx512m; requests have at most 200,000 rows.
set -euo pipefail
rows=${1:-1000000}
databases=${2:-both}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
target=${PAILBOOK_TARGET:-$here/../records-api/target}
work=$(mktemp -d)
cluster=
source "$here/postgresql.sh"

cleanup() {
    stop_postgresql
    rm -rf "$work"
}
trap cleanup EXIT

if [ "$databases" != postgresql ]; then
    url="jdbc:sqlite:$work/data/pailbook.db?journal_mode=WAL&synchronous=FULL"
    PAILBOOK_DATA=$work/data python3 "$here/bulk.py" SQLite "$target/quarkus-app/quarkus-run.jar" "$rows" "$work" "$url"
fi
if [ "$databases" != sqlite ]; then
    start_postgresql
    url="$QUARKUS_DATASOURCE_JDBC_URL&user=$QUARKUS_DATASOURCE_USERNAME&password=${QUARKUS_DATASOURCE_PASSWORD:-}"
    python3 "$here/bulk.py" PostgreSQL "$target/quarkus-app-postgresql/quarkus-run.jar" "$rows" "$work" "$url"
fi
