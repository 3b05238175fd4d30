#!/usr/bin/env bash
# Is a record that was answered "stored" still there after the service is killed?
#
#   src/benchmarks/kill-nine.sh [runs] [sqlite|postgresql|both]      (5 runs, both)
#
# Each run starts the packaged service, lets four clients post single test days and one post bulks of 200, kills the service with
# SIGKILL after 2 to 4 seconds, starts it again and compares what it lists with everything that was acknowledged. Exit 1 if
# anything acknowledged is lost or changed, or if SQLite's integrity_check complains.
#
# Needs: the packages built (mvn -B -DskipTests package), python3, and for postgresql the server programs of PostgreSQL on the
# PATH or below /usr/lib/postgresql; run as root, the server runs as user postgres. SIGKILL says nothing about a power cut.
set -euo pipefail
runs=${1:-5}
databases=${2:-both}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
target=${PAILBOOK_TARGET:-$here/../records-api/target}
work=$(mktemp -d)
cluster=

as_postgres() {
    if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

cleanup() {
    if [ -n "$cluster" ]; then as_postgres "$bin/pg_ctl" -D "$cluster" -m immediate stop >/dev/null 2>&1 || true; fi
    rm -rf "$work"
}
trap cleanup EXIT

free_port() {
    python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])'
}

start_postgresql() {
    bin=$(dirname "$(readlink -f "$(command -v initdb || ls -d /usr/lib/postgresql/*/bin/initdb | sort -V | tail -1)")")
    cluster=$work/cluster
    local port
    port=$(free_port)
    chmod 711 "$work"
    mkdir -m 700 "$cluster"
    if [ "$(id -u)" = 0 ]; then chown postgres "$cluster"; fi
    (
        cd /
        as_postgres "$bin/initdb" -D "$cluster" -U pailbook -A trust -E UTF8 >/dev/null
        as_postgres "$bin/pg_ctl" -D "$cluster" -w -l "$cluster/log" \
            -o "-p $port -k $cluster -c listen_addresses=127.0.0.1" start >/dev/null
        as_postgres "$bin/createdb" -h 127.0.0.1 -p "$port" -U pailbook pailbook
        as_postgres "$bin/psql" -h 127.0.0.1 -p "$port" -U pailbook -d pailbook -At \
            -c "select version()" -c "select 'fsync ' || current_setting('fsync') || ', synchronous_commit ' || current_setting('synchronous_commit')"
    )
    export PAILBOOK_DATABASE=postgresql
    export QUARKUS_DATASOURCE_JDBC_URL="jdbc:postgresql://127.0.0.1:$port/pailbook?reWriteBatchedInserts=true"
    export QUARKUS_DATASOURCE_USERNAME=pailbook QUARKUS_DATASOURCE_PASSWORD=trusted
}

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
