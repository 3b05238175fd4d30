package org.pailbook.lactation.testday;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.ValueLimit.Layer;

/**
 * What values are possible, accepted and usual, in three layers. What is impossible is refused at entry; a value outside the accepted
 * range is flagged and not used until confirmed; one outside the usual range is used and questioned. Real cows leave the two inner ranges.
 *
 * <p>{@link #PUBLISHED} holds ICAR's ranges and our own, each with its source; {@link #with} lays a farm's own limit over it, and {@link
 * #withWiderUsual} lets a farm be asked less often, whatever else holds.
 */
public final class ValueLimits {
    /** The limits shipped with the library. */
    public static final ValueLimits PUBLISHED = read("value-limits.csv");

    private static final String FAT_PROTEIN_RATIO = "fatProteinRatio";

    /** What a limit is looked up by. */
    private record Asked(String field, Layer layer, BreedGroup breeds) {}

    private final List<ValueLimit> limits;
    private final Set<ValueLimit> own;
    /** worked out beforehand: every test day of every cow is held against them, again and again */
    private final Map<Asked, ValueLimit> widest = new HashMap<>();

    private ValueLimits(List<ValueLimit> limits, Set<ValueLimit> own) {
        this.limits = List.copyOf(limits);
        this.own = Set.copyOf(own);
        for (ValueLimit limit : limits) {
            for (BreedGroup breeds : BreedGroup.values()) {
                if (breeds == BreedGroup.UNKNOWN || limit.breeds() == BreedGroup.UNKNOWN || limit.breeds() == breeds) {
                    widest.merge(new Asked(limit.field(), limit.layer(), breeds), limit, ValueLimits::union);
                }
            }
        }
    }

    /** All of them, in the order of the table. */
    public List<ValueLimit> limits() {
        return limits;
    }

    /** These limits with one more, which replaces the one of the same field, layer and breeds. */
    public ValueLimits with(ValueLimit added) {
        List<ValueLimit> all = new ArrayList<>(limits);
        all.removeIf(limit -> limit.field().equals(added.field())
                && limit.layer() == added.layer()
                && limit.breeds() == added.breeds());
        all.add(added);
        Set<ValueLimit> owned = new HashSet<>(own);
        owned.add(added);
        return new ValueLimits(all, owned);
    }

    /**
     * These limits with the usual range of a field moved outwards.
     *
     * @param least new lower end; empty to leave it
     * @param most new upper end; empty to leave it
     * @param setBy who moved it, as findings are to say: {@code set by the herd from 2026-02-01}
     * @throws IllegalArgumentException if the field has no usual range, or {@link #mayBeWidened} says no
     */
    public ValueLimits withWiderUsual(String field, OptionalDouble least, OptionalDouble most, String setBy) {
        ValueLimit usual = usual(field);
        if (!mayBeWidened(field, least, most)) {
            throw new IllegalArgumentException(field + " (" + least + " to " + most + ") must be wider than "
                    + usual.words() + " and within "
                    + furthest(field).map(ValueLimit::words).orElse("any"));
        }
        return with(new ValueLimit(
                field,
                usual.unit(),
                Layer.USUAL,
                usual.breeds(),
                least.isPresent() ? least : usual.least(),
                most.isPresent() ? most : usual.most(),
                HowKnown.OURS,
                setBy));
    }

    /** Whether the usual range of a field may be moved so: outwards, and not beyond what is accepted or possible. */
    public boolean mayBeWidened(String field, OptionalDouble least, OptionalDouble most) {
        ValueLimit usual = usual(field);
        boolean outwards =
                least.orElse(Double.NEGATIVE_INFINITY) <= usual.least().orElse(Double.NEGATIVE_INFINITY)
                        && most.orElse(Double.POSITIVE_INFINITY) >= usual.most().orElse(Double.POSITIVE_INFINITY);
        return outwards
                && furthest(field)
                        .filter(limit -> least.isPresent() && !limit.holds(least.getAsDouble())
                                || most.isPresent() && !limit.holds(most.getAsDouble()))
                        .isEmpty();
    }

    /** The fields that have a usual range, in the order of the table. */
    public List<String> usualFields() {
        return limits.stream()
                .filter(limit -> limit.layer() == Layer.USUAL)
                .map(ValueLimit::field)
                .distinct()
                .toList();
    }

    /** How far the usual range of a field may be moved: to where values are no longer accepted, else no longer possible. */
    public Optional<ValueLimit> furthest(String field) {
        return of(field, Layer.ACCEPTED, BreedGroup.UNKNOWN).or(() -> of(field, Layer.POSSIBLE, BreedGroup.UNKNOWN));
    }

