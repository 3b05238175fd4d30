package org.pailbook.records.upload;

import java.util.Locale;

/** Why a file is no table that can be read. */
public enum FileFault {
    EMPTY,
    WORKBOOK,
    DOCUMENT,
    NOT_TEXT,
    NO_ROWS,
    TOO_MANY_COLUMNS,
    BROKEN_QUOTES,
    TOO_MANY_ROWS;

    /** Under which its words stand. */
    public String wordKey() {
        return "import.fault." + name().toLowerCase(Locale.ROOT);
    }

    /** Thrown where a file turns out to be none. */
    public static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final FileFault fault;
        private final int line;

        Unreadable(FileFault fault, int line) {
            super(fault.name());
            this.fault = fault;
            this.line = line;
        }

        public FileFault fault() {
            return fault;
        }

        /** Where; 0 for the whole file. */
        public int line() {
            return line;
        }
    }
}
