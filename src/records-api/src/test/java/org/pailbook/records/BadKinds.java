package org.pailbook.records;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Bad requests to every kind of record: faults that are common to kinds, and those particular to one. */
final class BadKinds {
    private static final List<BadRequest> PARTICULAR = List.of(
            without("milkings", "no milk weight", "milkKg"),
            without("milkings", "no milking of the day", "milkingOfDay"),
            changed(
                    "milkings",
                    "an instant without offset",
                    "\"2025-11-12T06:30:00Z\"",
                    "\"2025-11-12T06:30:00\"",
                    "not-an-instant",
                    "/startedAt"),
            changed(
                    "milkings",
                    "a date for an instant",
                    "\"2025-11-12T06:30:00Z\"",
                    "\"2025-11-12\"",
                    "not-an-instant",
                    "/startedAt"),
            changed("milkings", "a milking nobody knows", "\"am\"", "\"noon\"", "unknown-code", "/milkingOfDay"),
            changed("milkings", "a negative weight", "14.2", "-1", "negative-value", "/milkKg"),
            changed("milkings", "a weight beyond any cow", "14.2", "142", "value-impossible", "/milkKg"),
            changed(
                    "milkings",
                    "a third of two milkings",
                    "\"am\"",
                    "\"third\",\"milkingsPerDay\":2",
                    "milkings-contradict",
                    "/milkingsPerDay"),
            changed(
                    "milkings",
                    "four milkings a day",
                    "\"am\"",
                    "\"am\",\"milkingsPerDay\":4",
                    "out-of-range",
                    "/milkingsPerDay"),
            changed(
                    "milkings",
                    "hours of zero",
                    "\"am\"",
                    "\"am\",\"hoursSincePrevious\":0",
                    "value-impossible",
                    "/hoursSincePrevious"),
            changed("milkings", "weight as text", "14.2", "\"14.2\"", "not-a-number", "/milkKg"),
            changed("services", "an unknown method", "\"insemination\"", "\"Insemination\"", "unknown-code", "/method"),
            changed(
                    "services",
                    "a tenth of the day",
                    "\"serviceOfDay\":1",
                    "\"serviceOfDay\":10",
                    "out-of-range",
                    "/serviceOfDay"),
            changed(
                    "services",
                    "half a service",
                    "\"serviceOfDay\":1",
                    "\"serviceOfDay\":1.5",
                    "not-an-integer",
                    "/serviceOfDay"),
            changed("services", "a sire that is a number", "\"example.bull:4711\"", "4711", "not-a-text", "/sire"),
            changed("services", "an empty sire", "\"example.bull:4711\"", "\"\"", "empty-text", "/sire"),
            changed("services", "an unknown member", "\"serviceOfDay\":1", "\"bull\":\"x\"", "unknown-field", "/bull"),
            without("pregnancy-checks", "no result", "result"),
            changed("pregnancy-checks", "an unknown result", "\"pregnant\"", "\"yes\"", "unknown-code", "/result"),
            changed(
                    "pregnancy-checks",
                    "an unknown method",
                    "\"echography\"",
                    "\"ultrasound\"",
                    "unknown-code",
                    "/method"),
            changed("pregnancy-checks", "a truth for a result", "\"pregnant\"", "true", "not-a-text", "/result"),
            changed(
                    "pregnancy-checks",
                    "an unknown member",
                    "\"pregnant\"",
                    "\"pregnant\",\"days\":30",
                    "unknown-field",
                    "/days"),
            without("breeding-decisions", "no decision", "decision"),
            changed(
                    "breeding-decisions",
                    "an unknown decision",
                    "\"doNotBreed\"",
                    "\"no\"",
                    "unknown-code",
                    "/decision"),
            changed("breeding-decisions", "an empty reason", "\"third mastitis\"", "\" \"", "empty-text", "/reason"),
            without("treatments", "no product", "productName"),
            changed(
                    "treatments",
                    "an end before the start",
                    "\"milkWithheldUntil\"",
                    "\"endedOn\":\"2025-11-01\",\"milkWithheldUntil\"",
                    "end-before-start",
                    "/endedOn"),
            changed("treatments", "a withholding of days", "\"2025-11-19\"", "7", "not-a-date", "/milkWithheldUntil"),
            changed("treatments", "an empty product", "\"from the blue box\"", "\" \"", "empty-text", "/productName"),
            changed(
                    "treatments",
                    "meat until no day",
                    "\"2025-11-28\"",
                    "\"2025-11-31\"",
                    "not-a-date",
                    "/meatWithheldUntil"),
            changed(
                    "treatments",
                    "an unknown member",
                    "\"milkWithheldUntil\"",
                    "\"milkWithholdUntil\":\"2025-11-20\",\"milkWithheldUntil\"",
                    "unknown-field",
                    "/milkWithholdUntil"),
            without("foremilk-checks", "no quarter", "quarter"),
            changed("foremilk-checks", "a fifth quarter", "\"LF\"", "\"MF\"", "unknown-code", "/quarter"),
            without("foremilk-checks", "no finding", "finding"),
            changed("foremilk-checks", "an unknown finding", "\"flakes\"", "\"bad\"", "unknown-code", "/finding"),
            changed(
                    "foremilk-checks",
                    "ill as text",
                    "\"cowIll\":false",
                    "\"cowIll\":\"no\"",
                    "not-a-boolean",
                    "/cowIll"),
            without("foremilk-checks", "no milking", "milkingOfDay"),
            without("tank-readings", "no tank", "tank"),
            changed(
                    "tank-readings",
                    "kilograms and litres",
                    "1240",
                    "1240,\"milkKg\":1277",
                    "two-amounts",
                    "/milkLitres"),
            changed(
                    "tank-readings",
                    "nothing measured",
                    "\"milkLitres\":1240,\"temperatureC\":3.8",
                    "\"note\":\"forgot\"",
                    "nothing-measured",
                    "/"),
            changed("tank-readings", "boiling milk", "3.8", "100", "value-impossible", "/temperatureC"),
            changed("tank-readings", "negative litres", "1240", "-1240", "negative-value", "/milkLitres"),
            changed(
                    "tank-readings",
                    "an instant without offset",
                    "T07:10:00Z",
                    "T07:10:00",
                    "not-an-instant",
                    "/readAt"),
            changed(
                    "tank-readings",
                    "an animal",
                    "\"tank\":\"main\"",
                    "\"tank\":\"main\",\"animal\":{\"id\":\"x\"}",
                    "unknown-field",
                    "/animal"),
            without("tank-pickups", "no tank", "tank"),
            changed("tank-pickups", "no amount", "\"milkKg\":2410", "\"note\":\"forgot\"", "nothing-measured", "/"),
            changed(
                    "tank-pickups",
                    "kilograms and litres",
                    "2410",
                    "2410,\"milkLitres\":2340",
                    "two-amounts",
                    "/milkLitres"),
            changed("tank-pickups", "fat in grams per litre", "4.11", "41.1", "value-impossible", "/fatPct"),
            changed(
                    "tank-pickups",
                    "cells per mL",
                    "4.11",
                    "4.11,\"sccThousandPerMl\":190000",
                    "value-impossible",
                    "/sccThousandPerMl"),
            changed("tank-pickups", "negative milk", "2410", "-1", "negative-value", "/milkKg"),
            changed(
                    "tank-pickups",
                    "a time as a word",
                    "\"2025-11-12T10:40:00Z\"",
                    "\"noon\"",
                    "not-an-instant",
                    "/pickedUpAt"),
            without("milk-uses", "no purpose", "purpose"),
            without("milk-uses", "no weight", "milkKg"),
            changed("milk-uses", "an unknown purpose", "\"calves\"", "\"cats\"", "unknown-code", "/purpose"),
            changed("milk-uses", "negative milk", "64", "-64", "negative-value", "/milkKg"),
            changed("milk-uses", "milk as text", "64", "\"64 kg\"", "not-a-number", "/milkKg"),
            changed("milk-uses", "an unknown member", "64", "64,\"use\":\"x\"", "unknown-field", "/use"),
            without("prices", "no currency", "currency"),
            changed("prices", "an unknown currency", "\"EUR\"", "\"EUX\"", "unknown-currency", "/currency"),
            changed("prices", "a currency in words", "\"EUR\"", "\"euro\"", "text-too-long", "/currency"),
            changed("prices", "no price", "\"milkPricePerKg\":0.46", "\"note\":\"soon\"", "no-price", "/"),
            changed("prices", "a negative price", "0.46", "-0.46", "negative-value", "/milkPricePerKg"),
            changed("prices", "a price as text", "0.46", "\"0,46\"", "not-a-number", "/milkPricePerKg"),
            changed("prices", "an unknown member", "0.46", "0.46,\"milkPrice\":0.4", "unknown-field", "/milkPrice"),
            changed(
                    "settings",
                    "no setting",
                    ",\"waitingDays\":60,\"tankLimit\":\"eu-853-2004\"",
                    "",
                    "no-setting",
                    "/"),
            changed("settings", "too long a wait", "60", "301", "out-of-range", "/waitingDays"),
            changed("settings", "half a day", "60", "60.5", "not-an-integer", "/waitingDays"),
            changed("settings", "an unknown limit", "eu-853-2004", "mars-2100", "unknown-code", "/tankLimit"),
            changed("settings", "an early check", "60", "60,\"checkDays\":17", "out-of-range", "/checkDays"),
            changed("settings", "an early high count", "60", "60,\"highFrom\":99", "out-of-range", "/highFrom"),
            changed("settings", "a long colostrum", "60", "60,\"colostrumDays\":31", "out-of-range", "/colostrumDays"),
            changed("settings", "a negative close call", "60", "60,\"closeCall\":-1", "negative-value", "/closeCall"),
            changed(
                    "settings",
                    "limits as an object",
                    "60",
                    "60,\"warningLimits\":{}",
                    "not-an-array",
                    "/warningLimits"),
            changed(
                    "settings",
                    "a limit of nothing",
                    "60",
                    "60,\"warningLimits\":[{\"field\":\"fatPct\"}]",
                    "no-setting",
                    "/warningLimits/0"),
            changed(
                    "settings",
                    "a limit without a field",
                    "60",
                    "60,\"warningLimits\":[{\"most\":8}]",
                    "required",
                    "/warningLimits/0/field"),
            changed(
                    "settings",
                    "a limit of what has none",
                    "60",
                    "60,\"warningLimits\":[{\"field\":\"waitingDays\",\"most\":90}]",
                    "unknown-code",
                    "/warningLimits/0/field"),
            changed(
                    "settings",
                    "a narrower limit",
                    "60",
                    "60,\"warningLimits\":[{\"field\":\"fatPct\",\"most\":6}]",
                    "limit-not-wider",
                    "/warningLimits/0"),
            changed(
                    "settings",
                    "a limit beyond what can be",
                    "60",
                    "60,\"warningLimits\":[{\"field\":\"calvingIntervalDays\",\"least\":199}]",
                    "limit-not-wider",
                    "/warningLimits/0"),
            changed(
                    "settings",
                    "a limit twice",
                    "60",
                    "60,\"warningLimits\":[{\"field\":\"fatPct\",\"most\":8},{\"field\":\"fatPct\",\"most\":8}]",
                    "named-twice",
                    "/warningLimits/1/field"),
            changed("settings", "milk in litres", "60", "60,\"milkUnit\":\"l\"", "unknown-code", "/milkUnit"),
            changed("settings", "an unknown member", "60", "60,\"vwp\":50", "unknown-field", "/vwp"));

