package org.pailbook.records;

import java.util.List;

/**
 * A good record of each kind, for tests that hold for all of them.
 *
 * @param kind as in the path
 * @param members of the record, without braces
 * @param changed the same record with another content
 * @param other another record, told apart by one part of the key only
 * @param day member that holds the day
 */
record RecordExamples(String kind, String members, String changed, String other, String day) {
    private static final String COW = "\"animal\":" + TestHerd.animal("A1") + ",";

    /** Herd with zone Europe/Dublin, cow A1 calved on 2025-08-19. */
    static final List<RecordExamples> ALL = List.of(
            of("milkings", COW + "\"startedAt\":\"2025-11-12T06:30:00Z\",\"milkingOfDay\":\"am\",\"milkKg\":14.2")
                    .changing("14.2", "14.6")
                    .apart("T06:30:00Z\",\"milkingOfDay\":\"am\"", "T17:02:00Z\",\"milkingOfDay\":\"pm\""),
            of(
                            "services",
                            COW
                                    + "\"date\":\"2025-11-12\",\"serviceOfDay\":1,\"method\":\"insemination\",\"sire\":\"example.bull:4711\"")
                    .changing("4711", "4712")
                    .apart("\"serviceOfDay\":1", "\"serviceOfDay\":2"),
            of("pregnancy-checks", COW + "\"date\":\"2025-12-20\",\"result\":\"pregnant\",\"method\":\"echography\"")
                    .changing("\"pregnant\"", "\"empty\"")
                    .apart("2025-12-20", "2025-12-27"),
            of(
                            "breeding-decisions",
                            COW + "\"date\":\"2025-11-12\",\"decision\":\"doNotBreed\",\"reason\":\"third mastitis\"")
                    .changing("third mastitis", "lame")
                    .apart("2025-11-12", "2025-12-12"),
            of(
                            "treatments",
                            COW
                                    + "\"startedOn\":\"2025-11-12\",\"productName\":\"from the blue box\",\"milkWithheldUntil\":\"2025-11-19\",\"meatWithheldUntil\":\"2025-11-28\"")
                    .changing("11-19", "11-20")
                    .apart("blue", "red"),
            of(
                            "foremilk-checks",
                            COW
                                    + "\"date\":\"2025-11-12\",\"milkingOfDay\":\"am\",\"quarter\":\"LF\",\"finding\":\"flakes\",\"cowIll\":false")
                    .changing("flakes", "blood")
                    .apart("\"LF\"", "\"RR\""),
            of(
                            "tank-readings",
                            "\"tank\":\"main\",\"readAt\":\"2025-11-12T07:10:00Z\",\"milkLitres\":1240,\"temperatureC\":3.8")
                    .changing("1240", "1250")
                    .apart("\"main\"", "\"small\""),
            of(
                            "tank-pickups",
                            "\"tank\":\"main\",\"pickedUpAt\":\"2025-11-12T10:40:00Z\",\"milkKg\":2410,\"fatPct\":4.11")
                    .changing("2410", "2420")
                    .apart("T10:40", "T22:40"),
            of("milk-uses", "\"date\":\"2025-11-12\",\"purpose\":\"calves\",\"milkKg\":64")
                    .changing("64", "66")
                    .apart("calves", "cheese"),
            of("prices", "\"validFrom\":\"2025-11-01\",\"currency\":\"EUR\",\"milkPricePerKg\":0.46")
                    .changing("0.46", "0.48")
                    .apart("2025-11-01", "2030-12-01"),
            of("settings", "\"validFrom\":\"2025-11-01\",\"waitingDays\":60,\"tankLimit\":\"eu-853-2004\"")
                    .changing("60", "70")
                    .apart("2025-11-01", "2030-12-01"));

    private static RecordExamples of(String kind, String members) {
        String day = members.replaceAll(".*\"(startedAt|date|startedOn|readAt|pickedUpAt|validFrom)\".*", "$1");
        return new RecordExamples(kind, members, members, members, day);
    }

    private RecordExamples changing(String from, String to) {
        return new RecordExamples(kind, members, members.replace(from, to), other, day);
    }

    private RecordExamples apart(String from, String to) {
        return new RecordExamples(kind, members, changed, members.replace(from, to), day);
    }

    boolean namesAnimal() {
        return members.contains("\"animal\"");
    }

    String json() {
        return "{" + members + "}";
    }

    /** With further members. */
    String json(String more) {
        return "{" + members + "," + more + "}";
    }

    @Override
    public String toString() {
        return kind;
    }
}
