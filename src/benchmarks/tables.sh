#!/usr/bin/env bash
# Do a spreadsheet program, R and Python read the tables of a herd as they are meant?
#
#   src/benchmarks/tables.sh
#
# Starts the packaged service with a small herd whose names are formulas and whose ear tags begin with zeros, lets LibreOffice without a window open its
# tables as workbook and as CSV and write down what it took each cell for, and runs the two programs of the page "How to read the tables elsewhere" as they
# stand there. Prints yes or NO for each promise; exit 1 after a NO.
#
# Needs: the packages built (mvn -B -DskipTests package), python3, soffice (LibreOffice Calc) and Rscript; says which is missing.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
for program in python3 soffice Rscript; do
    command -v "$program" >/dev/null || { echo "$program is not on this machine, so nothing was tried"; exit 2; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export PAILBOOK_DATA=$work/data PAILBOOK_REQUESTS_PER_MINUTE=0 PAILBOOK_BULKS_PER_MINUTE=0 PAILBOOK_REHEARSAL=false
python3 "$here/tables.py" "${PAILBOOK_TARGET:-$here/../records-api/target}/quarkus-app/quarkus-run.jar" "$work"
