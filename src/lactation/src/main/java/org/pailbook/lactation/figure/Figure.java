package org.pailbook.lactation.figure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * A computed value with its unit, interval, as-of date, method, inputs, findings and explanation.
 *
 * <p>There is a value unless a finding {@link Severity#BLOCKS blocks} it. Where there is no interval, {@link #intervalNote()}
 * says why: no interval is ever made up.
 */
public final class Figure {
    private final OptionalDouble value;
    private final String unit;
    private final LocalDate asOf;
    private final PublishedMethod method;
    private final List<Interval> intervals;
    private final Optional<Sentence> saidIntervalNote;
    private final List<UsedInput> inputs;
    private final List<Finding> findings;
    private final Supplier<Explanation> howMade;
    /** Made when first asked for; two threads that ask at once make the same. */
    private Explanation explanation;

    private Figure(Builder builder) {
        this.value = builder.value;
        this.unit = builder.unit;
        this.asOf = builder.asOf;
        this.method = builder.method;
        this.intervals = List.copyOf(builder.intervals);
        this.saidIntervalNote = builder.intervals.isEmpty() ? Optional.of(builder.intervalNote) : Optional.empty();
        this.inputs = List.copyOf(builder.inputs);
        this.findings = List.copyOf(builder.findings);
        this.howMade = builder.howMade;
        boolean blocked = findings.stream().anyMatch(finding -> finding.severity() == Severity.BLOCKS);
        if (value.isPresent() == blocked) {
            throw new IllegalArgumentException("a figure has a value exactly when no finding blocks it: value " + value
                    + ", findings " + findings);
        }
    }

    /** Starts a figure; a value must be set unless a blocking finding is added. */
    public static Builder of(PublishedMethod method, String unit, LocalDate asOf) {
        return new Builder(method, unit, asOf);
    }

    public OptionalDouble value() {
        return value;
    }

    /** The value. @throws IllegalStateException if there is none; the message tells the findings */
    public double orThrow() {
        return value.orElseThrow(() -> new IllegalStateException("no value: " + findings));
    }

    /** Unit of value, intervals and parts: {@code kg}, {@code kg/d}, {@code %}, {@code d}. */
    public String unit() {
        return unit;
    }

    /** Events after this day took no part. */
    public LocalDate asOf() {
        return asOf;
    }

    public PublishedMethod method() {
        return method;
    }

    /** Narrowest first; empty when none can be given honestly. */
    public List<Interval> intervals() {
        return intervals;
    }

    /** The interval of that coverage, such as 0.80. */
    public Optional<Interval> interval(double coverageShare) {
        return intervals.stream()
                .filter(interval -> Math.abs(interval.coverageShare() - coverageShare) < 1e-9)
                .findFirst();
    }

    /** Why there is no interval, in English; empty when there is one. */
    public Optional<String> intervalNote() {
        return saidIntervalNote.map(Sentence::text);
    }

    /** Why there is no interval; empty when there is one. */
    public Optional<Sentence> saidIntervalNote() {
        return saidIntervalNote;
    }

    public List<UsedInput> inputs() {
        return inputs;
    }

    public List<Finding> findings() {
        return findings;
    }

    public Explanation explanation() {
        Explanation made = explanation;
        if (made == null) {
            made = howMade.get();
            explanation = made;
        }
        return made;
    }

    @Override
    public String toString() {
        return (value.isPresent() ? value.getAsDouble() + " " + unit : "no value") + ", as of " + asOf + ", by "
                + method.id() + " v" + method.version() + ", intervals " + intervals + ", findings " + findings;
    }

    /** Collects the parts of a figure. Not for use by several threads. */
    public static final class Builder {
        private final PublishedMethod method;
        private final String unit;
        private final LocalDate asOf;
        private OptionalDouble value = OptionalDouble.empty();
        private final List<Interval> intervals = new ArrayList<>();
        private Sentence intervalNote = Sentence.of(SentenceCode.NO_INTERVAL_BY_METHOD);
        private final List<UsedInput> inputs = new ArrayList<>();
        private final List<Finding> findings = new ArrayList<>();
        private Supplier<Explanation> howMade = () -> Explanation.NONE;

        private Builder(PublishedMethod method, String unit, LocalDate asOf) {
            this.method = Objects.requireNonNull(method, "method");
            this.unit = Objects.requireNonNull(unit, "unit");
            this.asOf = Objects.requireNonNull(asOf, "asOf");
        }

        /** @throws IllegalArgumentException if the value is not finite: a missing value is a finding, never NaN */
        public Builder value(double amount) {
            if (!Double.isFinite(amount)) {
                throw new IllegalArgumentException("value (" + amount + ") must be finite");
            }
            this.value = OptionalDouble.of(amount);
            return this;
        }

        public Builder interval(Interval interval) {
            intervals.add(interval);
            return this;
        }

        /** Why this figure has no interval. */
        public Builder noInterval(String why) {
            return noInterval(Sentence.verbatim(why));
        }

        public Builder noInterval(SentenceCode why) {
            return noInterval(Sentence.of(why));
        }

        private Builder noInterval(Sentence why) {
            this.intervalNote = why;
            return this;
        }

        public Builder input(UsedInput input) {
            inputs.add(input);
            return this;
        }

        public Builder inputs(List<UsedInput> more) {
            inputs.addAll(more);
            return this;
        }

        public Builder finding(Finding finding) {
            findings.add(finding);
            return this;
        }

        public Builder findings(List<Finding> more) {
            findings.addAll(more);
            return this;
        }

        public Builder explanation(Explanation parts) {
            Objects.requireNonNull(parts, "parts");
            return explanation(() -> parts);
        }

        /**
         * An explanation whose words are put together when somebody asks: over a large herd most are never read.
         *
         * @param parts gives the same each time, from what does not change
         */
        public Builder explanation(Supplier<Explanation> parts) {
            this.howMade = Objects.requireNonNull(parts, "parts");
            return this;
        }

        public Figure build() {
            return new Figure(this);
        }
    }
}
