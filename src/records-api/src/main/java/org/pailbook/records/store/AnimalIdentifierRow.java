package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** One identifier of one animal. */
@Entity
@Table(name = "animal_identifier")
public class AnimalIdentifierRow {
    @Id
    public String id;

    @Column(name = "herd_id")
    public String herdId;

    @Column(name = "animal_id")
    public String animalId;

    public String scheme;
    public String identifier;

    /** Position among the animal's identifiers; 0 is the one shown. */
    @Column(name = "place_no")
    public int placeNo;

    AnimalIdentifier toIdentifier() {
        return new AnimalIdentifier(scheme, identifier);
    }
}
