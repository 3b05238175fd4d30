package org.pailbook.picture;

/** How large a picture is drawn before it is scaled; text is 13 units high in each. */
public enum PictureSize {
    /** In a page read on a telephone too: still to be read at 300 points of width; no heading of its own. */
    PAGE(440, 330, false),
    /** A file that stands for itself, with its heading. */
    FILE(760, 400, true);

    private final int width;
    private final int height;
    private final boolean isHeaded;

    PictureSize(int width, int height, boolean isHeaded) {
        this.width = width;
        this.height = height;
        this.isHeaded = isHeaded;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Whether the title is drawn, beside being told to those who cannot see. */
    boolean isHeaded() {
        return isHeaded;
    }
}
