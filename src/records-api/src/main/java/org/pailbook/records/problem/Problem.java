package org.pailbook.records.problem;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Thrown wherever a request cannot be done; becomes a problem body with the status of its code. */
public final class Problem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final ProblemCode code;
    private final transient List<Fault> faults;
    private final transient Map<String, String> headers = new LinkedHashMap<>();

    public Problem(ProblemCode code, String detail) {
        this(code, detail, List.of());
    }

    public Problem(ProblemCode code, String detail, List<Fault> faults) {
        super(detail, null, false, false);
        this.code = code;
        this.faults = List.copyOf(faults);
    }

    /** A record that could not be accepted, with everything found wrong with it. */
    public static Problem validation(List<Fault> faults) {
        return new Problem(
                ProblemCode.VALIDATION_FAILED, faults.size() == 1 ? "1 error" : faults.size() + " errors", faults);
    }

    /** A query or path parameter that could not be read. */
    public static Problem badParameter(String name, String message, String seen) {
        return new Problem(
                ProblemCode.BAD_PARAMETER,
                "Parameter " + name + ": " + message,
                List.of(Fault.inParameter(name, "bad-parameter", message).withValue(seen)));
    }

    /**
     * Nothing to be found, in the same words whether it does not exist or is out of the caller's reach, so that nobody
     * learns of other herds.
     */
    public static Problem notFound() {
        return new Problem(ProblemCode.NOT_FOUND, "There is no such record, or this key does not reach it.");
    }

    public Problem withHeader(String name, String value) {
        headers.put(name, value);
        return this;
    }

    public ProblemCode code() {
        return code;
    }

    public List<Fault> faults() {
        return faults;
    }

    public Map<String, String> headers() {
        return headers;
    }
}
