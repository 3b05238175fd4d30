package org.pailbook.lactation.culling;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.figure.Figure;

/**
 * What keeping a cow is worth, how sure that is and why. An estimate to think with: {@link #caution()} goes with it wherever it is shown.
 *
 * @param cow names her
 * @param retentionPayoff keeping over replacing her now, cu; without a value if something needed is missing
 * @param range how far it moves; empty without a value
 * @param suggestion what it points to; empty without a value
 * @param reasons the two largest, largest first
 * @param alternative for open cows that would be bred
 * @param pregnancyValue of a pregnant cow over being open; of one served and not checked the same if she took; of an open one that is bred, what a
 *     conception in this month would be worth
 * @param simplerRules the same cow by rules that look less far: income over feed cost, marginal net revenue
 */
public record CowOutlook(
        String cow,
        Figure retentionPayoff,
        Optional<PayoffRange> range,
        Optional<Suggestion> suggestion,
        List<Reason> reasons,
        Optional<Alternative> alternative,
        Optional<Figure> pregnancyValue,
        List<Figure> simplerRules) {
    public CowOutlook {
        Objects.requireNonNull(cow, "cow");
        Objects.requireNonNull(retentionPayoff, "retentionPayoff");
        reasons = List.copyOf(reasons);
        simplerRules = List.copyOf(simplerRules);
    }

    static CowOutlook without(String cow, Figure noValue) {
        return new CowOutlook(
                cow,
                noValue,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    /** To be shown with it. */
    public String caution() {
        return CullingCaution.TEXT;
    }
}
