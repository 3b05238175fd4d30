package org.pailbook.picture;

/** Marks told apart by shape, not by colour. */
enum Mark {
    DISC("<circle cx=\"%1$.1f\" cy=\"%2$.1f\" r=\"4.5\" fill=\"#111\" stroke=\"#fff\"/>"),
    RING("<circle cx=\"%1$.1f\" cy=\"%2$.1f\" r=\"4.5\" fill=\"#fff\" stroke=\"#111\" stroke-width=\"1.8\"/>"),
    TRIANGLE("<path transform=\"translate(%1$.1f %2$.1f)\" d=\"M0-5.5L5.5 4.5H-5.5Z\" fill=\"#fff\" stroke=\"#111\""
            + " stroke-width=\"1.6\"/>"),
    CROSS("<path transform=\"translate(%1$.1f %2$.1f)\" d=\"M-4-4L4 4M-4 4L4-4\" fill=\"none\" stroke=\"#111\""
            + " stroke-width=\"2\"/>");

    private final String form;

    Mark(String form) {
        this.form = form;
    }

    String at(double x, double y) {
        return String.format(java.util.Locale.ROOT, form, x, y);
    }
}
