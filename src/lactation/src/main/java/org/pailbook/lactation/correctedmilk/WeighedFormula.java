package org.pailbook.lactation.correctedmilk;

import org.pailbook.lactation.method.Citation;

/** What every formula of this package is made of; the classes beside it are one published source each. */
abstract sealed class WeighedFormula implements CorrectedMilkFormula
        permits FatCorrectedMilk,
                IdfMilk2015,
                IdfMilk2022,
                NordicEnergyCorrectedMilk,
                EnergyCorrectedMilk35,
                SolidsCorrectedMilk {
    private final String id;
    private final String title;
    private final StandardMilk standard;
    private final MassWeights weights;
    private final Citation citation;

    WeighedFormula(String id, String title, StandardMilk standard, MassWeights weights, Citation citation) {
        this.id = id;
        this.title = title;
        this.standard = standard;
        this.weights = weights;
        this.citation = citation;
    }

    @Override
    public final String id() {
        return id;
    }

    @Override
    public final int version() {
        return 1;
    }

    @Override
    public final Citation citation() {
        return citation;
    }

    @Override
    public final String title() {
        return title;
    }

    @Override
    public final MassWeights weights() {
        return weights;
    }

    @Override
    public final StandardMilk standard() {
        return standard;
    }
}
