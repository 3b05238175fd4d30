package org.pailbook.records.computed;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.accumulation.YieldAccumulations;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.projection.StandardCurveAccumulations;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.Fields;

/** Methods by their names on the wire; a name that is not known is answered with those that are. */
public final class MethodChoice {
    private MethodChoice() {}

    public static List<String> ids(List<? extends PublishedMethod> methods) {
        return methods.stream().map(PublishedMethod::id).toList();
    }

    /** The method a query parameter names; empty if it was not sent. */
    public static <M extends PublishedMethod> Optional<M> ofParameter(String parameter, String id, List<M> all) {
        if (id == null) {
            return Optional.empty();
        }
        Optional<M> found = byId(id, all);
        if (found.isEmpty()) {
            throw Problem.badParameter(
                    parameter, "expected one of " + ids(all).stream().collect(Collectors.joining(", ")), id);
        }
        return found;
    }

    /** The method a member names; empty if it is not there or not known, the latter being noted. */
    public static <M extends PublishedMethod> Optional<M> ofMember(Fields fields, String member, List<M> all) {
        String id = fields.code(member, ids(all));
        return id == null ? Optional.empty() : byId(id, all);
    }

    public static <M extends PublishedMethod> Optional<M> byId(String id, List<M> all) {
        return all.stream().filter(method -> method.id().equals(id)).findFirst();
    }

    /** Every way to add up the yield of a cow: those by straight lines, then those along the curve of her group. */
    public static List<YieldAccumulation> yieldMethods(String breed, int parity) {
        return Stream.concat(
                        YieldAccumulations.all().stream(),
                        StandardCurveAccumulations.all(LactationStandards.traitsForCow(breed, parity)).stream())
                .toList();
    }

    /** Their names, which do not depend on the cow. */
    public static List<YieldAccumulation> yieldMethods() {
        return yieldMethods("", 1);
    }

    /** Whether a parameter asks for something: {@code true} or {@code false}, false if it was not sent. */
    public static boolean flag(String parameter, String sent) {
        if (sent != null && !sent.equals("true") && !sent.equals("false")) {
            throw Problem.badParameter(parameter, "expected true or false", sent);
        }
        return "true".equals(sent);
    }
}
