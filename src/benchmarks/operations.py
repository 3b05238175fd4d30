"""The client of operations.sh: lets things around the service fail and looks at its answers and records. Standard library only."""

import http.client
import itertools
import json
import os
import pathlib
import shlex
import signal
import subprocess
import sys
import threading
import time

from kill_nine import Book, Client, Service, expect, key_of, post_bulks, post_singles, read_back, read_changes, set_up, test_day

ROWS_OF_STOP = 100_000
DAYS_BEFORE_FULL = 15
FILLER = "filler"
faults = []


def check(holds, words):
    print(("  yes  " if holds else "  NO   ") + words, flush=True)
    if not holds:
        faults.append(words)


def post(client, herd, row):
    return client.call("POST", f"/v1/herds/{herd}/test-days", json.dumps(row))


def fill(service, disk, cows, start_day):
    """Leaves no room and posts until that is felt; gives the refusal and what was stored before it."""
    room = os.statvfs(disk)
    (disk / FILLER).write_bytes(b"x" * (room.f_bavail * room.f_frsize))
    return post_until(service, "disk", cows, lambda answer: answer[0] >= 400, 60, start_day)


def post_until(service, herd, cows, good, seconds, start_day):
    """Posts one row after another until `good` says of an answer that it is the one waited for; gives it and what was stored."""
    client, stored, deadline, number = Client(service), {}, time.monotonic() + seconds, 0
    while time.monotonic() < deadline:
        row = test_day(cows[number % len(cows)], start_day + number // len(cows), 20 + number % 100 / 10)
        number += 1
        try:
            answer = post(client, herd, row)
        except (OSError, http.client.HTTPException):
            client = Client(service)
            continue
        if answer[0] in (200, 201):
            stored[key_of(row)] = row["milkKg"]
        if good(answer):
            return answer, stored
    return None, stored


def lost_of(service, herd, stored):
    found = read_back(service, herd)
    return [key for key, kg in stored.items() if found.get(key) != kg]


def is_unavailable(answer):
    return answer[0] == 503 and answer[1].get("code") == "storage-unavailable"


def log_lines(service, words):
    return [line for line in service.log.read_text(errors="replace").splitlines() if words in line]


def disk_full(service, work):
    disk, temporary = pathlib.Path(os.environ["PAILBOOK_DATA"]), pathlib.Path(work, "temporary")
    os.environ["JAVA_TOOL_OPTIONS"] = f"-Djava.io.tmpdir={temporary}"
    os.environ["TMPDIR"] = str(work)
    service.start()
    cows = set_up(service, "disk")
    client, stored = Client(service), {}
    for day in range(DAYS_BEFORE_FULL):
        rows = [test_day(cow, 5 + day, 20 + day / 10) for cow in cows]
        expect(client.bulk("/v1/herds/disk/test-days/bulk", rows), 200)
        stored |= {key_of(row): row["milkKg"] for row in rows}
    print(f"  {len(stored)} rows acknowledged before the disk is filled", flush=True)
    refused, more = fill(service, disk, cows, 500)
    stored |= more
    check(refused is not None and is_unavailable(refused), f"with the disk full a post is answered 503 storage-unavailable: {refused}")
    bulk = Client(service).bulk("/v1/herds/disk/test-days/bulk", [test_day(cow, 900, 20) for cow in cows])
    check(is_unavailable(bulk), f"so is a bulk of {len(cows)}: {bulk[0]} {bulk[1].get('detail')}")
    check(Client(service).call("GET", "/v1/herds/disk/test-days")[0] == 200, "reading goes on")
    lines = log_lines(service, "storage unavailable")
    check(lines and not log_lines(service, "\tat "), f"the log has a line for each and no stack: {lines[-1] if lines else None}")
    (disk / FILLER).unlink()
    accepted, more = post_until(service, "disk", cows, lambda answer: answer[0] in (200, 201), 30, 1000)
    stored |= more
    check(accepted is not None, "with room again the next post is stored, without a start")
    check(not lost_of(service, "disk", stored), f"of {len(stored)} acknowledged rows none is lost")

    refused, more = fill(service, disk, cows, 2000)
    stored |= more
    check(refused is not None, f"full again: {refused and refused[0]}")
    service.kill()
    (disk / FILLER).unlink()
    service.start()
    check(not lost_of(service, "disk", stored), f"killed with the disk full: of {len(stored)} acknowledged rows none is lost")

    (temporary / FILLER).write_bytes(b"x" * (os.statvfs(temporary).f_bavail * os.statvfs(temporary).f_frsize))
    rows = [dict(test_day(cow, 1200 + day, 20), milkKg=-1) for day in range(30) for cow in cows]
    spool = Client(service).bulk("/v1/herds/disk/test-days/bulk", rows)
    check(is_unavailable(spool), f"row results over 1 MB with the temporary folder full: {spool[0]} {spool[1].get('detail')}")
    (temporary / FILLER).unlink()
    again = Client(service).bulk("/v1/herds/disk/test-days/bulk", rows)
    check(again[0] == 200 and again[1]["refused"] == len(rows), "and with room again they are all told")
    service.kill()
    service.start()
    check(not lost_of(service, "disk", stored), "nor after SIGKILL and a new start")
    service.kill()


def postgresql(*words):
    command = shlex.split(os.environ["PAILBOOK_PG_CTL"]) + list(words)
    if os.getuid() == 0:
        command = ["runuser", "-u", "postgres", "--", *command]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd="/")