    private ValueLimit usual(String field) {
        return of(field, Layer.USUAL, BreedGroup.UNKNOWN)
                .orElseThrow(() -> new IllegalArgumentException(field + " has no usual range"));
    }

    /** A limit in words, with who set it if it is not one of those shipped. */
    Sentence told(ValueLimit limit, Sentence said) {
        return own.contains(limit) ? Sentence.of(SentenceCode.BY_SOURCE, said, limit.source()) : said;
    }

    /**
     * The limit of a field; for breeds that are not known the widest of those there are.
     *
     * @return empty if there is none
     */
    public Optional<ValueLimit> of(String field, Layer layer, BreedGroup breeds) {
        return Optional.ofNullable(widest.get(new Asked(field, layer, breeds)));
    }

    private static ValueLimit union(ValueLimit one, ValueLimit other) {
        OptionalDouble least = one.least().isEmpty() || other.least().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Math.min(one.least().getAsDouble(), other.least().getAsDouble()));
        OptionalDouble most = one.most().isEmpty() || other.most().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Math.max(one.most().getAsDouble(), other.most().getAsDouble()));
        String source = one.source().equals(other.source()) ? one.source() : one.source() + "; " + other.source();
        return new ValueLimit(
                one.field(), one.unit(), one.layer(), BreedGroup.UNKNOWN, least, most, one.howKnown(), source);
    }

    /** The limit a value breaks so far that it cannot be right, if there is one. */
    public Optional<ValueLimit> impossible(String field, double value) {
        return of(field, Layer.POSSIBLE, BreedGroup.UNKNOWN).filter(limit -> !limit.holds(value));
    }

    /** What is wrong with a single value, if anything: outside accepted first, else outside usual. */
    public Optional<Finding> check(String field, double value, BreedGroup breeds) {
        for (Layer layer : List.of(Layer.ACCEPTED, Layer.USUAL)) {
            Optional<ValueLimit> limit = of(field, layer, breeds);
            if (limit.isPresent() && !limit.get().holds(value)) {
                return Optional.of(
                        Finding.of(layer == Layer.ACCEPTED ? FindingCode.OUT_OF_RANGE : FindingCode.IMPLAUSIBLE)
                                .withField(field)
                                .withSeen(Sentence.verbatim(limit.get().amount(value)))
                                .withExpected(told(limit.get(), limit.get().said())));
            }
        }
        return Optional.empty();
    }

    /** What is wrong with the values of a test day, each with its date, field, value and limit. */
    public List<Finding> check(TestDay test, BreedGroup breeds) {
        List<Finding> findings = new ArrayList<>();
        add(findings, test, "milkKg", test.milkKg(), breeds);
        add(findings, test, "fatPct", test.fatPct(), breeds);
        add(findings, test, "proteinPct", test.proteinPct(), breeds);
        add(findings, test, "lactosePct", test.lactosePct(), breeds);
        add(findings, test, "sccThousandPerMl", test.sccThousandPerMl(), breeds);
        if (test.fatPct().isPresent() && test.proteinPct().orElse(0) > 0) {
            double ratio = test.fatPct().getAsDouble() / test.proteinPct().getAsDouble();
            add(findings, test, FAT_PROTEIN_RATIO, OptionalDouble.of(ratio), breeds);
        }
        return findings;
    }

    private void add(List<Finding> findings, TestDay test, String field, OptionalDouble value, BreedGroup breeds) {
        if (value.isPresent()) {
            check(field, value.getAsDouble(), breeds)
                    .map(finding -> finding.withDate(test.date()))
                    .ifPresent(findings::add);
        }
    }

    private static ValueLimits read(String resource) {
        try (InputStream in = Objects.requireNonNull(ValueLimits.class.getResourceAsStream(resource), resource);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return new ValueLimits(
                    reader.lines()
                            .filter(line -> !line.startsWith("#") && !line.startsWith("field,"))
                            .map(ValueLimits::parse)
                            .toList(),
                    Set.of());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ValueLimit parse(String line) {
        String[] cells = line.split(",", 8);
        BreedGroup breeds = BreedGroup.UNKNOWN;
        for (BreedGroup group : BreedGroup.values()) {
            breeds = group.code().equals(cells[3]) ? group : breeds;
        }
        return new ValueLimit(
                cells[0],
                cells[1],
                Layer.valueOf(cells[2].toUpperCase(Locale.ROOT)),
                breeds,
                number(cells[4]),
                number(cells[5]),
                HowKnown.valueOf(cells[6]),
                cells[7]);
    }

    private static OptionalDouble number(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }
}
