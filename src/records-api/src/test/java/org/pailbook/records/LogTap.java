package org.pailbook.records;

import java.util.List;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jboss.logmanager.ExtLogRecord;

/** Listens to what is logged while it is open. */
final class LogTap extends Handler implements AutoCloseable {
    private final Logger logger;
    private final List<String> lines;

    LogTap(String category, List<String> lines) {
        this.logger = Logger.getLogger(category);
        this.lines = lines;
        logger.addHandler(this);
    }

    @Override
    public void publish(LogRecord line) {
        synchronized (lines) {
            lines.add(ExtLogRecord.wrap(line).getFormattedMessage());
        }
    }

    @Override
    public void flush() {
        // nothing is held back
    }

    @Override
    public void close() {
        logger.removeHandler(this);
    }
}
