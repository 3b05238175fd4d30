package org.pailbook.records.page;

import java.util.List;

/** How the herd's tables are read in a spreadsheet, in R and in Python; {@code src/benchmarks/tables.sh} does what it says. */
record HowToPage(Shown shown, String list, List<String> addresses, String r, String python) {
    private static final List<String> TABLES = List.of(
            "animals",
            "test-days",
            "lactations",
            "projections",
            "herd-summary",
            "events",
            "findings",
            "culling-ranking",
            "breeding-worklist",
            "udder-health",
            "milk-withheld");

    /** @param base address of the service as the reader's browser knows it, without a slash at the end */
    static HowToPage of(Shown shown, String base) {
        String list = base + "/v1/herds/" + shown.code() + "/reports";
        String table = list + "/test-days.csv";
        return new HowToPage(
                shown,
                list,
                TABLES.stream().map(name -> list + "/" + name + ".csv").toList(),
                """
                from <- url("%s", headers = c("X-API-Key" = "KEY"))
                tests <- read.csv(from, fileEncoding = "UTF-8-BOM", colClasses = c(animal_id = "character"))
                """.formatted(table),
                """
                import csv, io, urllib.request
                answer = urllib.request.urlopen(urllib.request.Request("%s", headers={"X-API-Key": "KEY"}))
                tests = list(csv.DictReader(io.TextIOWrapper(answer, "utf-8-sig")))
                """.formatted(table));
    }
}
