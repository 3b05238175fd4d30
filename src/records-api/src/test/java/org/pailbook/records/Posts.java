package org.pailbook.records;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Bodies for the stateless addresses, and figures known from elsewhere that go into them. */
final class Posts {
    static final LocalDate CALVING = LocalDate.of(2023, 1, 1);

    /**
     * Test days C01 of the open milk-recording data (data set milkman of R package doBy 4.7.2, there after Friggens, Ridder and Lovendahl
     * 2007, J. Dairy Sci. 90:5453-5467).
     */
    static final double[] C01_DAYS = {15, 45, 72, 103, 132, 165, 192, 227, 258, 283};

    static final double[] C01_KG = {23.656, 28.23, 28.291, 27.473, 25.668, 24.293, 21.667, 23.001, 17.844, 19.671};

    /**
     * The worked example of the test interval method in ICAR's Guidelines, Section 2; rows from memory: calving 25 March 2001, dry 3 January
     * 2002.
     */
    static final String[] ICAR_DATES = {
        "2001-04-08", "2001-05-06", "2001-06-05", "2001-07-07", "2001-08-02",
        "2001-08-30", "2001-09-25", "2001-10-27", "2001-11-22", "2001-12-20"
    };

    static final double[] ICAR_MILK_KG = {28.2, 24.8, 26.6, 23.2, 20.2, 17.8, 13.2, 9.6, 5.8, 4.4};
    static final double[] ICAR_FAT_PCT = {3.65, 3.45, 3.40, 3.55, 3.85, 4.05, 4.45, 4.65, 4.95, 5.25};
    static final String ICAR_MEMBERS =
            "\"calvingDate\":\"2001-03-25\",\"endDate\":\"2002-01-03\",\"parity\":3,\"breed\":\"RDC\",\"testDays\":";

    private Posts() {}

    /** Made at the first post, when the service is up. */
    private static final class Administrator {
        static final TestHerd KEY = TestHerd.make();
    }

    /** Posts to a stateless address with the administrator's key. */
    static Answer calculate(String what, String body) {
        return calculate(Administrator.KEY, what, body);
    }

    /** Posts to a stateless address. */
    static Answer calculate(TestHerd as, String what, String body) {
        return as.send("POST", "/v1/calculate/" + what, TestHerd.JSON, body);
    }

    /** A lactation from {@link #CALVING} on, weighed on those days. @param members further ones, each with its comma behind */
    static String lactation(String members, double[] daysInMilk, double[] milkKg) {
        List<String> tests = new ArrayList<>();
        for (int i = 0; i < daysInMilk.length; i++) {
            tests.add("{\"date\":\"" + CALVING.plusDays((long) daysInMilk[i]) + "\",\"milkKg\":" + milkKg[i] + "}");
        }
        return "{" + members + "\"calvingDate\":\"" + CALVING + "\",\"parity\":2,\"testDays\":["
                + String.join(",", tests) + "]}";
    }

    static String icarTestDays() {
        List<String> tests = new ArrayList<>();
        for (int i = 0; i < ICAR_DATES.length; i++) {
            tests.add("{\"date\":\"%s\",\"milkKg\":%s,\"fatPct\":%s}"
                    .formatted(ICAR_DATES[i], ICAR_MILK_KG[i], ICAR_FAT_PCT[i]));
        }
        return "[" + String.join(",", tests) + "]";
    }
}