    private BadKinds() {}

    static Stream<BadRequest> all() {
        List<BadRequest> all = new ArrayList<>(PARTICULAR);
        for (RecordExamples example : RecordExamples.ALL) {
            String path = "/v1/herds/{herd}/" + example.kind();
            String day = example.day();
            String kind = example.kind() + ": ";
            all.add(BadRequest.refused(
                    kind + "no day", post(path, without(example.members(), day)), "required", "/" + day));
            if (!example.day().equals("validFrom")) {
                all.add(BadRequest.refused(
                        kind + "tomorrow",
                        post(path, example.members().replaceFirst("(\"" + day + "\":\")\\d{4}", "$12099")),
                        "date-in-future",
                        "/" + day));
            }
            all.add(BadRequest.refused(
                    kind + "null for a note",
                    post(path, example.members() + ",\"source\":null"),
                    "null-value",
                    "/source"));
            all.add(BadRequest.refused(
                    kind + "a source's id without source",
                    post(path, example.members() + ",\"sourceId\":\"7\""),
                    "required",
                    "/source"));
            all.add(BadRequest.parameter(
                    kind + "an unknown parameter",
                    RawRequest.get(path + "?since=2025-01-01"),
                    "unknown-parameter",
                    "since"));
            all.add(BadRequest.of(
                    kind + "a record that is not there",
                    RawRequest.get(path + "/0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55"),
                    404,
                    "not-found",
                    ""));
            if (example.namesAnimal()) {
                all.add(BadRequest.refused(
                        kind + "no animal", post(path, without(example.members(), "animal")), "required", "/animal"));
                all.add(new BadRequest(
                        kind + "an unknown animal",
                        post(path, example.members().replace("A1", "ZZ")),
                        422,
                        "unknown-animal",
                        "unknown-animal",
                        "/animal"));
                all.add(BadRequest.refused(
                        kind + "an animal that left",
                        post(path, example.members().replace("A1", "GONE")),
                        "after-departure",
                        "/" + day));
                all.add(BadRequest.refused(
                        kind + "before birth",
                        post(path, example.members().replaceFirst("(\"" + day + "\":\")\\d{4}", "$12019")),
                        "before-birth",
                        "/" + day));
            } else {
                all.add(BadRequest.parameter(
                        kind + "an animal asked for",
                        RawRequest.get(path + "?animal=x"),
                        "unknown-parameter",
                        "animal"));
            }
        }
        return all.stream();
    }

    private static RecordExamples example(String kind) {
        return RecordExamples.ALL.stream()
                .filter(one -> one.kind().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    private static BadRequest without(String kind, String name, String member) {
        return BadRequest.refused(
                kind + ": " + name,
                post("/v1/herds/{herd}/" + kind, without(example(kind).members(), member)),
                "required",
                "/" + member);
    }

    private static BadRequest changed(String kind, String name, String from, String to, String fault, String place) {
        String members = example(kind).members();
        if (!members.contains(from)) {
            throw new IllegalArgumentException(kind + ": " + name + ": no " + from + " in " + members);
        }
        return BadRequest.refused(
                kind + ": " + name, post("/v1/herds/{herd}/" + kind, members.replace(from, to)), fault, place);
    }

    private static String without(String members, String member) {
        return members.replaceFirst("\"" + member + "\":(\\{[^}]*\\}|\"[^\"]*\"|[^,]*)", "")
                .replace(",,", ",")
                .replaceFirst("^,", "")
                .replaceFirst(",$", "");
    }

    private static RawRequest post(String path, String members) {
        return RawRequest.post(path, "{" + members + "}");
    }
}
