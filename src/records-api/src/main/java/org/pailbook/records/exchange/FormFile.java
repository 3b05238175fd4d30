package org.pailbook.records.exchange;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * The one part {@code file} of a form, read as it comes: nothing of it is kept on disk, so nothing is left there.
 *
 * @see "RFC 7578, multipart/form-data; RFC 2046, section 5.1.1"
 */
public final class FormFile extends InputStream {
    public static final String MEDIA_TYPE = "multipart/form-data";

    private static final int LONGEST_HEADER = 8 * 1024;
    private static final Pattern BOUNDARY =
            Pattern.compile(".*;\\s*boundary=\"?([^\";]{1,70})\"?.*", Pattern.CASE_INSENSITIVE);
    private static final Pattern NAME = Pattern.compile(".*;\\s*name=\"?file\"?(;.*|$)", Pattern.CASE_INSENSITIVE);
    private static final Pattern EXTENSION =
            Pattern.compile(".*;\\s*filename=\"?[^\"]*\\.([a-z]+)\"?.*", Pattern.CASE_INSENSITIVE);
    private static final Map<String, String> BY_EXTENSION = Map.of(
            "csv", BulkIntake.CSV, "json", BulkIntake.JSON, "ndjson", BulkIntake.NDJSON, "jsonl", BulkIntake.NDJSON);

    private static final Pattern FILE_NAME =
            Pattern.compile(".*;\\s*filename=\"?([^\"]*)\"?.*", Pattern.CASE_INSENSITIVE);

    private final InputStream body;
    private final byte[] end;
    private String fileName = "";
    private String mediaType = "";
    private boolean ended;

    /** @param contentType of the whole request */
    public FormFile(InputStream body, String contentType) throws IOException {
        this.body = new BufferedInputStream(body);
        Matcher boundary = BOUNDARY.matcher(contentType);
        if (!boundary.matches()) {
            throw broken("The Content-Type names no boundary.");
        }
        String mark = "--" + boundary.group(1);
        this.end = ("\r\n" + mark).getBytes(StandardCharsets.ISO_8859_1);
        if (!line().equals(mark)) {
            throw broken("The form does not begin with its boundary.");
        }
        readHeaders();
    }

    /** What the part holds, by its own header or the end of its file name. */
    String mediaType() {
        return mediaType;
    }

    /** As the sender's machine calls it; empty text if it was not said. */
    public String fileName() {
        return fileName;
    }

    private void readHeaders() throws IOException {
        boolean named = false;
        String byName = "";
        for (String header = line(); !header.isEmpty(); header = line()) {
            String small = header.toLowerCase(Locale.ROOT);
            if (small.startsWith("content-disposition:")) {
                named = NAME.matcher(header).matches();
                Matcher calls = FILE_NAME.matcher(header);
                fileName = calls.matches() ? calls.group(1) : "";
                Matcher extension = EXTENSION.matcher(header);
                byName = extension.matches()
                        ? BY_EXTENSION.getOrDefault(extension.group(1).toLowerCase(Locale.ROOT), "")
                        : "";
            } else if (small.startsWith("content-type:")) {
                mediaType = BulkIntake.mediaType(
                        header.substring("content-type:".length()).strip());
            }
        }
        if (!named) {
            throw broken("Send one part with the name file.");
        }
        boolean saysNothing = mediaType.isEmpty()
                || mediaType.equals("application/octet-stream")
                || mediaType.equals("text/plain")
                || mediaType.equals("application/vnd.ms-excel");
        if (saysNothing && !byName.isEmpty()) {
            mediaType = byName;
        }
    }

    private String line() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int next = body.read(); next != '\n'; next = body.read()) {
            if (next < 0 || line.size() == LONGEST_HEADER) {
                throw broken("The form breaks off in its headers.");
            }
            line.write(next);
        }
        return line.toString(StandardCharsets.UTF_8).stripTrailing();
    }

    @Override
    public int read() throws IOException {
        if (ended) {
            return -1;
        }
        int next = body.read();
        if (next == end[0] && isEnd()) {
            ended = true;
            finish();
            return -1;
        }
        if (next < 0) {
            throw broken("The form breaks off before its last boundary.");
        }
        return next;
    }

    /** Whether the boundary follows the byte just read; if not, the stream stands again behind that byte. */
    private boolean isEnd() throws IOException {
        body.mark(end.length);
        for (int i = 1; i < end.length; i++) {
            if (body.read() != end[i]) {
                body.reset();
                return false;
            }
        }
        return true;
    }

    private void finish() throws IOException {
        if (body.read() != '-' || body.read() != '-') {
            throw broken("Send one part only.");
        }
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
        int count = 0;
        while (count < most) {
            int next = read();
            if (next < 0) {
                break;
            }
            into[from + count++] = (byte) next;
        }
        return count == 0 && most > 0 ? -1 : count;
    }

    private static Problem broken(String why) {
        return new Problem(ProblemCode.MALFORMED_FORM, why);
    }
}
