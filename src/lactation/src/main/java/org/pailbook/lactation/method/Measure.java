package org.pailbook.lactation.method;

import java.util.Objects;

/**
 * A figure of a herd that is one count or sum over another, with both in words: two farms can only compare what is counted alike.
 *
 * @see PublishedMethod
 */
public final class Measure implements PublishedMethod {
    private final String id;
    private final String what;
    private final String numerator;
    private final String denominator;
    private final Citation citation;

    private Measure(String id, String what, String numerator, String denominator, Citation citation) {
        this.id = Objects.requireNonNull(id, "id");
        this.what = Objects.requireNonNull(what, "what");
        this.numerator = Objects.requireNonNull(numerator, "numerator");
        this.denominator = Objects.requireNonNull(denominator, "denominator");
        this.citation = Objects.requireNonNull(citation, "citation");
    }

    /**
     * @param id stable, kebab-case
     * @param what in the barn's words
     * @param numerator what is counted or summed above the line
     * @param denominator what is counted or summed below it
     */
    public static Measure of(String id, String what, String numerator, String denominator, Citation citation) {
        return new Measure(id, what, numerator, denominator, citation);
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return citation;
    }

    /** In the barn's words. */
    public String what() {
        return what;
    }

    /** What is counted above the line. */
    public String numerator() {
        return numerator;
    }

    /** What is counted below the line. */
    public String denominator() {
        return denominator;
    }
}
