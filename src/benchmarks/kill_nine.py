"""The client of kill-nine.sh: posts, kills, starts again, compares. Standard library only."""

import collections
import http.client
import json
import os
import pathlib
import random
import socket
import sqlite3
import subprocess
import sys
import threading
import time
from datetime import date, timedelta

SINGLE_CLIENTS = 4
COWS_PER_CLIENT = 25
BULK_ROWS = 200
ATOMIC_ROWS = 300
CALVED = date(2000, 1, 1)
SCHEME = "example.eartag"
KEY = "kill-nine-admin-key"
START_SECONDS = 300  # on a machine busy with other work
WARM_UP_POSTS = 300


class Service:
    """The packaged service as a process of its own."""

    def __init__(self, jar, work, heap="-Xmx256m"):
        self.jar, self.heap, self.log = jar, heap, pathlib.Path(work, "service.log")
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]

    def start(self):
        # more is posted here than any tool would
        environment = dict(os.environ, PAILBOOK_REQUESTS_PER_MINUTE="0", PAILBOOK_BULKS_PER_MINUTE="0", PAILBOOK_REHEARSAL="false", QUARKUS_HTTP_PORT=str(self.port), QUARKUS_HTTP_HOST="127.0.0.1", PAILBOOK_ADMIN_KEY=KEY)
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(
                ["java", self.heap, *os.environ.get("PAILBOOK_JAVA_OPTIONS", "").split(), "-jar", self.jar], env=environment, stdin=subprocess.DEVNULL, stdout=log, stderr=log)
        deadline = time.monotonic() + START_SECONDS
        while time.monotonic() < deadline:
            if self.process.poll() is not None:
                break
            try:
                if Client(self).call("GET", "/v1/me")[0] == 200:
                    return
            except (OSError, http.client.HTTPException):
                time.sleep(0.1)
        sys.exit("the service did not start:\n" + self.log.read_text(errors="replace")[-3000:])

    def kill(self):
        if self.process.poll() is not None:
            sys.exit("the service ended before it was killed:\n" + self.log.read_text(errors="replace")[-3000:])
        self.process.kill()
        self.process.wait()


class Client:
    def __init__(self, service):
        self.connection = http.client.HTTPConnection("127.0.0.1", service.port, timeout=60)

    def call(self, method, path, body=None, media_type="application/json"):
        headers = {"X-API-Key": KEY}
        if body is not None:
            headers["Content-Type"] = media_type
        self.connection.request(method, path, body, headers)
        answer = self.connection.getresponse()
        text = answer.read()
        return answer.status, json.loads(text) if text else None

    def send(self, method, path, body=None, media_type=None, headers=None):
        """Status, headers and text; a header given as None is not sent."""
        sent = {"X-API-Key": KEY, "Content-Type": media_type, **(headers or {})}
        self.connection.request(method, path, body, {name: value for name, value in sent.items() if value})
        answer = self.connection.getresponse()
        return answer.status, answer.headers, answer.read().decode()

    def bulk(self, path, rows):
        return self.call("POST", path, "\n".join(map(json.dumps, rows)).encode(), "application/x-ndjson")


class Book:
    """What was sent and what was acknowledged; one for each client thread, so no locks."""

    def __init__(self):
        self.acknowledged, self.sent, self.requests, self.problem = {}, {}, 0, None

    def will_send(self, rows):
        for row in rows:
            self.sent.setdefault(key_of(row), []).append(row["milkKg"])

    def was_stored(self, rows):
        self.requests += 1
        for row in rows:
            self.acknowledged[key_of(row)] = row["milkKg"]


def key_of(row):
    return row["animal"]["id"], row["date"]


def test_day(cow, day, kg):
    return {"animal": {"scheme": SCHEME, "id": cow}, "date": (CALVED + timedelta(days=day)).isoformat(), "milkKg": kg, "fatPct": 4.1}


