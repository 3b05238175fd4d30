package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.time.LocalDate;
import java.util.List;

/** An animal of a herd. Its identifiers are rows of their own, since any of them finds it. */
@Entity
@Table(name = "animal")
public class AnimalRow extends StoredRecord {
    public String name;
    public String breed;
    public String sex;

    @Column(name = "birth_date")
    public LocalDate birthDate;

    /** In the order posted; loaded and written beside the row. */
    @Transient
    public List<AnimalIdentifier> identifiers = List.of();
}
