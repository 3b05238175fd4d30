package org.pailbook.records.upload;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.records.intake.Outcome;

/** A file's rows being judged, or taken: how far it is and what was found. One thread writes, others look. */
public final class FileJob {
    /** Rows that are told one by one. Ours. */
    public static final int MOST_TOLD = 500;

    /**
     * Something found on a row.
     *
     * @param line of the file
     * @param isRefused whether the row was refused
     * @param column the file's own name of it; empty text for the whole row
     * @param seen as it stood there; empty text if that does not tell
     */
    public record Told(int line, boolean isRefused, String column, String seen, String message) {
        String words() {
            return column.isEmpty() ? message : column + ": " + message;
        }
    }

    /** Refused rows that can be had as a file. Ours. */
    public static final int MOST_REFUSED = 20_000;

    private final boolean isTrial;
    private final int total;
    private final Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
    private final List<Told> told = new ArrayList<>();
    private final Map<Integer, String> refused = new LinkedHashMap<>();
    private int done;
    private int warnings;
    private int notTold;
    private boolean isRunning = true;
    private FileFault.Unreadable fault;
    private boolean isBroken;

    FileJob(boolean isTrial, int total) {
        this.isTrial = isTrial;
        this.total = total;
    }

    /** Whether nothing is stored. */
    public boolean isTrial() {
        return isTrial;
    }

    public int total() {
        return total;
    }

    public synchronized int done() {
        return done;
    }

    public synchronized boolean isRunning() {
        return isRunning;
    }

    public synchronized int count(Outcome outcome) {
        return counts.getOrDefault(outcome, 0);
    }

    /** Rows taken that have something to be looked at. */
    public synchronized int warnings() {
        return warnings;
    }

    /** What was found, in the order of the file. */
    public synchronized List<Told> told() {
        // rows that are no rows are told as they are read, the others chunk by chunk
        return told.stream().sorted(Comparator.comparingInt(Told::line)).toList();
    }

    /** Why rows were refused, by their lines; the first {@link #MOST_REFUSED} of them. */
    public synchronized Map<Integer, String> refused() {
        return Map.copyOf(refused);
    }

    /** Findings beyond those told. */
    public synchronized int notTold() {
        return notTold;
    }

    /** What ended it before the end of the file. */
    public synchronized Optional<FileFault.Unreadable> fault() {
        return Optional.ofNullable(fault);
    }

    /** Whether something went wrong on our side. */
    public synchronized boolean isBroken() {
        return isBroken;
    }

    synchronized void count(Outcome outcome, boolean isWarned) {
        done++;
        counts.merge(outcome, 1, Integer::sum);
        warnings += isWarned ? 1 : 0;
    }

    synchronized void tell(Told one) {
        if (one.isRefused() && (refused.size() < MOST_REFUSED || refused.containsKey(one.line()))) {
            refused.merge(one.line(), one.words(), (first, next) -> first + "; " + next);
        }
        if (told.size() < MOST_TOLD) {
            told.add(one);
        } else {
            notTold++;
        }
    }

    synchronized void end(FileFault.Unreadable brokenOff) {
        fault = brokenOff;
        isRunning = false;
    }

    synchronized void breakOff() {
        isBroken = true;
        isRunning = false;
    }
}
