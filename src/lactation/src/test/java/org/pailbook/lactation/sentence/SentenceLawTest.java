package org.pailbook.lactation.sentence;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.Month;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is said with values in it: every code has its own text, every place its value. */
class SentenceLawTest {
    private static final Pattern PLACE = Pattern.compile("%(.)(?:\\$s)?");

    @Test
    void theValuesStandInTheirPlacesInEnglish() {
        assertThat(Sentence.of(SentenceCode.DUE_TO_DRY_OFF, LocalDate.of(2026, 1, 2), LocalDate.of(2026, 10, 9), 60)
                        .text())
                .isEqualTo("Pregnant since 2026-01-02, expected to calve 2026-10-09; 60 days dry before.");
        assertThat(Sentence.of(SentenceCode.REASON_MILK, Amount.number(92.4, 0)).text())
                .isEqualTo("milk 92 % of the mean of her group; typical 100 %");
        assertThat(Sentence.of(
                                SentenceCode.A_DAY_IN_MONTH,
                                Amount.measured(0.42, 2, "kg").signed(),
                                Sentence.of(SentenceCode.TRAIT_MILK),
                                Month.MARCH)
                        .text())
                .isEqualTo("+0.42 kg a day of milk for calvings in March");
        assertThat(Sentence.of(SentenceCode.TEST_ON, "x", 3, List.of(Sentence.verbatim("a"), Sentence.verbatim("b")))
                        .text())
                .isEqualTo("test on x, day 3: a; b");
        assertThat(Sentence.verbatim("a 100 %s and %1$s stay").text()).isEqualTo("a 100 %s and %1$s stay");
    }

    @Test
    void anotherTextMayTakeThePlacesInAnotherOrderAndAWrongOneTakesNothingAway() {
        Sentence said = Sentence.of(SentenceCode.DAY_OF, 3, 70);
        assertThat(said.in("%2$s: %1$s, 100 %%", Object::toString)).isEqualTo("70: 3, 100 %");
        for (String wrong : List.of("%3$s", "%", "%d", "%0$s", "%1$", "%1")) {
            assertThat(said.in(wrong, Object::toString)).isEqualTo(wrong);
        }
    }

    @Test
    void placesCountFromOneAndNoSignIsLeftOver() {
        Set<String> codes = new HashSet<>();
        for (SentenceCode code : SentenceCode.values()) {
            assertThat(codes.add(code.code())).as(code.code()).isTrue();
            int most = 0;
            Set<Integer> used = new HashSet<>();
            for (Matcher place = PLACE.matcher(code.english()); place.find(); ) {
                if (!place.group().equals("%%")) {
                    assertThat(place.group()).as(code.code()).matches("%[1-9]\\$s");
                    used.add(place.group(1).charAt(0) - '0');
                    most = Math.max(most, place.group(1).charAt(0) - '0');
                }
            }
            assertThat(used).as(code.code()).hasSize(most);
        }
        assertThat(Arrays.stream(SentenceCode.values()).map(SentenceCode::code)).contains("never-served");
    }
}
