package org.pailbook.records.wire;

import java.util.Collection;
import java.util.Locale;

/** Finds what somebody probably meant by a misspelt name. */
public final class NearestName {
    private NearestName() {}

    /** The known name nearest in spelling, or null if none is near. */
    public static String to(String name, Collection<String> known) {
        String best = null;
        int bestDistance = Integer.MAX_VALUE;
        String sought = name.length() > 60 ? name.substring(0, 60) : name;
        for (String candidate : known) {
            int distance = distance(sought.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (distance < bestDistance) {
                bestDistance = distance;
                best = candidate;
            }
        }
        return best != null && bestDistance <= Math.max(2, Math.max(best.length(), sought.length()) / 2) ? best : null;
    }

    /** Edits (insert, delete, replace) from one text to the other, after Levenshtein 1966. */
    private static int distance(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int replaced = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[to.length()];
    }
}
