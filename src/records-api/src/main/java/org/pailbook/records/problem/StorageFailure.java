package org.pailbook.records.problem;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What a failure of the database means for who sent the request. */
enum StorageFailure {
    /** A lock that was not free in time, or no connection to be had: it works, and has too much to do. */
    BUSY,
    /** It cannot be reached, cannot write, or its file is damaged: somebody must see to it. */
    UNAVAILABLE;

    /** Result codes of SQLite, of which the lowest byte is the kind. */
    private static final int SQLITE_BUSY = 5;

    private static final int SQLITE_READONLY = 8;
    private static final int SQLITE_IOERR = 10;
    private static final int SQLITE_CORRUPT = 11;
    private static final int SQLITE_FULL = 13;
    private static final int SQLITE_CANTOPEN = 14;
    private static final int SQLITE_NOTADB = 26;

    /** The meaning of a failure; nothing if the database has no part in it. */
    static Optional<StorageFailure> in(Throwable failure) {
        return reasons(failure)
                .filter(SQLException.class::isInstance)
                .map(SQLException.class::cast)
                .flatMap(sql -> of(sql).stream())
                .findFirst();
    }

    /** A failure and what caused it. The transaction's own exception keeps the cause of a failed commit among the suppressed ones. */
    private static Stream<Throwable> reasons(Throwable failure) {
        if (failure == null) {
            return Stream.empty();
        }
        Stream<Throwable> suppressed = Arrays.stream(failure.getSuppressed()).flatMap(StorageFailure::reasons);
        return Stream.of(Stream.of(failure), reasons(failure.getCause()), suppressed)
                .flatMap(Function.identity());
    }

    /** @see "PostgreSQL, appendix Error Codes: classes 08, 40, 53, 55P03, 57P, 58; SQLite, Result Codes" */
    private static Optional<StorageFailure> of(SQLException failure) {
        String state = failure.getSQLState() == null ? "" : failure.getSQLState();
        String message = failure.getMessage() == null ? "" : failure.getMessage();
        if (state.startsWith("40") || state.equals("55P03") || message.contains("Acquisition timeout")) {
            return Optional.of(BUSY);
        }
        if (state.startsWith("08") || state.startsWith("53") || state.startsWith("57P") || state.startsWith("58")) {
            return Optional.of(UNAVAILABLE);
        }
        return switch (failure.getErrorCode() & 0xff) {
            case SQLITE_BUSY -> Optional.of(BUSY);
            case SQLITE_READONLY, SQLITE_IOERR, SQLITE_CORRUPT, SQLITE_FULL, SQLITE_CANTOPEN, SQLITE_NOTADB ->
                Optional.of(UNAVAILABLE);
            default -> Optional.empty();
        };
    }

    /** What the database said, on one line. */
    static String reason(Throwable failure) {
        return reasons(failure)
                .filter(SQLException.class::isInstance)
                .map(Throwable::getMessage)
                .filter(Objects::nonNull)
                .flatMap(String::lines)
                .findFirst()
                .orElse("no reason given");
    }
}
