package org.pailbook.records.upload;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.pailbook.records.exchange.CsvTable;

/** The rows of a file that were refused: each with its line, why, and as it was, so that it can be mended and brought in again. */
public final class RefusedRows {
    private static final String LINE = "line";
    private static final String WHY = "why";

    private static final List<String> OURS = List.of(LINE, WHY);

    private RefusedRows() {}

    /** Whether these headings are those of such a table. */
    public static boolean areHeadingsOfOne(List<String> headings) {
        return headings.size() > OURS.size() && headings.subList(0, OURS.size()).equals(OURS);
    }

    /** The headings of the file the rows were refused of. */
    static List<String> headingsOfFile(List<String> headings) {
        return headings.subList(OURS.size(), headings.size());
    }

    /** Whether a file is such a table, taken as one: its first columns are left out, so that its rows are those of another file. */
    static boolean isOne(List<String> headings, FileMapping mapping) {
        return areHeadingsOfOne(headings)
                && mapping.columns().subList(0, OURS.size()).stream().allMatch(String::isEmpty);
    }

    /**
     * Writes them as a table with the file's own headings, parted as the file was if by commas or semicolons. Of rows that had been
     * refused before, the line and reason of then give way to those of now.
     *
     * @param mapping what was said of the file
     * @param refused why, by line, of a job that has ended
     */
    public static void write(PendingFile file, FileMapping mapping, Map<Integer, String> refused, OutputStream out)
            throws IOException {
        FileView view = file.view().orElseThrow();
        List<String> own = view.headings(mapping.hasHeader());
        int leftOut = isOne(own, mapping) ? OURS.size() : 0;
        List<String> headings =
                Stream.concat(OURS.stream(), own.stream().skip(leftOut)).toList();
        CsvTable rows = new CsvTable(out, view.separator() == ';', headings);
        try (TextTable table = TextTable.open(file.path(), view.charset(), view.separator())) {
            for (TextTable.Row row = table.next(); row != null; row = table.next()) {
                String why = refused.get(row.line());
                if (why != null) {
                    rows.cell(row.line()).cell(why);
                    row.cells().stream().skip(leftOut).forEach(rows::cell);
                    rows.endRow();
                }
            }
        } catch (FileFault.Unreadable brokenOff) {
            // the rows up to there were judged, and the page says where the file breaks off
        }
        rows.end();
    }
}
