package org.pailbook.records.upload;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What a file shows once its encoding is known.
 *
 * @param first its first rows, the first of all among them
 * @param rows how many there are in all
 * @param looks of the columns, the first row left out
 */
public record FileView(Charset charset, char separator, List<List<String>> first, int rows, List<ColumnLook> looks) {
    static final int MOST_ROWS = 200_000;
    private static final int FIRST_ROWS = 9;

    static FileView of(Path file, Charset charset) throws IOException, FileFault.Unreadable {
        char separator = TextTable.separator(file, charset);
        List<List<String>> first = new ArrayList<>();
        List<ColumnLook> looks = new ArrayList<>();
        int rows = 0;
        try (TextTable table = TextTable.open(file, charset, separator)) {
            for (TextTable.Row row = table.next(); row != null; row = table.next()) {
                if (rows == 0) {
                    if (row.cells().size() > TextTable.MOST_COLUMNS) {
                        throw new FileFault.Unreadable(FileFault.TOO_MANY_COLUMNS, 0);
                    }
                    row.cells().forEach(any -> looks.add(new ColumnLook()));
                } else {
                    for (int i = 0; i < Math.min(looks.size(), row.cells().size()); i++) {
                        looks.get(i).add(row.cells().get(i));
                    }
                }
                if (first.size() < FIRST_ROWS) {
                    first.add(row.cells());
                }
                if (++rows > MOST_ROWS) {
                    throw new FileFault.Unreadable(FileFault.TOO_MANY_ROWS, 0);
                }
            }
        }
        if (rows == 0) {
            throw new FileFault.Unreadable(FileFault.EMPTY, 0);
        }
        if (rows == 1 && !isData(first.get(0))) {
            throw new FileFault.Unreadable(FileFault.NO_ROWS, 0);
        }
        return new FileView(charset, separator, first, rows, List.copyOf(looks));
    }

    /** Whether the first line looks like a row rather than a heading. */
    public boolean beginsWithData() {
        return isData(first.get(0));
    }

    private static boolean isData(List<String> cells) {
        ColumnLook look = new ColumnLook();
        cells.forEach(look::add);
        boolean hasDay = cells.stream().anyMatch(cell -> FileDates.parts(cell) != null);
        return hasDay || look.isData();
    }

    /** Names of the columns: the first line, or numbers where it is a row. */
    public List<String> headings(boolean hasHeader) {
        if (hasHeader) {
            return HeaderWords.distinct(first.get(0));
        }
        List<String> numbered = new ArrayList<>();
        for (int i = 1; i <= first.get(0).size(); i++) {
            numbered.add("#" + i);
        }
        return numbered;
    }

    /** Some rows, the heading left out. */
    public List<List<String>> examples(boolean hasHeader) {
        return Collections.unmodifiableList(first.subList(hasHeader ? 1 : 0, first.size()));
    }

    public int rowsToTake(boolean hasHeader) {
        return hasHeader ? rows - 1 : rows;
    }
}
