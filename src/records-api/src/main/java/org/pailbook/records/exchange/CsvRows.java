package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.NearestName;
import org.pailbook.records.wire.StrictJson;

/**
 * A table with a header row of our column names in any order, capitals and blanks for underscores allowed; {@code ;}, tab or {@code ,} is seen
 * from the header, a decimal comma is read only with the first two. An empty cell is a value that is not known.
 */
public final class CsvRows implements RowReader {
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final int LONGEST_HEADER = 16 * 1024;
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,20}(\\.[0-9]{1,20})?");

    private final List<Column> columns;
    private final boolean decimalComma;
    private final Iterator<CSVRecord> records;
    private int row;

    /** @param known columns the table may have */
    public CsvRows(InputStream body, List<Column> known) throws IOException {
        BufferedReader text = new BufferedReader(StrictJson.utf8(body));
        String header = headerLine(text);
        char separator = header.contains(";") ? ';' : header.contains("\t") ? '\t' : ',';
        this.decimalComma = separator != ',';
        this.columns = columnsOf(header, separator, known);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(true)
                .get();
        this.records =
                CSVParser.builder().setReader(text).setFormat(format).get().iterator();
    }

    /** Where each column's cell stands in a record, for naming the column in a finding. */
    static Map<String, String> columnNamesByPointer(List<Column> columns) {
        return columns.stream().collect(Collectors.toMap(Column::pointer, Column::name));
    }

    @Override
    public PostedRow next() throws IOException {
        CSVRecord record;
        try {
            if (!records.hasNext()) {
                return null;
            }
            record = records.next();
        } catch (UncheckedIOException unreadable) {
            if (unreadable.getCause() instanceof CSVException) {
                throw brokenQuotes();
            }
            throw unreadable.getCause();
        } catch (IllegalStateException brokenQuotes) {
            throw brokenQuotes();
        }
        row++;
        int line = (int) record.getParser().getCurrentLineNumber() + 1;
        String pointer = "/rows/" + (row - 1);
        if (record.size() != columns.size()) {
            FindingView finding = FindingView.error("column-count", pointer, "has " + record.size() + " cells")
                    .expecting(columns.size() + ", as in the header");
            return new PostedRow(row, line, pointer, null, List.of(finding));
        }
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        for (int i = 0; i < columns.size(); i++) {
            String cell = record.get(i).strip();
            if (!cell.isEmpty()) {
                put(content, columns.get(i), cell);
            }
        }
        return new PostedRow(row, line, pointer, content, List.of());
    }

    private Problem brokenQuotes() {
        return new Problem(ProblemCode.MALFORMED_CSV, "After row " + row + " the quotes do not match.");
    }

    private void put(ObjectNode content, Column column, String cell) {
        ObjectNode parent = content;
        List<String> path = column.path();
        for (int depth = 0; depth < path.size() - 1; depth++) {
            String member = path.get(depth);
            if (isPlace(path.get(depth + 1))) {
                ArrayNode array = parent.withArrayProperty(member);
                int place = Integer.parseInt(path.get(depth + 1));
                while (array.size() <= place) {
                    array.addObject();
                }
                parent = (ObjectNode) array.get(place);
                depth++;
            } else {
                parent = parent.withObjectProperty(member);
            }
        }
        String last = path.get(path.size() - 1);
        BigDecimal number = column.type() == Column.Type.NUMBER ? number(cell) : null;
        if (column.type() == Column.Type.TRUTH && (cell.equals("true") || cell.equals("false"))) {
            parent.put(last, Boolean.parseBoolean(cell));
        } else if (number == null) {
            // text in a number's place stays text, so that the record's own check tells what was seen
            parent.put(last, CsvTable.withoutMark(cell));
        } else if (number.scale() <= 0) {
            parent.put(last, number.toBigInteger());
        } else {
            parent.put(last, number);
        }
    }

    private static boolean isPlace(String member) {
        return member.length() == 1 && Character.isDigit(member.charAt(0));
    }

    private BigDecimal number(String cell) {
        String plain = decimalComma ? cell.replace(',', '.') : cell;
        if (!NUMBER.matcher(plain).matches()) {
            return null;
        }
        return new BigDecimal(plain);
    }

    private static String headerLine(BufferedReader text) throws IOException {
        StringBuilder line = new StringBuilder();
        int next;
        while ((next = text.read()) >= 0 && next != '\n') {
            line.append((char) next);
            if (line.length() > LONGEST_HEADER) {
                throw new Problem(ProblemCode.MALFORMED_CSV, "The first line is too long for a header.");
            }
        }
        String header = line.toString().strip();
        if (!header.isEmpty() && header.charAt(0) == BYTE_ORDER_MARK) {
            header = header.substring(1);
        }
        if (header.isBlank()) {
            throw new Problem(ProblemCode.EMPTY_BODY, "Send a table whose first line names the columns.");
        }
        return header;
    }

    private static List<Column> columnsOf(String header, char separator, List<Column> known) throws IOException {
        Map<String, Column> byName = known.stream().collect(Collectors.toMap(Column::name, Function.identity()));
        List<Column> found = new ArrayList<>();
        List<Fault> faults = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(header))
                .setFormat(format)
                .get()) {
            for (String cell : parser.iterator().next()) {
                String name = cell.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
                Column column = byName.get(name);
                if (column == null) {
                    String nearest = NearestName.to(name, byName.keySet());
                    faults.add(Fault.inBody(
                                    "/header",
                                    "unknown-column",
                                    nearest == null
                                            ? "unknown column; known: " + String.join(", ", byName.keySet())
                                            : "unknown column; did you mean " + nearest + "?")
                            .withValue(cell));
                } else if (!seen.add(name)) {
                    faults.add(Fault.inBody("/header", "repeated-column", "stands twice in the header")
                            .withValue(cell));
                } else {
                    found.add(column);
                }
            }
        } catch (IllegalStateException | UncheckedIOException brokenQuotes) {
            throw new Problem(ProblemCode.MALFORMED_CSV, "The quotes of the header do not match.");
        }
        if (!faults.isEmpty()) {
            throw new Problem(ProblemCode.MALFORMED_CSV, "The header was not understood; nothing was done.", faults);
        }
        return found;
    }
}