def server_away(service, work):
    service.start()
    cows = set_up(service, "away")
    _, stored = post_until(service, "away", cows, lambda answer: False, 2, 5)
    postgresql("-m", "fast", "stop")
    started = time.monotonic()
    refused, more = post_until(service, "away", cows, lambda answer: answer[0] >= 400, 60, 500)
    stored |= more
    check(refused is not None and refused[0] == 503 and refused[1]["code"] in ("storage-unavailable", "busy"),
          f"with the server away a post is answered 503 after {time.monotonic() - started:.1f} s: {refused}")
    started = time.monotonic()
    refused = Client(service).call("GET", "/v1/herds/away/test-days")
    check(refused[0] == 503, f"so is reading, after {time.monotonic() - started:.1f} s: {refused[1].get('code')}")
    ready = Client(service).call("GET", "/q/health/ready")
    live = Client(service).call("GET", "/q/health/live")
    check(ready[0] == 503 and live[0] == 200, f"it is live and not ready: {live[0]} {ready[0]}")
    lines = log_lines(service, "storage unavailable")
    check(bool(lines), f"the log says so: {lines[-1] if lines else None}")
    postgresql("-o", os.environ["PAILBOOK_PG_OPTIONS"], "start")
    started = time.monotonic()
    accepted, more = post_until(service, "away", cows, lambda answer: answer[0] in (200, 201), 60, 1000)
    stored |= more
    check(accepted is not None, f"with the server back a post is stored after {time.monotonic() - started:.1f} s, without a start")
    check(not lost_of(service, "away", stored), f"of {len(stored)} acknowledged rows none is lost")
    service.kill()