def post_singles(service, herd, cows, book, stop):
    """One test day a request; every fifth corrects the one before."""
    client, day, cow = Client(service), 0, 0
    try:
        for turn in range(1_000_000):
            if stop.is_set():
                return
            if turn % 5 != 4:
                cow = (cow + 1) % len(cows)
                day += cow == 0
            kg = 10 + turn % 300 / 10
            row = test_day(cows[cow], 5 + day, kg)
            book.will_send([row])
            status, answer = client.call("POST", f"/v1/herds/{herd}/test-days", json.dumps(row))
            if status not in (200, 201):
                book.problem = f"{status} {answer}"
                return
            book.was_stored([row])
    except (OSError, http.client.HTTPException, ValueError):
        return  # killed in the middle of an answer: not acknowledged


def post_bulks(service, herd, cows, book, stop, query=""):
    client = Client(service)
    try:
        for day in range(8000):
            if stop.is_set():
                return
            rows = [test_day(cow, 5 + day, 10 + day % 300 / 10) for cow in cows]
            book.will_send(rows)
            status, answer = client.bulk(f"/v1/herds/{herd}/test-days/bulk{query}", rows)
            if status != 200 or answer["refused"] or answer["created"] + answer["updated"] + answer["unchanged"] != len(rows):
                book.problem = f"{status} {answer}"
                return
            book.was_stored(rows)
    except (OSError, http.client.HTTPException, ValueError):
        return


def expect(answer, *allowed):
    if answer[0] not in allowed:
        sys.exit(f"setting up failed: {answer}")


def warm_up(service):
    """A freshly started JVM is slow; without this the kill would hit a handful of posts."""
    herd = f"warm-{time.time_ns() // 1_000_000}"
    cows, client = set_up(service, herd), Client(service)
    for day in range(WARM_UP_POSTS):
        expect(client.call("POST", f"/v1/herds/{herd}/test-days", json.dumps(test_day(cows[0], 5 + day, 20))), 200, 201)
        if day % 20 == 0:
            expect(client.bulk(f"/v1/herds/{herd}/test-days/bulk", [test_day(cow, 5 + day, 20) for cow in cows[-BULK_ROWS:]]), 200)


def set_up(service, herd):
    client = Client(service)
    expect(client.call("POST", "/v1/herds", json.dumps({"code": herd, "name": herd, "timeZone": "UTC"})), 200, 201)
    cows = [f"K-{number:04}" for number in range(SINGLE_CLIENTS * COWS_PER_CLIENT + BULK_ROWS + ATOMIC_ROWS)]
    animals = [{"identifiers": [{"scheme": SCHEME, "id": cow}], "breed": "HOL", "sex": "female"} for cow in cows]
    calvings = [{"animal": {"scheme": SCHEME, "id": cow}, "date": CALVED.isoformat(), "parity": 1} for cow in cows]
    for path, rows in (("animals", animals), ("calvings", calvings)):
        status, answer = client.bulk(f"/v1/herds/{herd}/{path}/bulk", rows)
        if status != 200 or answer["created"] != len(rows):
            sys.exit(f"setting up {path} failed: {status} {answer}")
    return cows


def read_back(service, herd):
    client, path, found = Client(service), f"/v1/herds/{herd}/test-days?limit=1000", {}
    while path:
        status, page = client.call("GET", path)
        if status != 200:
            sys.exit(f"reading back failed: {status} {page}")
        for item in page["items"]:
            record = item.get("record", item)
            if key_of(record) in found:
                sys.exit(f"listed twice: {key_of(record)}")
            found[key_of(record)] = record["milkKg"]
        path = page.get("next")
    return found


def read_changes(service, herd):
    """The whole change feed from its beginning: how many, what is wrong with its numbers, and each test day as it leaves it."""
    client, after, more, wrong, days = Client(service), 0, True, 0, {}
    while more:
        status, page = client.call("GET", f"/v1/herds/{herd}/changes?after={after}&limit=1000")
        if status != 200:
            sys.exit(f"reading the changes failed: {status} {page}")
        for change in page["changes"]:
            after += 1
            wrong += change["seq"] != after
            if change["kind"] == "test-day":
                days[key_of(change["record"])] = change["record"]["milkKg"]
        wrong += page["nextAfter"] != after
        more = page["more"]
    return after, wrong, days


