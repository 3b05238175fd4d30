"""The client of posts.sh: single posts beside the fsync rate of the disk. Standard library and wrk."""

import json
import os
import pathlib
import re
import signal
import subprocess
import sys
import time

from kill_nine import CALVED, KEY, SCHEME, Client, Service, expect

HERD = "posts"
COWS = 1_000
CLIENTS = 8
WARM_UP_SECONDS = 10
PROBE_SECONDS = 3

# each cow once a day, then the next day: every post is a new record
POSTS = f"""
local sent = %d
request = function()
  local cow, day = sent %% {COWS}, math.floor(sent / {COWS})
  sent = sent + 1
  local body = string.format(
    '{{"animal":{{"scheme":"{SCHEME}","id":"%%012d"}},"date":"%%s","milkKg":27.4,"fatPct":4.1,"sccThousandPerMl":84}}',
    cow, os.date("!%%Y-%%m-%%d", {int((CALVED - type(CALVED)(1970, 1, 1)).days) + 5} * 86400 + day * 86400))
  return wrk.format("POST", "/v1/herds/{HERD}/test-days", {{["X-API-Key"] = "{KEY}", ["Content-Type"] = "application/json"}}, body)
end
"""
READS = f"""
local sent = 0
request = function()
  sent = sent + 1
  return wrk.format("GET", string.format("/v1/herds/{HERD}/animals/{SCHEME}%%%%3A%%012d", sent %% {COWS}), {{["X-API-Key"] = "{KEY}"}})
end
""" % ()


def syncs_a_second(folder):
    file = os.open(pathlib.Path(folder, "probe"), os.O_CREAT | os.O_WRONLY | os.O_TRUNC)
    block, count, began = b"x" * 4096, 0, time.monotonic()
    while time.monotonic() - began < PROBE_SECONDS:
        os.write(file, block)
        os.fdatasync(file)
        count += 1
    rate = count / (time.monotonic() - began)
    os.close(file)
    os.remove(pathlib.Path(folder, "probe"))
    return rate


def prepare(service):
    client = Client(service)
    client.connection.timeout = 600
    cows = [f"{number:012d}" for number in range(COWS)]
    expect(client.call("POST", "/v1/herds", json.dumps({"code": HERD, "name": HERD, "timeZone": "UTC"})), 201)
    expect(client.bulk(f"/v1/herds/{HERD}/animals/bulk", [{"identifiers": [{"scheme": SCHEME, "id": cow}]} for cow in cows]), 200)
    calvings = [{"animal": {"scheme": SCHEME, "id": cow}, "date": CALVED.isoformat(), "parity": 1} for cow in cows]
    expect(client.bulk(f"/v1/herds/{HERD}/calvings/bulk", calvings), 200)


def wrk(service, work, name, script, seconds):
    file = pathlib.Path(work, f"{name}.lua")
    file.write_text(script)
    return subprocess.Popen(["wrk", "-t1", f"-c{CLIENTS}", f"-d{seconds}s", "--timeout", "60s", "--latency", "-s", str(file),
                             f"http://127.0.0.1:{service.port}"], stdout=subprocess.PIPE, text=True)


def result(run):
    text = run.communicate()[0]
    if "Non-2xx" in text or "Socket errors" in text:
        sys.exit(text)
    return (float(re.search(r"Requests/sec:\s+([\d.]+)", text)[1]), int(re.search(r"(\d+) requests in", text)[1]),
            re.search(r"50%\s+(\S+)", text)[1], re.search(r"99%\s+(\S+)", text)[1])


def main():
    name, jar, seconds, work = sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4]
    service = Service(jar, work, "-Xmx512m")
    service.start()
    prepare(service)
    posted = 0
    for time_of_run in (WARM_UP_SECONDS, seconds):
        before = syncs_a_second(work)
        writers = wrk(service, work, "posts", POSTS % posted, time_of_run)
        readers = wrk(service, work, "reads", READS, time_of_run)
        posts, reads = result(writers), result(readers)
        after = syncs_a_second(work)
        posted += posts[1] + COWS  # those still under way at the end were sent too
    print(f"{name}, {CLIENTS} writers and {CLIENTS} readers, {seconds} s, load {os.getloadavg()[0]:.1f}")
    print(f"  fdatasync {before:,.0f} a second before, {after:,.0f} after")
    print(f"  posts {posts[0]:,.0f} a second, {100 * posts[0] / ((before + after) / 2):.1f} % of that; p50 {posts[2]}, p99 {posts[3]}")
    print(f"  reads {reads[0]:,.0f} a second; p50 {reads[2]}, p99 {reads[3]}", flush=True)
    service.process.send_signal(signal.SIGTERM)
    service.process.wait()


if __name__ == "__main__":
    main()
