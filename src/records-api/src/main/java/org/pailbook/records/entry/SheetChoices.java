package org.pailbook.records.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import org.pailbook.records.store.EntryChoices;
import org.pailbook.records.store.HerdRow;

/** What the holder of each key chose for a herd's sheet, remembered until another choice. */
@ApplicationScoped
public class SheetChoices {
    private final EntryChoices kept;

    @Inject
    SheetChoices(EntryChoices kept) {
        this.kept = kept;
    }

    public EntryChoice of(HerdRow herd, String keyId) {
        return kept.of(herd, keyId).map(EntryChoice::of).orElse(EntryChoice.USUAL);
    }

    /** Keeps order, milkings and samples; the order written down stays. */
    public void keep(HerdRow herd, String keyId, EntryChoice choice) {
        kept.change(herd, keyId, EntryChoice.USUAL.row(), choice::fill);
    }

    /** Keeps an order written down, and takes it from now on. */
    public void keepOwn(HerdRow herd, String keyId, List<String> animalIds) {
        kept.change(herd, keyId, EntryChoice.USUAL.row(), row -> {
            row.sheetOrder = SheetOrder.OWN.wireName();
            row.ownOrder = String.join("\n", animalIds);
        });
    }
}
