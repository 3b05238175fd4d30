"""The client of reads.sh. Standard library only; wrk does the asking."""

import http.client
import json
import os
import pathlib
import re
import subprocess
import sys
import time

from herd_of_ten_thousand import AS_OF, KEY, SCHEME, call, post_herd, require, start

SECONDS = 5
CONNECTIONS = 8
ANEW = 3


def wrk(port, path, work, headers=(), lua=None):
    """Requests a second, p50 and p99 in ms; every answer must be a success."""
    command = ["wrk", "-t1", f"-c{CONNECTIONS}", f"-d{SECONDS}s", "--latency", "-H", f"X-API-Key: {KEY}"]
    for header in headers:
        command += ["-H", header]
    if lua:
        script = pathlib.Path(work, "paths.lua")
        script.write_text(lua)
        command += ["-s", str(script)]
    out = subprocess.run([*command, f"http://127.0.0.1:{port}{path}"], check=True, capture_output=True, text=True).stdout
    if "Non-2xx" in out and not headers:
        sys.exit(out)
    unit = {"us": 0.001, "ms": 1, "s": 1000}

    def latency(share):
        number, suffix = re.search(rf"{share}%\s+([\d.]+)(us|ms|s)", out).groups()
        return float(number) * unit[suffix]

    return float(re.search(r"Requests/sec:\s+([\d.]+)", out).group(1)), latency(50), latency(99)


def seconds(port, path):
    begun = time.perf_counter()
    require(call(port, "GET", path), 200)
    return time.perf_counter() - begun


def anew(port, path, cow):
    """Seconds of an answer each time after a test day was posted."""
    taken = []
    for turn in range(ANEW):
        row = {"animal": {"scheme": SCHEME, "id": f"C{cow}"}, "date": AS_OF.isoformat(), "milkKg": 30 + turn / 10}
        require(call(port, "POST", "/v1/herds/big/test-days", json.dumps(row)), 200, 201)
        taken.append(seconds(port, path))
    return min(taken)


def resident_mb(process):
    status = pathlib.Path(f"/proc/{process.pid}/status").read_text()
    return int(re.search(r"VmRSS:\s+(\d+)", status).group(1)) // 1024


def one_herd(jar, work, cows):
    os.environ["PAILBOOK_DATA"] = str(pathlib.Path(work, f"data-{cows}"))
    process, port = start(jar, work)
    try:
        tests = post_herd(port, cows)
        herd = f"/v1/herds/big/summary?asOf={AS_OF}"
        cow = f"/v1/herds/big/animals/{SCHEME}:C0/summary?asOf={AS_OF}"
        body = json.loads(require(call(port, "GET", herd), 200))
        if len(body["cowsInMilk"]) != cows:
            sys.exit("not every cow is in the summary")
        if json.loads(require(call(port, "GET", cow), 200))["animal"]["id"] != "C0":
            sys.exit("that is another cow")
        for path in ("/v1/me", herd, cow):
            wrk(port, path, work)  # a JVM just started is slow
        print(f"\n{cows} cows, {tests} test days; load {os.getloadavg()[0]:.1f}", flush=True)
        trivial = wrk(port, "/v1/me", work)
        # other cows than were asked for before, so that nothing is given again; each is computed once for each round through the herd
        others = f"""
local n = 0
request = function()
  n = n + 1
  return wrk.format("GET", "/v1/herds/big/animals/{SCHEME}:C" .. (n * 7 % {cows}) .. "/summary?asOf=" .. os.date("!%Y-%m-%d", {int(time.mktime(AS_OF.timetuple()))} + 86400 * (1 + math.floor(n / {cows}))), {{["X-API-Key"] = "{KEY}"}})
end
"""
        tag = tag_of(port, herd)
        rows = [
            ("/v1/me", trivial),
            ("cow summary, again", wrk(port, cow, work)),
            ("cow summary, computed", wrk(port, cow, work, lua=others)),
            ("herd summary, again", wrk(port, herd, work)),
            ("herd summary, If-None-Match", wrk(port, herd, work, [f"If-None-Match: {tag}"])),
        ]
        for name, (rate, half, most) in rows:
            print(f"  {name:<30}{rate:>10.0f}/s{rate / trivial[0]:>9.4f} of /v1/me   p50 {half:.2f} ms   p99 {most:.2f} ms", flush=True)
        print(f"  after a posted test day, best of {ANEW}: herd summary {anew(port, herd, 0):.3f} s, cow summary {anew(port, cow, 0):.3f} s", flush=True)
        print(f"  resident {resident_mb(process)} MB", flush=True)
    finally:
        process.kill()
        process.wait()


def tag_of(port, path):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=600)
    connection.request("GET", path, headers={"X-API-Key": KEY})
    answer = connection.getresponse()
    answer.read()
    return answer.headers["ETag"]


def main():
    jar, work, *sizes = sys.argv[1:]
    if not pathlib.Path(jar).exists():
        sys.exit(f"{jar} is not there: mvn -B -DskipTests package")
    for size in " ".join(sizes).split():
        one_herd(jar, work, int(size))


if __name__ == "__main__":
    main()
