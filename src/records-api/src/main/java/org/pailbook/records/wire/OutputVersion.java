package org.pailbook.records.wire;

/** What, besides records and parameters, the figures sent depend on. */
public interface OutputVersion {
    /** Another text as soon as any method gives other figures. */
    String text();
}
