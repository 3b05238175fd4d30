package org.pailbook.records.intake;

import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.Fields;

/**
 * How a record names its animal: by scheme and id, or by our own id alone.
 *
 * @param scheme null when {@code id} is ours
 */
public record AnimalReference(String scheme, String id) {
    private static final int LONGEST = 100;

    /** The member {@code animal}; null, with a finding, if it is missing or wrong. */
    static AnimalReference read(Fields record) {
        record.require("animal");
        Fields animal = record.object("animal");
        if (animal == null) {
            return null;
        }
        String scheme = animal.text("scheme", LONGEST);
        String id = animal.requiredText("id", LONGEST);
        animal.finish();
        return id == null ? null : new AnimalReference(scheme, id);
    }

    AnimalIdentifier identifier() {
        return new AnimalIdentifier(scheme, id);
    }

    String shown() {
        return scheme == null ? id : scheme + ":" + id;
    }
}
