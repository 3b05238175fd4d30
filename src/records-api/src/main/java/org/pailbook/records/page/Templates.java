package org.pailbook.records.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** The templates in {@code templates/page}, checked against what they are given when the service is built. */
@CheckedTemplate(basePath = "page")
final class Templates {
    private Templates() {}

    static native TemplateInstance signIn(boolean isRefused);

    static native TemplateInstance herds(ListPages.HerdsPage page);

    static native TemplateInstance herd(HerdPage page);

    static native TemplateInstance cow(CowPage page);

    static native TemplateInstance projections(ListPages.ProjectionsPage page);

    static native TemplateInstance animals(ListPages.AnimalsPage page);

    static native TemplateInstance accuracy(ListPages.AccuracyPage page);

    static native TemplateInstance findings(ListPages.FindingsPage page);

    static native TemplateInstance lists(DecisionPages.ListsPage page);

    static native TemplateInstance milkWithheld(DecisionPages.WithheldPage page);

    static native TemplateInstance breeding(DecisionPages.BreedingPage page);

    static native TemplateInstance culling(DecisionPages.CullingPage page);

    static native TemplateInstance udderHealth(UdderPage page);

    static native TemplateInstance settings(SettingsPage page);

    static native TemplateInstance newCow(StartPages.NewCowPage page);

    static native TemplateInstance howTo(HowToPage page);

    static native TemplateInstance weighDay(WeighDayPage page);

    static native TemplateInstance weighDayOrder(WeighDayOrderPage page);

    static native TemplateInstance weighDayTotal(WeighDayTotalPage page);

    static native TemplateInstance importFile(ImportPages.ChoosePage page);

    static native TemplateInstance importEncoding(ImportPages.EncodingPage page);

    static native TemplateInstance importMap(ImportPages.MapPage page);

    static native TemplateInstance importRows(ImportPages.JobPage page);
}
