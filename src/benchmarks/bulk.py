"""The client of bulk.sh: the same test days through the service and by plain JDBC, in turns. Standard library only."""

import glob
import json
import os
import pathlib
import random
import signal
import statistics
import subprocess
import sys
import time
from datetime import timedelta

from kill_nine import CALVED, SCHEME, Client, Service, expect

COWS = 10_000
ROWS_A_COMMIT = 1_000  # BulkIntake.CHUNK_ROWS
HEAP = "-Xmx512m"
HEADER = "animal_scheme,animal_id,date,milk_kg,fat_pct,protein_pct,scc_thousand_per_ml"
PEER = pathlib.Path(__file__).parent / "src/main/java/org/pailbook/benchmarks/bulk/PlainUpsert.java"
TICKS = os.sysconf("SC_CLK_TCK")


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


def seconds_of(process):
    """Processor time of one process, and of children of it that have ended."""
    try:
        fields = pathlib.Path(f"/proc/{process}/stat").read_text().rsplit(")", 1)[1].split()
    except OSError:
        return 0
    return sum(map(int, fields[11:15])) / TICKS


def children_of(process):
    found = []
    for stat in glob.glob("/proc/[0-9]*/stat"):
        try:
            if pathlib.Path(stat).read_text().rsplit(")", 1)[1].split()[1] == str(process):
                found.append(stat.split("/")[2])
        except OSError:
            continue
    return found


class Server:
    """The processes of the PostgreSQL server; none for SQLite."""

    def __init__(self, pid_file):
        self.process = None if pid_file == "-" else int(pathlib.Path(pid_file).read_text().split()[0])

    def seconds(self):
        return 0 if self.process is None else sum(map(seconds_of, [self.process, *children_of(self.process)]))


def prepare(service, herd):
    cows = [f"{number:012d}" for number in range(COWS)]
    client = Client(service)
    client.connection.timeout = 600
    expect(client.call("POST", "/v1/herds", json.dumps({"code": herd, "name": herd, "timeZone": "UTC"})), 201)
    expect(client.bulk(f"/v1/herds/{herd}/animals/bulk", [{"identifiers": [{"scheme": SCHEME, "id": cow}]} for cow in cows]), 200)
    calvings = [{"animal": {"scheme": SCHEME, "id": cow}, "date": CALVED.isoformat(), "parity": 1} for cow in cows]
    expect(client.bulk(f"/v1/herds/{herd}/calvings/bulk", calvings), 200)


class Ours:
    def __init__(self, service, form):
        self.service, self.form = service, form

    def take(self, herd, rows):
        body, media_type = self.form(rows)
        client = Client(self.service)
        client.connection.timeout = 600
        started = time.monotonic()
        status, answer = client.call("POST", f"/v1/herds/{herd}/test-days/bulk", body, media_type)
        seconds = time.monotonic() - started
        if status != 200 or answer["created"] != len(rows):
            sys.exit(f"{status} {str(answer)[:500]}")
        return seconds

    def process(self):
        return self.service.process.pid


class Plain:
    def __init__(self, jar, url, work):
        drivers = [one for one in glob.glob(str(pathlib.Path(jar).parent / "lib/main/*.jar"))
                   if "sqlite-jdbc" in one or "postgresql" in one or "slf4j-api" in one]
        classes = pathlib.Path(work, "classes")
        subprocess.run(["javac", "-d", str(classes), str(PEER)], check=True)
        self.file = pathlib.Path(work, "rows.csv")
        command = ["java", HEAP, "-cp", ":".join([str(classes), *drivers]), "org.pailbook.benchmarks.bulk.PlainUpsert", url,
                   str(ROWS_A_COMMIT), os.environ.get("PLAIN_REFERENCES", "true")]
        self.program = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def take(self, herd, rows):
        self.file.write_bytes(as_csv(rows)[0])
        print(herd, self.file, file=self.program.stdin, flush=True)
        taken, seconds = self.program.stdout.readline().split()
        if int(taken) != len(rows):
            sys.exit(f"{taken} of {len(rows)} rows")
        return float(seconds)

    def process(self):
        return self.program.pid

    def end(self):
        self.program.stdin.close()
        self.program.wait()


class Clocked:
    """One of those who take turns: rows, seconds by the clock and of processor time, turn by turn."""

    def __init__(self, taker, herd, server):
        self.taker, self.herd, self.server, self.rows, self.clock, self.processor = taker, herd, server, 0, [], []

    def take(self, rows):
        before = seconds_of(self.taker.process()) + self.server.seconds()
        self.clock.append(self.taker.take(self.herd, rows))
        self.processor.append(seconds_of(self.taker.process()) + self.server.seconds() - before)
        self.rows += len(rows)

    def rate(self, seconds):
        return self.rows / sum(seconds)


def shares(ours, plain):
    """Of both clocks: plain seconds in percent of ours, over all turns and in the middle turn."""
    for name, mine, peer in (("by the clock", ours.clock, plain.clock), ("of processor time", ours.processor, plain.processor)):
        turns = [100 * b / a for a, b in zip(mine, peer)]
        yield (f"{name} {ours.rate(mine):,.0f} rows/s, plain {plain.rate(peer):,.0f}: {100 * sum(peer) / sum(mine):.1f} % "
               f"(turns {min(turns):.1f} to {max(turns):.1f}, median {statistics.median(turns):.1f})")


def largest_kib(process):
    lines = pathlib.Path(f"/proc/{process}/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM"))


def main():
    name, jar, count, turn, work, url, pid_file = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4]), *sys.argv[5:8]
    rows = list(rows_of(count))
    service = Service(jar, work, HEAP)
    service.start()
    server, plain = Server(pid_file), Plain(jar, url, work)
    forms = {"csv": Ours(service, as_csv), "ndjson": Ours(service, as_ndjson)}
    for herd in ("warm-csv", "warm-ndjson", "csv", "ndjson"):
        prepare(service, herd)
    for herd, ours in forms.items():
        ours.take(f"warm-{herd}", rows[:2 * COWS])
        plain.take(f"warm-{herd}", rows[:2 * COWS])
    pairs = {herd: (Clocked(ours, herd, server), Clocked(plain, herd, server)) for herd, ours in forms.items()}
    for begin in range(0, count, turn):
        for pair in pairs.values():
            for one in pair:
                one.take(rows[begin:begin + turn])
    print(f"{name}, {count} rows in turns of {turn}, load {os.getloadavg()[0]:.1f}, "
          f"largest size of the service {largest_kib(service.process.pid) // 1024} MiB")
    for herd, (ours, peer) in pairs.items():
        for line in shares(ours, peer):
            print(f"  {herd.upper():6} {line}", flush=True)
    plain.end()
    service.process.send_signal(signal.SIGTERM)
    service.process.wait()


if __name__ == "__main__":
    main()
