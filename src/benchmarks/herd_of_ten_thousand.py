"""The client of herd-of-ten-thousand.sh. Standard library only."""

import http.client
import json
import os
import pathlib
import random
import socket
import subprocess
import sys
import time
from datetime import date, timedelta

KEY = "ten-thousand-admin-key"
AS_OF = date(2025, 6, 30)
SCHEME = "example.eartag"
SECONDS_TO_START = 90
# what the service does by itself after a start is over by then
REHEARSED_AFTER = 25
LISTS = ["reports/projections.csv", "culling-ranking", "breeding-worklist", "breeding-summary", "udder-health", "milk-withheld", "animals/example.eartag:C0/outlook", "animals/example.eartag:C0/summary"]


def start(jar, work):
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    log = pathlib.Path(work, "service.log").open("wb")
    environment = dict(os.environ, QUARKUS_HTTP_PORT=str(port), QUARKUS_HTTP_HOST="127.0.0.1", PAILBOOK_ADMIN_KEY=KEY)
    process = subprocess.Popen(["java", "-Xmx512m", "-XX:+UseParallelGC", "-jar", jar], env=environment, stdin=subprocess.DEVNULL, stdout=log, stderr=log)
    deadline = time.monotonic() + SECONDS_TO_START
    while time.monotonic() < deadline and process.poll() is None:
        try:
            if call(port, "GET", "/v1/me")[0] == 200:
                return process, port
        except OSError:
            time.sleep(0.2)
    sys.exit("the service did not start:\n" + pathlib.Path(work, "service.log").read_text(errors="replace")[-3000:])


def call(port, method, path, body=None, media_type="application/json"):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=600)
    headers = {"X-API-Key": KEY}
    if body is not None:
        headers["Content-Type"] = media_type
    connection.request(method, path, body, headers)
    answer = connection.getresponse()
    return answer.status, answer.read()


def require(answer, *statuses):
    if answer[0] not in statuses:
        sys.exit(f"{answer[0]} {answer[1][:500]!r}")
    return answer[1]


def lactation(rng, calved):
    """Monthly tests up to the as-of day: about 30 kg, a little up, then down."""
    level = rng.gauss(30, 5)
    day = rng.randint(8, 35)
    while calved + timedelta(days=day) <= AS_OF and day <= 330:
        kg = level * (0.75 + 0.3 * min(day, 50) / 50 - 0.0018 * max(0, day - 50)) + rng.gauss(0, 1.5)
        yield {
            "date": (calved + timedelta(days=day)).isoformat(),
            "milkKg": round(max(4, kg), 1),
            "fatPct": round(rng.gauss(4.1, 0.4), 2),
            "proteinPct": round(rng.gauss(3.4, 0.25), 2),
            "sccThousandPerMl": rng.randint(20, 400),
        }
        day += 30


def post_herd(port, cows):
    rng = random.Random(10_000)
    require(call(port, "POST", "/v1/herds", json.dumps({"code": "big", "name": "Big", "timeZone": "UTC"})), 201)
    animals, calvings, tests, services, checks, treatments = [], [], [], [], [], []
    for cow in range(cows):
        animal = {"scheme": SCHEME, "id": f"C{cow}"}
        calved = AS_OF - timedelta(days=rng.randint(10, 300))
        animals.append({"identifiers": [animal], "breed": rng.choice(["HOL", "JER", "RDM"]), "sex": "female"})
        calvings.append({"animal": animal, "date": calved.isoformat(), "parity": rng.randint(1, 4)})
        tests += [{"animal": animal, **test} for test in lactation(rng, calved)]
        served = calved + timedelta(days=rng.randint(50, 90))
        while served <= AS_OF:
            services.append({"animal": animal, "date": served.isoformat()})
            checked = served + timedelta(days=35)
            took = rng.random() < 0.4
            if checked <= AS_OF:
                checks.append({"animal": animal, "date": checked.isoformat(), "result": "pregnant" if took else "empty"})
            if took:
                break
            served = checked + timedelta(days=rng.randint(1, 21))
        if rng.random() < 0.1:
            started = AS_OF - timedelta(days=rng.randint(0, 9))
            until = started + timedelta(days=rng.randint(2, 8))
            treatments.append({"animal": animal, "startedOn": started.isoformat(), "productName": "a product", "milkWithheldUntil": until.isoformat()})
    prices = [{"validFrom": "2024-01-01", "currency": "EUR", "milkPricePerKg": 0.45, "heiferPrice": 1700, "cullPrice": 832}]
    for kind, rows in (("animals", animals), ("calvings", calvings), ("test-days", tests), ("services", services), ("pregnancy-checks", checks),
                       ("treatments", treatments), ("prices", prices)):
        for first in range(0, len(rows), 50_000):
            body = "\n".join(map(json.dumps, rows[first : first + 50_000])).encode()
            report = json.loads(require(call(port, "POST", f"/v1/herds/big/{kind}/bulk", body, "application/x-ndjson"), 200))
            if report["refused"]:
                sys.exit(str(report)[:1000])
    return len(tests)