def integrity():
    data = os.environ.get("PAILBOOK_DATA")
    if not data:
        return "-"
    file = next(pathlib.Path(data).glob("*.db"))
    with sqlite3.connect(f"file:{file}?mode=ro", uri=True) as database:
        return database.execute("pragma integrity_check").fetchone()[0]


def one_run(service, herd):
    service.start()
    warm_up(service)
    cows = set_up(service, herd)
    books = [Book() for _ in range(SINGLE_CLIENTS + 2)]
    stop = threading.Event()
    threads = []
    for number in range(SINGLE_CLIENTS):
        share = cows[number * COWS_PER_CLIENT:(number + 1) * COWS_PER_CLIENT]
        threads.append(threading.Thread(target=post_singles, args=(service, herd, share, books[number], stop)))
    chunked, atomic = cows[-BULK_ROWS - ATOMIC_ROWS:-ATOMIC_ROWS], cows[-ATOMIC_ROWS:]
    threads.append(threading.Thread(target=post_bulks, args=(service, herd, chunked, books[-2], stop)))
    threads.append(threading.Thread(target=post_bulks, args=(service, herd, atomic, books[-1], stop, "?atomic=true")))
    for thread in threads:
        thread.start()
    seconds = random.uniform(2, 4)
    time.sleep(seconds)
    service.kill()
    stop.set()
    for thread in threads:
        thread.join()
    problems = [book.problem for book in books if book.problem]
    if problems:
        sys.exit(f"a post was refused, so nothing can be said: {problems[0]}")

    checked_dead = integrity()
    service.start()
    found = read_back(service, herd)
    changes, misnumbered, told = read_changes(service, herd)
    service.kill()
    acknowledged = {key: kg for book in books for key, kg in book.acknowledged.items()}
    sent = {key: values for book in books for key, values in book.sent.items()}
    lost = [key for key in acknowledged if key not in found]
    # A correction that was sent later but not acknowledged may stand; a value from before the acknowledged one may not.
    changed = [key for key, kg in acknowledged.items()
               if key in found and found[key] not in sent[key][sent[key].index(kg):]]
    strange = [key for key in found if key not in sent or found[key] not in sent[key]]
    rows_by_day = collections.Counter(day for cow, day in found if cow in set(atomic))
    parted = [day for day, rows in rows_by_day.items() if rows != ATOMIC_ROWS]
    return {
        "seconds": round(seconds, 1), "posts": sum(book.requests for book in books[:-2]), "bulks": books[-2].requests,
        "atomic": books[-1].requests, "parted": len(parted),
        "acknowledged": len(acknowledged), "found": len(found), "lost": len(lost), "changed": len({*changed, *strange}),
        # a follower of the feed has the same records with the same values as the list, and each number once
        "changes": changes, "misfed": misnumbered + len({*told.items()} ^ {*found.items()}),
        "integrity": checked_dead if checked_dead != "ok" else integrity(),
    }


def main():
    database, jar, runs, work = sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4]
    if not pathlib.Path(jar).exists():
        sys.exit(f"{jar} is not there: mvn -B -DskipTests package")
    service = Service(jar, work)
    columns = ["run", "seconds", "posts", "bulks", "atomic", "acknowledged", "found", "lost", "changed", "parted", "changes", "misfed", "integrity"]
    print(f"\n{database}\n" + "".join(f"{column:>13}" for column in columns), flush=True)
    total = dict.fromkeys(columns[2:-1], 0)
    bad = False
    for run in range(1, runs + 1):
        result = one_run(service, f"kill-{run}")
        print("".join(f"{value:>13}" for value in [run, *(result[column] for column in columns[1:])]), flush=True)
        for column in total:
            total[column] += result[column]
        bad |= result["lost"] > 0 or result["changed"] > 0 or result["parted"] > 0 or result["misfed"] > 0 or result["integrity"] not in ("ok", "-")
    print("".join(f"{value:>13}" for value in ["total", "", *total.values(), ""]), flush=True)
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
