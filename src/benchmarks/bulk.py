"""The client of bulk.sh: the same test days through the service and by plain JDBC. Standard library only."""

import glob
import json
import pathlib
import random
import signal
import subprocess
import sys
import time
from datetime import timedelta

from kill_nine import CALVED, SCHEME, Client, Service, expect

COWS = 10_000
MOST_ROWS_A_REQUEST = 200_000
HEAP = "-Xmx512m"
HEADER = "animal_scheme,animal_id,date,milk_kg,fat_pct,protein_pct,scc_thousand_per_ml"
PEER = pathlib.Path(__file__).parent / "src/main/java/org/pailbook/benchmarks/bulk/PlainUpsert.java"


def rows_of(count):
    chance = random.Random(1)
    for number in range(count):
        day = CALVED + timedelta(days=5 + number // COWS)
        yield (f"{number % COWS:012d}", day.isoformat(), chance.randint(150, 400) / 10, chance.randint(30, 50) / 10,
               chance.randint(28, 40) / 10, chance.randint(20, 400))


def as_csv(rows):
    lines = [",".join(map(str, (SCHEME, *row))) for row in rows]
    return ("\n".join([HEADER, *lines]) + "\n").encode(), "text/csv"


def as_ndjson(rows):
    names = ("date", "milkKg", "fatPct", "proteinPct", "sccThousandPerMl")
    lines = [json.dumps({"animal": {"scheme": SCHEME, "id": row[0]}, **dict(zip(names, row[1:]))}) for row in rows]
    return "\n".join(lines).encode(), "application/x-ndjson"


def prepare(service, herd):
    cows = [f"{number:012d}" for number in range(COWS)]
    client = Client(service)
    client.connection.timeout = 600
    expect(client.call("POST", "/v1/herds", json.dumps({"code": herd, "name": herd, "timeZone": "UTC"})), 201)
    expect(client.bulk(f"/v1/herds/{herd}/animals/bulk", [{"identifiers": [{"scheme": SCHEME, "id": cow}]} for cow in cows]), 200)
    calvings = [{"animal": {"scheme": SCHEME, "id": cow}, "date": CALVED.isoformat(), "parity": 1} for cow in cows]
    expect(client.bulk(f"/v1/herds/{herd}/calvings/bulk", calvings), 200)
    return client


def post(service, herd, rows, form):
    client, seconds = prepare(service, herd), 0
    for begin in range(0, len(rows), MOST_ROWS_A_REQUEST):
        part = rows[begin:begin + MOST_ROWS_A_REQUEST]
        body, media_type = form(part)
        started = time.monotonic()
        status, answer = client.call("POST", f"/v1/herds/{herd}/test-days/bulk", body, media_type)
        seconds += time.monotonic() - started
        if status != 200 or answer["created"] != len(part):
            sys.exit(f"{status} {str(answer)[:500]}")
    return len(rows) / seconds


def plain(jar, url, file):
    drivers = [one for one in glob.glob(str(pathlib.Path(jar).parent / "lib/main/*.jar")) if "sqlite-jdbc" in one or "postgresql" in one or "slf4j" in one]
    command = ["java", HEAP, "-cp", ":".join(drivers), str(PEER), url, str(file)]
    rows, seconds = subprocess.run(command, check=True, capture_output=True, text=True).stdout.split()
    return int(rows) / float(seconds)


def main():
    name, jar, count, work, url = sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4], sys.argv[5]
    rows = list(rows_of(count))
    file = pathlib.Path(work, "rows.csv")
    file.write_bytes(as_csv(rows)[0])
    service = Service(jar, work, HEAP)
    service.start()
    post(service, "warm", rows[:COWS], as_csv)
    rates = {"CSV": post(service, "csv", rows, as_csv), "NDJSON": post(service, "ndjson", rows, as_ndjson)}
    service.process.send_signal(signal.SIGTERM)
    service.process.wait()
    peer = plain(jar, url, file)
    print(f"{name}, {count} rows: plain JDBC {peer:,.0f} rows/s")
    for form, rate in rates.items():
        print(f"  {form:6} {rate:10,.0f} rows/s, {100 * rate / peer:.1f} % of plain JDBC", flush=True)


if __name__ == "__main__":
    main()
