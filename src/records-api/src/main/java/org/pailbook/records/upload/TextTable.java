package org.pailbook.records.upload;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.pailbook.records.exchange.CsvTable;

/** Reads a text file as a table, line by line; the separator is the one that parts its first lines most evenly. */
final class TextTable implements AutoCloseable {
    /** One row of it, without the mark our own tables put before what looks like a formula. */
    record Row(int line, List<String> cells) {}

    static final int MOST_COLUMNS = 200;
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final char[] SEPARATORS = {';', '\t', ',', '|'};
    private static final int LINES_LOOKED_AT = 6;

    private final CSVParser parser;
    private final Iterator<CSVRecord> records;

    private TextTable(CSVParser parser) {
        this.parser = parser;
        this.records = parser.iterator();
    }

    static TextTable open(Path file, Charset charset, char separator) throws IOException {
        BufferedReader text = reader(file, charset);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(true)
                .get();
        return new TextTable(
                CSVParser.builder().setReader(text).setFormat(format).get());
    }

    private static BufferedReader reader(Path file, Charset charset) throws IOException {
        BufferedReader text = Files.newBufferedReader(file, charset);
        text.mark(1);
        if (text.read() != BYTE_ORDER_MARK) {
            text.reset();
        }
        return text;
    }

    /** The separator that stands most often in every one of the first lines; a comma if none does. */
    static char separator(Path file, Charset charset) throws IOException {
        List<String> lines = new ArrayList<>();
        try (BufferedReader text = reader(file, charset)) {
            for (String line = text.readLine();
                    line != null && lines.size() < LINES_LOOKED_AT;
                    line = text.readLine()) {
                if (!line.isBlank()) {
                    lines.add(line.replaceAll("\"[^\"]*\"", ""));
                }
            }
        }
        char best = ',';
        long most = 0;
        for (char separator : SEPARATORS) {
            long fewest = lines.stream()
                    .mapToLong(
                            line -> line.chars().filter(one -> one == separator).count())
                    .min()
                    .orElse(0);
            if (fewest > most) {
                most = fewest;
                best = separator;
            }
        }
        return best;
    }

    /** The next row, its cells without blanks around them; null at the end. */
    Row next() throws FileFault.Unreadable {
        try {
            if (!records.hasNext()) {
                return null;
            }
            CSVRecord record = records.next();
            int line = (int) parser.getCurrentLineNumber();
            List<String> cells = new ArrayList<>(record.size());
            for (String cell : record) {
                cells.add(CsvTable.withoutMark(cell.strip()));
            }
            return new Row(line, cells);
        } catch (UncheckedIOException | IllegalStateException broken) {
            throw new FileFault.Unreadable(FileFault.BROKEN_QUOTES, (int) parser.getCurrentLineNumber());
        }
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}
