package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A service as it counts: inseminations up to three days apart are one (ours), and the last of them is taken for the conception.
 *
 * @param firstDate the first insemination of it
 * @param date the last insemination of it
 * @param sireBreed of the last one; empty text if not recorded
 * @param outcome as far as is known
 */
public record CountedService(LocalDate firstDate, LocalDate date, String sireBreed, Outcome outcome) {
    static final int SAME_SERVICE_DAYS = 3;

    /** What came of a service. */
    public enum Outcome {
        /** She conceived, as a check, the age of the pregnancy, an abortion or a calving tells. */
        PREGNANT,
        /** She came back, was found open, or conceived another time. */
        OPEN,
        /** Neither found pregnant nor open nor back in heat. */
        UNKNOWN,
        /** She was pregnant already. */
        WHILE_PREGNANT
    }

    public CountedService {
        Objects.requireNonNull(firstDate, "firstDate");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(sireBreed, "sireBreed");
        Objects.requireNonNull(outcome, "outcome");
    }

    /** One insemination. */
    public static CountedService on(LocalDate date, Outcome outcome) {
        return new CountedService(date, date, "", outcome);
    }

    CountedService withOutcome(Outcome known) {
        return new CountedService(firstDate, date, sireBreed, known);
    }

    CountedService until(LocalDate lastDate, String lastSireBreed) {
        return new CountedService(firstDate, lastDate, lastSireBreed, outcome);
    }
}
