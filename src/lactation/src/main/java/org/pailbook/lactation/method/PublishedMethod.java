package org.pailbook.lactation.method;

/**
 * A method somebody published (or a rule of ours, marked so), as one final class of this library implements it.
 *
 * <p>Every figure carries the method that made it.
 */
public interface PublishedMethod {
    /** Stable name on the wire, kebab-case, usually author and year: {@code wood-1967}. */
    String id();

    /** Version of our implementation; raised when any result changes. */
    int version();

    Citation citation();
}
