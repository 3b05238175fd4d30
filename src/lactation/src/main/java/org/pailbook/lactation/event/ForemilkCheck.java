package org.pailbook.lactation.event;

import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * The first squirts of a quarter, looked at before milking. No record is "not recorded", never "normal".
 *
 * @param at date and time of the milking, in the farm's zone
 * @param quarter the quarter; empty if it was not said, then all four are meant
 * @param milk what the milk looked like
 * @param udder what the quarter felt like
 * @param cowIll whether she is ill besides
 * @param said what the person who looked says of the milk
 * @param by who looked; empty text if not recorded
 */
public record ForemilkCheck(
        LocalDateTime at, Optional<Quarter> quarter, Milk milk, Udder udder, boolean cowIll, Said said, String by) {

    /** What the milk looked like. */
    public enum Milk {
        NORMAL(SentenceCode.MILK_NORMAL),
        CLOTS(SentenceCode.MILK_CLOTS),
        WATERY(SentenceCode.MILK_WATERY),
        BLOOD(SentenceCode.MILK_BLOOD),
        YELLOW(SentenceCode.MILK_YELLOW),
        NONE(SentenceCode.NO_MILK);

        private final SentenceCode said;

        Milk(SentenceCode said) {
            this.said = said;
        }

        public String words() {
            return said.english();
        }

        public SentenceCode said() {
            return said;
        }
    }

    /** What the quarter felt like. */
    public enum Udder {
        NORMAL,
        HARD,
        HOT,
        PAINFUL,
        NOT_RECORDED
    }

    /** What a person says of the milk. */
    public enum Said {
        NOTHING,
        /** It is kept out, whatever it looked like. */
        WITHHELD,
        /** It may go in the tank again. */
        CLEARED
    }

    public ForemilkCheck {
        Objects.requireNonNull(at, "at");
        Objects.requireNonNull(quarter, "quarter");
        Objects.requireNonNull(milk, "milk");
        Objects.requireNonNull(udder, "udder");
        Objects.requireNonNull(by, "by");
        Objects.requireNonNull(said, "said");
        if (said == Said.CLEARED && milk != Milk.NORMAL) {
            throw new IllegalArgumentException("said (CLEARED) needs normal milk, not " + milk);
        }
    }

    /** A check of one quarter, nothing else said. */
    public static ForemilkCheck of(LocalDateTime at, Quarter quarter, Milk milk) {
        return new ForemilkCheck(at, Optional.of(quarter), milk, Udder.NOT_RECORDED, false, Said.NOTHING, "");
    }

    /** The same, and the user says the milk may go in again. */
    public ForemilkCheck clearing() {
        return new ForemilkCheck(at, quarter, milk, udder, cowIll, Said.CLEARED, by);
    }

    public boolean isAbnormal() {
        return milk != Milk.NORMAL;
    }

    /** Whether her milk is to be kept out because of it. */
    public boolean isAgainstHerMilk() {
        return isAbnormal() || said == Said.WITHHELD;
    }
}
