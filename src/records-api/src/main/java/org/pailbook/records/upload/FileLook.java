package org.pailbook.records.upload;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What kind of file the bytes are, before anything is made of them. */
final class FileLook {
    /** Encodings to choose from where it is not UTF-8: those that spreadsheet programs still write (common practice, no source). */
    static final List<String> ASKED = List.of("windows-1252", "windows-1250", "windows-1251", "x-MacRoman");

    private static final int START = 4096;
    private static final int BUFFER = 64 * 1024;

    private FileLook() {}

    /**
     * @return the encoding; empty if it must be asked
     * @throws FileFault.Unreadable if it is no text at all
     */
    static Optional<Charset> encoding(Path file) throws IOException, FileFault.Unreadable {
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(START);
        }
        if (start.length == 0 || new String(start, StandardCharsets.ISO_8859_1).isBlank()) {
            throw new FileFault.Unreadable(FileFault.EMPTY, 0);
        }
        if (begins(start, 'P', 'K') || begins(start, 0xD0, 0xCF, 0x11, 0xE0)) {
            throw new FileFault.Unreadable(FileFault.WORKBOOK, 0);
        }
        if (begins(start, '%', 'P', 'D', 'F') || begins(start, '<') || begins(start, '{')) {
            throw new FileFault.Unreadable(FileFault.DOCUMENT, 0);
        }
        if (begins(start, 0xFF, 0xFE)) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        if (begins(start, 0xFE, 0xFF)) {
            return Optional.of(StandardCharsets.UTF_16BE);
        }
        for (byte one : start) {
            if (one >= 0 && one < ' ' && one != '\t' && one != '\r' && one != '\n') {
                throw new FileFault.Unreadable(FileFault.NOT_TEXT, 0);
            }
        }
        return isUtf8(file) ? Optional.of(StandardCharsets.UTF_8) : Optional.empty();
    }

    private static boolean begins(byte[] start, int... mark) {
        byte[] bytes = new byte[mark.length];
        for (int i = 0; i < mark.length; i++) {
            bytes[i] = (byte) mark[i];
        }
        return start.length >= mark.length && Arrays.equals(start, 0, mark.length, bytes, 0, mark.length);
    }

    private static boolean isUtf8(Path file) throws IOException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer bytes = ByteBuffer.allocate(BUFFER);
        CharBuffer characters = CharBuffer.allocate(BUFFER);
        try (var in = Files.newByteChannel(file)) {
            while (in.read(bytes) >= 0) {
                bytes.flip();
                CoderResult result = decoder.decode(bytes, characters.clear(), false);
                if (result.isError()) {
                    return false;
                }
                bytes.compact();
            }
        }
        bytes.flip();
        return !decoder.decode(bytes, characters.clear(), true).isError();
    }
}
