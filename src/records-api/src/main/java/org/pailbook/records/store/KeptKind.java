package org.pailbook.records.store;

/** What the store must know of a kind of record to read an old version back. */
public interface KeptKind<E extends StoredRecord> {
    /** Plural, kebab-case, as kept with each replaced version. */
    String name();

    Class<E> entity();

    /** The record as it was in that version. */
    E restore(SupersededVersionRow version);
}
