package org.pailbook.picture;

/** Lines told apart by dash and width, not by colour. */
enum Stroke {
    FULL("stroke=\"#111\" stroke-width=\"2\""),
    DASHED("stroke=\"#111\" stroke-width=\"1.5\" stroke-dasharray=\"7 4\""),
    DOTTED("stroke=\"#111\" stroke-width=\"1.5\" stroke-dasharray=\"2 3\""),
    FAINT("stroke=\"#767676\" stroke-width=\"1\"");

    private final String attributes;

    Stroke(String attributes) {
        this.attributes = attributes;
    }

    String attributes() {
        return attributes;
    }
}
