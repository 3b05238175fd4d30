package org.pailbook.records.problem;

/** Every problem the service answers with: status, stable code, title. Codes are never reused. */
public enum ProblemCode {
    MALFORMED_JSON(400, "malformed-json", "The body is not readable JSON"),
    MALFORMED_CSV(400, "malformed-csv", "The body is not a readable table"),
    MALFORMED_REQUEST(400, "malformed-request", "The request could not be read"),
    NOT_UTF8(400, "not-utf8", "The body is not UTF-8 text"),
    EMPTY_BODY(400, "empty-body", "A body is needed"),
    UNKNOWN_PARAMETER(400, "unknown-parameter", "The address has an unknown parameter"),
    MALFORMED_FORM(400, "malformed-form", "The form could not be read"),
    BAD_PARAMETER(400, "bad-parameter", "A parameter could not be read"),
    BAD_PATH(400, "bad-path", "The path could not be read"),
    BAD_CURSOR(400, "bad-cursor", "The cursor is not one this service gave"),
    BAD_HEADER(400, "bad-header", "A header could not be read"),
    NOT_AUTHENTICATED(401, "not-authenticated", "A valid key is needed"),
    KEY_REVOKED(401, "key-revoked", "The key was revoked"),
    KEY_EXPIRED(401, "key-expired", "The key has expired"),
    SCOPE_MISSING(403, "scope-missing", "The key may not do this"),
    NOT_FOUND(404, "not-found", "There is no such record"),
    NO_SUCH_ROUTE(404, "no-such-route", "There is no such address"),
    METHOD_NOT_ALLOWED(405, "method-not-allowed", "This method does not work here"),
    NOT_ACCEPTABLE(406, "not-acceptable", "None of the accepted media types can be sent"),
    REQUEST_TIMEOUT(408, "request-timeout", "The request did not arrive in time"),
    KEY_CONFLICT(409, "key-conflict", "The keys of the record point to different records"),
    HERD_EXISTS(409, "herd-exists", "There is another herd with this code"),
    IN_PROGRESS(409, "in-progress", "A request with this idempotency key is still running"),
    FEED_ENDED(410, "feed-ended", "This feed shows nothing any more"),
    VERSION_MISMATCH(412, "version-mismatch", "The record has another version by now"),
    TOO_LARGE(413, "too-large", "The body is too large"),
    URI_TOO_LONG(414, "uri-too-long", "The address is too long"),
    UNSUPPORTED_MEDIA_TYPE(415, "unsupported-media-type", "The body has a media type that is not read here"),
    VALIDATION_FAILED(422, "validation-failed", "The record was not accepted"),
    UNKNOWN_ANIMAL(422, "unknown-animal", "The animal is not known in this herd"),
    BATCH_REJECTED(422, "batch-rejected", "The batch was not accepted"),
    IDEMPOTENCY_KEY_REUSED(422, "idempotency-key-reused", "The idempotency key was used for another request"),
    PRECONDITION_REQUIRED(428, "precondition-required", "The request must name the version it changes"),
    RATE_LIMITED(429, "rate-limited", "Too many requests in a short time"),
    HEADERS_TOO_LARGE(431, "headers-too-large", "The headers are too large"),
    INTERNAL(500, "internal", "Something went wrong on our side"),
    NOT_IMPLEMENTED(501, "method-not-implemented", "This method is not known here"),
    BUSY(503, "busy", "The service is busy"),
    STORAGE_UNAVAILABLE(503, "storage-unavailable", "The records cannot be reached or written now");

    private final int status;
    private final String code;
    private final String title;

    ProblemCode(int status, String code, String title) {
        this.status = status;
        this.code = code;
        this.title = title;
    }

    /** The code for a refusal of which only the HTTP status is known. */
    static ProblemCode ofStatus(int status) {
        return switch (status) {
            case 401 -> NOT_AUTHENTICATED;
            case 403 -> SCOPE_MISSING;
            case 404 -> NO_SUCH_ROUTE;
            case 405 -> METHOD_NOT_ALLOWED;
            case 406 -> NOT_ACCEPTABLE;
            case 408 -> REQUEST_TIMEOUT;
            case 413 -> TOO_LARGE;
            case 414 -> URI_TOO_LONG;
            case 415 -> UNSUPPORTED_MEDIA_TYPE;
            case 431 -> HEADERS_TOO_LARGE;
            default -> MALFORMED_REQUEST;
        };
    }

    public int status() {
        return status;
    }

    /** Stable on the wire, kebab-case. */
    public String code() {
        return code;
    }

    public String title() {
        return title;
    }
}
