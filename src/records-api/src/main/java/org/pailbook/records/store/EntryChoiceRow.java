package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** How the holder of a key types a herd's weigh day. */
@Entity
@Table(name = "entry_choice")
public class EntryChoiceRow {
    @Id
    public String id;

    @Column(name = "herd_id")
    public String herdId;

    @Column(name = "key_id")
    public String keyId;

    @Column(name = "sheet_order")
    public String sheetOrder;

    /** Milkings a day, 1 to 3; 1 is the milk of the whole day in one field. */
    public int milkings;

    /** Whether fat, protein and cells are typed too. */
    public boolean samples;

    /** Ids of animals in the order of the sheet, one a line; null if none was made. */
    @Column(name = "own_order")
    public String ownOrder;
}
