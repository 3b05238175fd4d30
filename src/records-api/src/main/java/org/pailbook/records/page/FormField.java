package org.pailbook.records.page;

import java.util.List;

/**
 * One field of a form.
 *
 * @param type {@code text}, {@code date}, {@code number} or {@code choice}
 * @param value as typed or stored; empty text for none
 * @param hint a word on it; empty text for none
 * @param errors what was wrong with the value sent
 */
record FormField(
        String name,
        String label,
        String type,
        String value,
        String hint,
        boolean isRequired,
        List<Choice> choices,
        List<String> errors) {

    /** One value to choose. */
    record Choice(String value, String label, boolean isChosen) {}

    public boolean isChoice() {
        return type.equals("choice");
    }

    public boolean isDate() {
        return type.equals("date");
    }

    public boolean isNumber() {
        return type.equals("number");
    }
}
