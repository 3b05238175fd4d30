package org.pailbook.records.exchange;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * An answer that can be given again.
 *
 * @param location null if it has none
 * @param etag null if it has none
 * @param gzip the body, compressed: a bulk answer may name every row
 */
record KeptAnswer(int status, String mediaType, String location, String etag, byte[] gzip) {
    /** What writes a body. */
    interface Writing {
        void to(OutputStream out) throws IOException;
    }

    static KeptAnswer of(int status, String mediaType, String location, String etag, Writing body) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
            body.to(gzip);
        } catch (IOException spoolFailed) {
            throw new UncheckedIOException(spoolFailed);
        }
        return new KeptAnswer(status, mediaType, location, etag, bytes.toByteArray());
    }

    /** Writes the body out. */
    void writeTo(OutputStream out) throws IOException {
        try (InputStream body = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
            body.transferTo(out);
        }
    }
}
