package org.pailbook.records.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codes from PostgreSQL's appendix Error Codes and SQLite's Result Codes, both from memory; seen when they happened: 13, 57P01, 08001. */
class StorageFailureRegressionTest {
    @ParameterizedTest
    @CsvSource({
        "53100, 0, UNAVAILABLE", // disk_full
        "57P01, 0, UNAVAILABLE", // admin_shutdown
        "08001, 0, UNAVAILABLE", // unable to connect
        "40001, 0, BUSY", // serialization_failure
        "55P03, 0, BUSY", // lock_not_available
        ", 5, BUSY", // SQLITE_BUSY
        ", 13, UNAVAILABLE", // SQLITE_FULL
        ", 11, UNAVAILABLE", // SQLITE_CORRUPT
        ", 266, UNAVAILABLE", // SQLITE_IOERR_READ
        "23505, 0, ", // unique_violation: our own mistake, so it stays an error of ours
        ", 19, ", // SQLITE_CONSTRAINT
    })
    void whatTheDatabaseSaysIsTakenForWhatItMeans(String state, int code, StorageFailure expected) {
        Throwable failure = new IllegalStateException(new SQLException("said so", state, code));
        if (expected == null) {
            assertThat(StorageFailure.in(failure)).isEmpty();
        } else {
            assertThat(StorageFailure.in(failure)).contains(expected);
        }
    }

    @Test
    void theReasonOfAFailedCommitIsFoundAmongTheSuppressed() {
        Exception rollback = new Exception("could not commit");
        rollback.addSuppressed(new Exception("commit", new SQLException("disk is full\nand more", null, 13)));
        RuntimeException failure = new IllegalStateException(rollback);
        assertThat(StorageFailure.in(failure)).contains(StorageFailure.UNAVAILABLE);
        assertThat(StorageFailure.reason(failure)).isEqualTo("disk is full");
    }
}
