package org.pailbook.records.page;

import org.pailbook.records.MarkedWords;

/** The made-up translation. Named as {@link java.util.ResourceBundle} looks for it. */
public final class words_qaa extends MarkedWords {
    public words_qaa() {
        super("org.pailbook.records.page.words");
    }
}
