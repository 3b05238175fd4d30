package org.pailbook.records.page;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.WireDates;

/** For which day, and in which unit. */
public class PageQuery {
    private static final int MOST = 1_000_000;

    @QueryParam("asOf")
    String asOf;

    @QueryParam("unit")
    String unit;

    /** The same from a form. */
    static PageQuery of(String asOf, String unit) {
        PageQuery query = new PageQuery();
        query.asOf = asOf;
        query.unit = unit;
        return query;
    }

    /** @param today in the herd's zone */
    LocalDate day(LocalDate today) {
        return WireDates.parameter("asOf", asOf).orElse(today);
    }

    boolean asksForDay() {
        return asOf != null;
    }

    MilkUnit unit(MilkUnit usual) {
        return unit == null
                ? usual
                : MilkUnit.of(unit).orElseThrow(() -> Problem.badParameter("unit", "expected kg or lb", unit));
    }

    /** A whole number from 1 in a parameter; {@code without} if it was not sent. */
    static int number(String name, String text, int without) {
        if (text == null) {
            return without;
        }
        if (!text.matches("[1-9][0-9]{0,6}") || Integer.parseInt(text) > MOST) {
            throw Problem.badParameter(name, "expected a whole number from 1", text);
        }
        return Integer.parseInt(text);
    }
}
