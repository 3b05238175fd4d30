package org.pailbook.records.exchange;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.pailbook.records.wire.LimitedBody;
import org.pailbook.records.wire.StrictJson;

/** A body whose fingerprint is taken while it is read, and which says now and then that it still is. */
final class FingerprintedBody extends FilterInputStream {
    private final MessageDigest digest;
    private final Runnable progress;

    /** @param start what else makes the request: method, address, media type */
    FingerprintedBody(InputStream body, String start, Runnable progress) {
        super(new LimitedBody(body, LimitedBody.MANY_RECORDS));
        this.progress = progress;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
        digest.update(start.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        progress.run();
        int got = super.read(buffer, offset, length);
        if (got > 0) {
            digest.update(buffer, offset, got);
        }
        return got;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** Of the whole request; what was not read yet is read. */
    String fingerprint() {
        try {
            transferTo(OutputStream.nullOutputStream());
        } catch (IOException brokenOff) {
            throw StrictJson.unreadable(brokenOff);
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
