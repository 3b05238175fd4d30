package org.pailbook.records.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.breeding.BreedingList;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.Suggestion;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.udderhealth.UdderHealthMeasures;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.lactation.withheld.WithheldMilk;

/** Whatever the library says by a code stands in the words of the pages, so that a translation of that one file has it all. */
class WordsLawTest {
    private static final ResourceBundle WORDS = ResourceBundle.getBundle(
            "org.pailbook.records.page.words",
            Locale.ROOT,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    @Test
    void everythingTheLibrarySaysByACodeStandsInTheWordsAsTheLibrarySaysIt() {
        Map<String, String> said = new LinkedHashMap<>();
        for (FindingCode code : FindingCode.values()) {
            said.put("finding." + code.code(), code.meaning());
        }
        for (SentenceCode code : SentenceCode.values()) {
            if (code != SentenceCode.VERBATIM) {
                said.put("sentence." + code.code(), code.english());
            }
        }
        for (BreedingList list : BreedingList.values()) {
            said.put("rule." + list.wireName(), list.rule());
            said.put("ruleSource." + list.wireName(), list.source());
        }
        for (VeterinaryTrigger trigger : VeterinaryTrigger.values()) {
            said.put("veterinary." + trigger.wireName(), trigger.words());
        }
        for (Suggestion suggestion : Suggestion.values()) {
            said.put("suggestion." + suggestion.code(), suggestion.words());
        }
        UdderHealthMeasures.all().forEach(measure -> said.put("measure." + measure.id(), measure.what()));
        said.put("caution.culling", CullingCaution.TEXT);
        said.put("caution.withheld", WithheldMilk.CAUTION);
        said.put("caution.cells", VeterinaryTrigger.CAUTION);
        for (int i = 0; i < BreedingWorklist.CAUTIONS.size(); i++) {
            said.put("caution.breeding." + (i + 1), BreedingWorklist.CAUTIONS.get(i));
        }
        assertThat(said).hasSizeGreaterThan(250);
        said.forEach((key, english) -> {
            assertThat(WORDS.containsKey(key)).as("a word " + key).isTrue();
            assertThat(WORDS.getString(key)).as(key).isEqualTo(english);
        });
    }
}
