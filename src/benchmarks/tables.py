"""See tables.sh."""
import csv
import html
import io
import json
import os
import re
import socket
import subprocess
import sys
import urllib.request
import xml.etree.ElementTree as ElementTree

KEY = "tables-of-a-small-herd"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
NAMES = {"007": "=1+1", "0042": "@SUM(A1)", "0100": "\u05e4\u05e8\u05d4", "0101": "-2+3"}
failed = []


def promise(words, kept, seen=""):
    print(("yes " if kept else "NO  ") + words + ("" if kept else f": {seen}"))
    if not kept:
        failed.append(words)


def free_port():
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]


def ask(address, body=None, kind="application/json"):
    request = urllib.request.Request(address, data=body, headers={"X-API-Key": KEY, "Content-Type": kind, "Accept": "*/*"})
    with urllib.request.urlopen(request) as answer:
        return answer.read()


def fill(base):
    ask(f"{base}/v1/herds", json.dumps({"code": "tables", "name": "Tables", "timeZone": "Europe/Dublin"}).encode())
    for tag, name in NAMES.items():
        cow = {"scheme": "example.eartag", "id": tag}
        ask(f"{base}/v1/herds/tables/animals", json.dumps({"identifiers": [cow], "name": name, "breed": "HOL"}).encode())
        ask(f"{base}/v1/herds/tables/calvings", json.dumps({"animal": cow, "date": "2025-08-19", "parity": 2}).encode())
        ask(f"{base}/v1/herds/tables/test-days",
            json.dumps({"animal": cow, "date": "2025-09-16", "milkKg": 31.25, "fatPct": 4.1}).encode())


def opened(folder, name):
    """What the spreadsheet program took each cell of the first sheet for: rows of (type, value, formula)."""
    subprocess.run(["soffice", "--headless", f"-env:UserInstallation=file://{folder}/profile", "--convert-to", "fods",
                    "--outdir", folder, f"{folder}/{name}"], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    sheet = ElementTree.parse(f"{folder}/{name.rsplit('.', 1)[0]}.fods").getroot().find(f".//{TABLE}table")
    rows = []
    for row in sheet.iter(f"{TABLE}table-row"):
        cells = []
        for cell in row.findall(f"{TABLE}table-cell"):
            kind = cell.get(f"{OFFICE}value-type")
            shown = "".join(part.text or "" for part in cell.iter(f"{TEXT}p"))
            value = cell.get(f"{OFFICE}date-value") or cell.get(f"{OFFICE}value") or shown
            for _ in range(min(60, int(cell.get(f"{TABLE}number-columns-repeated", "1")))):
                cells.append((kind, value, cell.get(f"{TABLE}formula")))
        rows.append(cells)
    return rows


def check_sheet(what, rows, dates_and_tags):
    header = [value for _, value, _ in rows[0]]
    column = {name: header.index(name) for name in ("animal_id", "date", "milk_kg")}
    first = next((row for row in rows[1:] if len(row) > column["animal_id"] and row[column["animal_id"]][1] in ("007", "7")), None)
    if first is None:
        promise(f"{what}: the first cow is there", False, rows[:3])
        return
    tag, date, milk = (first[column[name]] for name in ("animal_id", "date", "milk_kg"))
    if dates_and_tags:
        promise(f"{what}: an ear tag keeps its zeros", tag[:2] == ("string", "007"), tag)
    promise(f"{what}: a date is a date", date[0] == "date" and date[1].startswith("2025-09-16"), date)
    promise(f"{what}: a weight is a number", milk[:2] == ("float", "31.25"), milk)


def check_names(what, rows):
    header = [value for _, value, _ in rows[0]]
    cells = [cell for row in rows for cell in row]
    promise(f"{what}: nothing is a formula", all(formula is None for _, _, formula in cells), [c for c in cells if c[2]][:3])
    names = {row[header.index("name")][1].lstrip("'") for row in rows[1:] if len(row) > header.index("name")}
    promise(f"{what}: names are as entered", set(NAMES.values()) <= names, names)


def how_to(base):
    page = ask(f"{base}/pages/herds/tables/how-to").decode()
    return [html.unescape(text).replace('"KEY"', f'"{KEY}"') for text in re.findall(r"<pre[^>]*>(.*?)</pre>", page, re.S)]


def check_programs(base, folder):
    r, python = how_to(base)
    told = subprocess.run(["Rscript", "-e", r + '\ncat(tests$animal_id[1], is.numeric(tests$milk_kg), tests$milk_kg[1], tests$date[1])'],
                          capture_output=True, text=True)
    promise("R: the lines of the page read the table", told.stdout == "007 TRUE 31.25 2025-09-16", told.stdout + told.stderr)
    told = subprocess.run([sys.executable, "-c", python + '\nprint(tests[0]["animal_id"], tests[0]["milk_kg"], len(tests))'],
                          capture_output=True, text=True)
    promise("Python: the lines of the page read the table", told.stdout.strip() == f"007 31.25 {len(NAMES)}", told.stdout + told.stderr)


def check_semicolon(base):
    text = ask(f"{base}/v1/herds/tables/reports/test-days.csv?locale=semicolon").decode("utf-8-sig")
    row = next(csv.DictReader(io.StringIO(text), delimiter=";"))
    promise("semicolon: numbers have a decimal comma", row["milk_kg"] == "31,25", row)


def main(jar, folder):
    base = f"http://127.0.0.1:{free_port()}"
    environment = dict(os.environ, PAILBOOK_ADMIN_KEY=KEY, QUARKUS_HTTP_PORT=base.rsplit(":", 1)[1])
    service = subprocess.Popen(["java", "-Xmx512m", "-XX:+UseParallelGC", "-jar", jar], env=environment, stdout=subprocess.PIPE, text=True)
    try:
        for line in service.stdout:
            if "Listening on" in line:
                break
        fill(base)
        for name in ("test-days.xlsx", "test-days.csv", "animals.xlsx", "animals.csv"):
            with open(f"{folder}/{name}", "wb") as file:
                file.write(ask(f"{base}/v1/herds/tables/reports/{name}"))
            rows = opened(folder, name)
            what = "workbook" if name.endswith("xlsx") else "CSV"
            if name.startswith("test-days"):
                check_sheet(what, rows, what == "workbook")
            else:
                check_names(what, rows)
        check_programs(base, folder)
        check_semicolon(base)
    finally:
        service.terminate()
        service.wait()
    sys.exit(1 if failed else 0)


main(*sys.argv[1:])
