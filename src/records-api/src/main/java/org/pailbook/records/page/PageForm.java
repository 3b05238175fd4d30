package org.pailbook.records.page;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.pailbook.records.problem.Fault;

/** Puts a form together, field by field: labels from the words, values as typed or stored, faults beside the field they are about. */
final class PageForm {
    private final String words;
    private final Map<String, String> values;
    private final List<Fault> faults;
    private final List<FormField> fields = new ArrayList<>();

    /**
     * @param words begin of the keys of its labels
     * @param faults of what was sent, each in the body at {@code /} and the field's name
     */
    PageForm(String words, Map<String, String> values, List<Fault> faults) {
        this.words = words;
        this.values = values;
        this.faults = faults;
    }

    PageForm needed(String type, String name) {
        return add(type, name, true, List.of());
    }

    PageForm field(String type, String name) {
        return add(type, name, false, List.of());
    }

    /** Of these values, or none; each is called as its word says, if there is one. */
    PageForm choice(String name, boolean isRequired, List<String> of) {
        List<FormField.Choice> choices = new ArrayList<>();
        choices.add(new FormField.Choice("", Shown.NONE, value(name).isEmpty()));
        of.forEach(one -> choices.add(new FormField.Choice(one, one, one.equals(value(name)))));
        return add("choice", name, isRequired, choices);
    }

    private PageForm add(String type, String name, boolean isRequired, List<FormField.Choice> choices) {
        String key = words + "." + name;
        fields.add(new FormField(
                name,
                PageWords.word(key),
                type,
                value(name),
                PageLanguage.current().has(key + ".hint") ? PageWords.word(key + ".hint") : "",
                isRequired,
                choices,
                faults.stream()
                        .filter(fault -> ("/" + name).equals(fault.pointer()))
                        .map(PageForm::words)
                        .toList()));
        return this;
    }

    private String value(String name) {
        return values.getOrDefault(name, "");
    }

    List<FormField> fields() {
        return List.copyOf(fields);
    }

    /** Faults that are about no single field. */
    List<String> otherFaults() {
        return faults.stream()
                .filter(fault -> fields.stream().noneMatch(field -> ("/" + field.name()).equals(fault.pointer())))
                .map(PageForm::words)
                .toList();
    }

    private static String words(Fault fault) {
        return fault.message();
    }

    /** What was typed as the API would get it: empty fields left out, numbers with point or comma as numbers. */
    static ObjectNode content(Map<String, String> typed, List<FormField> fields) {
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        for (FormField field : fields) {
            String text = typed.getOrDefault(field.name(), "").strip();
            if (!text.isEmpty()) {
                if (field.isNumber()) {
                    putNumber(content, field.name(), text);
                } else {
                    content.put(field.name(), text);
                }
            }
        }
        return content;
    }

    /** What is no number stays text, so that the intake says so. */
    static void putNumber(ObjectNode content, String name, String text) {
        try {
            BigDecimal number = new BigDecimal(text.replace(',', '.').replace("\u202f", ""));
            if (number.scale() <= 0 && number.precision() < 9) {
                content.put(name, number.intValueExact());
            } else {
                content.put(name, number.doubleValue());
            }
        } catch (ArithmeticException | NumberFormatException notANumber) {
            content.put(name, text);
        }
    }
}
