package org.pailbook.records.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is kept never grows beyond its room, and what was asked for longest ago goes first. */
class RecentAnswersLawTest {
    private static final String QUARTER = "x".repeat(1 << 18);

    @Test
    void theOneAskedForLongestAgoMakesRoom() {
        RecentAnswers recent = new RecentAnswers(1);
        for (String tag : new String[] {"a", "b", "c", "d"}) {
            recent.keep(tag, QUARTER);
        }
        assertThat(recent.find("a")).contains(QUARTER);
        recent.keep("e", QUARTER);
        assertThat(recent.find("b")).isEmpty();
        assertThat(recent.find("a")).isPresent();
        assertThat(recent.find("e")).isPresent();
    }

    @Test
    void keepingTheSameAgainTakesNoMoreRoom() {
        RecentAnswers recent = new RecentAnswers(1);
        recent.keep("first", QUARTER);
        for (int i = 0; i < 10; i++) {
            recent.keep("again", QUARTER);
        }
        assertThat(recent.find("first")).isPresent();
    }

    @Test
    void aTextOfMoreThanAThirdOfTheRoomIsNotKeptAndNothingIsInNone() {
        RecentAnswers recent = new RecentAnswers(1);
        recent.keep("long", QUARTER + QUARTER);
        assertThat(recent.find("long")).isEmpty();
        RecentAnswers none = new RecentAnswers(0);
        none.keep("any", "x");
        assertThat(none.find("any")).isEmpty();
    }
}
