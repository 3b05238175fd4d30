package org.pailbook.records.exchange;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Base64;
import java.util.function.Predicate;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.WireDates;

/** Place in a list, handed out with a page and taken back for the next; opaque to the caller. */
final class Cursor {
    private Cursor() {}

    static String of(LocalDate date, String id) {
        return encode(date + " " + id);
    }

    static String of(String id) {
        return encode(id);
    }

    static Events.Position position(String cursor) {
        String[] parts = decode(cursor).split(" ");
        if (parts.length != 2 || !RecordIds.isId(parts[1])) {
            throw bad();
        }
        return new Events.Position(WireDates.parse(parts[0]).orElseThrow(Cursor::bad), parts[1]);
    }

    /** The place a cursor holds, if it has the shape of what this service hands out for that list. */
    static String place(String cursor, Predicate<String> shape) {
        String place = decode(cursor);
        if (!shape.test(place)) {
            throw bad();
        }
        return place;
    }

    private static String decode(String cursor) {
        try {
            return new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException notOurs) {
            throw bad();
        }
    }

    private static String encode(String place) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(place.getBytes(StandardCharsets.UTF_8));
    }

    private static Problem bad() {
        return new Problem(
                ProblemCode.BAD_CURSOR,
                "Take the address in next as it is.",
                java.util.List.of(Fault.inParameter("cursor", "bad-cursor", "is not one this service gave")));
    }
}
