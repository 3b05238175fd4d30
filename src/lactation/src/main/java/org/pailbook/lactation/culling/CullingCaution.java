package org.pailbook.lactation.culling;

/** What has to be read with every answer about keeping or replacing a cow. */
public final class CullingCaution {
    /** Shown with every list and every answer. */
    public static final String TEXT =
            "An estimate from recorded data. It does not see lameness, temperament, a sick cow's welfare, family lines or your"
                    + " feed stocks. A cow in pain or one that cannot travel is a matter for the veterinarian, not for this list."
                    + " Check meat withholding on the label before any sale.";

    private CullingCaution() {}
}