def seconds_of_summary(port, cows):
    begun = time.perf_counter()
    body = require(call(port, "GET", f"/v1/herds/big/summary?asOf={AS_OF}"), 200)
    seconds = time.perf_counter() - begun
    lines = json.loads(body)["cowsInMilk"]
    if len(lines) != cows or not all(line["interval80"]["low"] < line["projected305Kg"] for line in lines):
        sys.exit("not every cow was projected")
    return seconds


def seconds_of_list(port, path):
    begun = time.perf_counter()
    require(call(port, "GET", f"/v1/herds/big/{path}?asOf={AS_OF}"), 200)
    return time.perf_counter() - begun


def seconds_of_stateless(port, lactations):
    rng = random.Random(2_000)

    def one(name, calved):
        return {"id": name, "animal": name, "parity": rng.randint(1, 4), "breed": "HOL", "calvingDate": calved.isoformat(),
                "testDays": list(lactation(rng, calved))}

    body = json.dumps({
        "asOf": AS_OF.isoformat(),
        "history": [one(f"h{i}", AS_OF - timedelta(days=rng.randint(300, 900))) for i in range(lactations)],
        "lactations": [one(f"p{i}", AS_OF - timedelta(days=rng.randint(10, 300))) for i in range(lactations)],
    })
    begun = time.perf_counter()
    answer = require(call(port, "POST", "/v1/calculate/projections", body), 200)
    seconds = time.perf_counter() - begun
    if len(json.loads(answer)["results"]) != lactations:
        sys.exit("not every lactation was projected")
    return seconds


def changed(port, kg):
    row = {"animal": {"scheme": SCHEME, "id": "C0"}, "date": AS_OF.isoformat(), "milkKg": kg}
    require(call(port, "POST", "/v1/herds/big/test-days", json.dumps(row)), 200, 201)


def lists_anew(port, paths, rounds):
    for path in paths:
        taken = []
        for turn in range(rounds):
            changed(port, 30 + turn)
            taken.append(seconds_of_list(port, path))
        print(f"{path} anew:", ", ".join(f"{seconds:.2f}" for seconds in taken), "s")


def main(jar, work, cows, rounds, first):
    process, port = start(jar, work)
    begun = time.monotonic()
    try:
        tests = post_herd(port, cows)
        time.sleep(max(0, REHEARSED_AFTER - (time.monotonic() - begun)))
        print(f"{cows} cows in milk, {tests} test days; {time.monotonic() - begun:.0f} s after the start:")
        lists_anew(port, first, rounds)
        for turn in range(rounds):
            cold = seconds_of_summary(port, cows)
            again = seconds_of_summary(port, cows)
            print(f"herd summary anew {cold:.2f} s, the same asked again {again:.2f} s")
            changed(port, 20 + turn)
        lists_anew(port, LISTS, rounds)
        for _ in range(rounds):
            print(f"2,000 posted lactations with 2,000 in the history: {seconds_of_stateless(port, 2_000):.2f} s")
        peak = [line for line in pathlib.Path(f"/proc/{process.pid}/status").read_text().splitlines() if line.startswith("VmHWM")]
        print("largest resident size of the service:", *peak[0].split()[1:])
    finally:
        process.terminate()
        process.wait()


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4]), sys.argv[5:])
