#!/usr/bin/env bash
# Does the service keep what it acknowledged when something around it fails?
#
#   src/benchmarks/operations.sh [disk-full|server-away|stop-in-bulk|two-services|all]      (all)
#
# disk-full     the disk with the SQLite file runs full (a tmpfs of 48 MB) after thousands of rows, then has room again; then
#               SIGKILL while it is full; also with a full folder for temporary files
# server-away   PostgreSQL is stopped and started again under the service
# stop-in-bulk  SIGTERM while 100,000 rows are being taken, on both databases
# two-services  two services on one PostgreSQL take the same load; change numbers without gaps, no record twice; a cursor, an idempotency
#               key, the change feed, a signed-in page and a revoked key hold across the two
#
# Needs what kill-nine.sh needs; disk-full needs root, for mount. Exit 1 if anything acknowledged is lost or an answer is not as promised.
set -euo pipefail
what=${1:-all}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
source "$here/postgresql.sh"

cleanup() {
    stop_postgresql
    for mounted in "$work/disk" "$work/temporary"; do
        if mountpoint -q "$mounted"; then umount "$mounted"; fi
    done
    rm -rf "$work"
}

failed=0
wants() { [ "$what" = all ] || [ "$what" = "$1" ]; }
sqlite=$target/quarkus-app/quarkus-run.jar
postgresql=$target/quarkus-app-postgresql/quarkus-run.jar

if wants disk-full; then
    mkdir "$work/disk" "$work/temporary"
    mount -t tmpfs -o size=48m tmpfs "$work/disk"
    mount -t tmpfs -o size=16m tmpfs "$work/temporary"
    PAILBOOK_DATA=$work/disk python3 "$here/operations.py" disk-full "$sqlite" "$work" || failed=1
fi
if wants stop-in-bulk; then
    PAILBOOK_DATA=$work/data python3 "$here/operations.py" stop-in-bulk "$sqlite" "$work" || failed=1
fi
if wants server-away || wants stop-in-bulk || wants two-services; then
    start_postgresql
    for one in stop-in-bulk two-services server-away; do
        if wants $one; then python3 "$here/operations.py" $one "$postgresql" "$work" || failed=1; fi
    done
fi
exit $failed
