package org.pailbook.records.wire;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/** A body that may not be longer than a limit; reading past it is a problem, not an end. */
public final class LimitedBody extends FilterInputStream {
    /** Most bytes of a body that is one record. */
    public static final long ONE_RECORD = 1024L * 1024;

    /** Most bytes of a body that holds whole lactations. */
    public static final long MANY_RECORDS = 32 * ONE_RECORD;

    private final long mostBytes;
    private long readBytes;

    public LimitedBody(InputStream body, long mostBytes) {
        super(body);
        this.mostBytes = mostBytes;
    }

    @Override
    public int read() throws IOException {
        int next = super.read();
        if (next >= 0) {
            count(1);
        }
        return next;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = super.read(buffer, offset, length);
        if (got > 0) {
            count(got);
        }
        return got;
    }

    @Override
    public long skip(long bytes) throws IOException {
        return in.skip(0);
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** Leaves the body as it is: closing it would first read the rest of it, however long, before any answer. */
    @Override
    public void close() {
        // what was not read is dropped after the answer
    }

    private void count(int bytes) {
        readBytes += bytes;
        if (readBytes > mostBytes) {
            throw new Problem(ProblemCode.TOO_LARGE, "The body is longer than " + mostBytes + " bytes.");
        }
    }
}
