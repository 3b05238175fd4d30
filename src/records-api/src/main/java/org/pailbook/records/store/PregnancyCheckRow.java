package org.pailbook.records.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.pailbook.lactation.event.PregnancyCheck;

/** A pregnancy check. */
@Entity
@Table(name = "pregnancy_check")
public class PregnancyCheckRow extends AnimalEvent {
    public String result;

    public String method;

    public String note;

    PregnancyCheck toLibrary() {
        return PregnancyCheck.of(
                date,
                switch (result) {
                    case "pregnant", "multiple" -> PregnancyCheck.Result.PREGNANT;
                    case "empty" -> PregnancyCheck.Result.OPEN;
                    default -> PregnancyCheck.Result.DOUBTFUL;
                });
    }
}