def stop_in_bulk(service, work):
    service.start()
    cows = set_up(service, "stop")
    rows = [test_day(cow, 5 + day, 20) for day in range(ROWS_OF_STOP // len(cows) + 1) for cow in cows][:ROWS_OF_STOP]
    answers = []

    def send():
        try:
            answers.append(Client(service).bulk("/v1/herds/stop/test-days/bulk", rows))
        except (OSError, http.client.HTTPException, ValueError) as broken:
            answers.append((0, {"broken": repr(broken)}))

    sender = threading.Thread(target=send)
    sender.start()
    watcher = Client(service)
    while not answers and not watcher.call("GET", "/v1/herds/stop/test-days?limit=1")[1]["items"]:
        time.sleep(0.1)
    during = not answers
    started = time.monotonic()
    service.process.send_signal(signal.SIGTERM)
    sender.join()
    service.process.wait(timeout=180)
    status, answer = answers[0]
    print(f"  ended {time.monotonic() - started:.1f} s after SIGTERM with code {service.process.returncode}", flush=True)
    check(during, f"the {ROWS_OF_STOP} rows were being taken when the signal came")
    check(status == 200 and answer.get("created") == ROWS_OF_STOP, f"they were answered in full: {status} {str(answer)[:120]}")
    service.start()
    found = len(read_back(service, "stop"))
    check(found == ROWS_OF_STOP if status == 200 else found % 1000 == 0, f"{found} are there after a new start")
    service.kill()


def changes_of(herd):
    tables = ["animal", "calving", "test_day", "superseded_version"]
    union = " union all ".join(f"select change_seq from {table} where herd_id = (select id from herd where code = '{herd}')" for table in tables)
    psql = pathlib.Path(shlex.split(os.environ["PAILBOOK_PG_CTL"])[0]).with_name("psql")
    port = shlex.split(os.environ["PAILBOOK_PG_OPTIONS"])[1]
    query = f"select count(*), count(distinct change_seq), min(change_seq), max(change_seq), (select change_seq from herd where code = '{herd}') from ({union}) c"
    out = subprocess.run([psql, "-h", "127.0.0.1", "-p", port, "-U", "pailbook", "-d", "pailbook", "-At", "-c", query],
                         check=True, capture_output=True, text=True).stdout
    return [int(number) for number in out.strip().split("|")]


def two_services(service, work):
    service.start()
    second = Service(service.jar, work)
    second.start()
    cows, services = set_up(service, "both"), [service, second]
    books, stop, threads = [], threading.Event(), []
    # each service gets the same rows at the same time, and rows of its own
    for one in services:
        for share, target in ((cows[:25], post_singles), (cows[100:300], post_bulks)):
            books.append(Book())
            threads.append(threading.Thread(target=target, args=(one, "both", share, books[-1], stop)))
    for one, share in zip(services, (cows[25:50], cows[50:75])):
        books.append(Book())
        threads.append(threading.Thread(target=post_singles, args=(one, "both", share, books[-1], stop)))
    for thread in threads:
        thread.start()
    time.sleep(10)
    stop.set()
    for thread in threads:
        thread.join()
    problems = [book.problem for book in books if book.problem]
    check(not problems, f"no post was refused: {problems[:1]}")
    acknowledged = {key for book in books for key in book.acknowledged}
    found = [read_back(one, "both") for one in services]
    check(found[0] == found[1], "both services list the same")
    check(acknowledged <= set(found[0]), f"of {len(acknowledged)} acknowledged rows, {sum(book.requests for book in books)} requests, none is lost")
    strange = [key for key, kg in found[0].items() if not any(kg in book.sent.get(key, []) for book in books)]
    check(not strange, "and none is there that was not sent, nor twice")
    count, distinct, least, most, last = changes_of("both")
    check(count == distinct == most == last and least == 1, f"{count} changes have the numbers {least} to {most} without gap, the herd's last is {last}")

    # what one service has learned of a herd must not outlive a write through the other
    cow, client = "K-0000", [Client(one) for one in services]
    path = f"/v1/herds/both/animals/example.eartag:{cow}/lactations/1?asOf=2000-06-01"
    before = client[0].call("GET", path)[1]["projected305"]["value"]
    rows = [test_day(cow, 35 + 30 * month, 60) for month in range(4)]
    expect(client[1].bulk("/v1/herds/both/test-days/bulk", rows), 200)
    after = [one.call("GET", path)[1]["projected305"]["value"] for one in client]
    check(after[0] == after[1] != before, f"a write through one is seen in the other's projection at once: {before:.0f} to {after[0]:.0f} and {after[1]:.0f} kg")
    across(services, cows)
    for one in services:
        one.kill()


def across(services, cows):
    """What a tool holds in its hand from one service must be good at the other."""
    first, second = [Client(one) for one in services]
    path, pages, turn = "/v1/herds/both/test-days?limit=1000", [], itertools.cycle((first, second))
    while path:
        page = next(turn).call("GET", path)[1]
        pages += [item["id"] for item in page["items"]]
        path = page.get("next")
    whole = len(read_back(services[0], "both"))
    check(len(pages) == len({*pages}) == whole, f"a list of {whole} read with each page from the other service, by its cursor, is whole")
    feeds = [read_changes(one, "both") for one in services]
    check(feeds[0] == feeds[1] and feeds[0][1] == 0, f"the change feed of {feeds[0][0]} is the same from both")

    body = json.dumps(test_day(cows[0], 3000, 21))
    once = {"Idempotency-Key": "across-the-two"}
    made = first.send("POST", "/v1/herds/both/test-days", body, "application/json", once)
    again = second.send("POST", "/v1/herds/both/test-days", body, "application/json", once)
    check(made[0] == again[0] == 201 and made[2] == again[2] and again[1].get("Idempotency-Replayed") == "true",
          "a request sent again with its idempotency key to the other service gets the first answer")

    new = json.dumps({"label": "for a while", "scopes": ["read"], "herds": ["both"]})
    key = first.call("POST", "/v1/keys", new)[1]
    held = {"X-API-Key": key["key"]}
    good = second.send("GET", "/v1/herds/both", headers=held)[0]
    form = "application/x-www-form-urlencoded"
    signed = first.send("POST", "/pages/sign-in", f"key={key['key']}", form)
    cookie = {"Cookie": (signed[1].get("Set-Cookie") or "").split(";")[0], "X-API-Key": None}
    seen = second.send("GET", "/pages/herds/both", headers=cookie)[0]
    check(good == 200 and signed[0] == 303 and seen == 200, f"a key made through one and a page signed in to through it are good at the other: {good} {seen}")
    first.send("DELETE", f"/v1/keys/{key['id']}")
    gone = second.send("GET", "/v1/herds/both", headers=held)
    out = second.send("GET", "/pages/herds/both", headers=cookie)[0]
    check(gone[0] == 401 and "key-revoked" in gone[2] and out != 200, f"revoked through one they are good at neither, at once: {gone[0]} {out}")


def main():
    what, jar, work = sys.argv[1:4]
    if not pathlib.Path(jar).exists():
        sys.exit(f"{jar} is not there: mvn -B -DskipTests package")
    print(f"\n{what}, {'PostgreSQL' if 'postgresql' in jar else 'SQLite'}", flush=True)
    service = Service(jar, work)
    try:
        {"disk-full": disk_full, "server-away": server_away, "stop-in-bulk": stop_in_bulk, "two-services": two_services}[what](service, work)
    finally:
        if getattr(service, "process", None) and service.process.poll() is None:
            service.process.kill()
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
