package org.pailbook.records;

/**
 * One way to send something wrong, and how the service must say so.
 *
 * @param code of the problem
 * @param fault code of one of its faults; null if it has none
 * @param place of that fault: {@code /pointer}, {@code ?parameter}, {@code @header}; {@code ~words} of the detail where the body could not be
 *     read far enough to have a pointer; empty where the address itself is the place
 */
record BadRequest(String name, RawRequest request, int status, String code, String fault, String place) {
    static BadRequest of(String name, RawRequest request, int status, String code, String place) {
        return new BadRequest(name, request, status, code, null, place);
    }

    /** A record that could be read and is not acceptable. */
    static BadRequest refused(String name, RawRequest request, String fault, String pointer) {
        return new BadRequest(name, request, 422, "validation-failed", fault, pointer);
    }

    static BadRequest parameter(String name, RawRequest request, String code, String parameter) {
        return new BadRequest(name, request, 400, code, code, "?" + parameter);
    }

    @Override
    public String toString() {
        return name;
    }
}
