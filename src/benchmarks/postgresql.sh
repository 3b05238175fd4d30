# What scripts that measure on databases of their own have in common, sourced by them with here set: the packages in target, a folder for work that goes at
# the end, and a PostgreSQL server with fsync on when start_postgresql is called.

target=${PAILBOOK_TARGET:-$here/../records-api/target}
work=$(mktemp -d)
cluster=

cleanup() {
    stop_postgresql
    rm -rf "$work"
}
trap cleanup EXIT

as_postgres() {
    if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

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
    # what stops and starts it again, for a script that lets it go away
    export PAILBOOK_PG_CTL="$bin/pg_ctl -D $cluster -w -l $cluster/log"
    export PAILBOOK_PG_OPTIONS="-p $port -k $cluster -c listen_addresses=127.0.0.1"
}

stop_postgresql() {
    if [ -n "$cluster" ]; then (cd / && as_postgres "$bin/pg_ctl" -D "$cluster" -m immediate stop >/dev/null 2>&1) || true; fi
}
