package org.pailbook.records;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.udderhealth.TankLimits;

/** Pages in a made-up language in which every word is marked: what is not marked does not come from the file of words. */
@QuarkusTest
class TranslationContractTest {
    private static final List<String> KINDS = List.of(
            "animals",
            "calvings",
            "test-days",
            "dry-offs",
            "departures",
            "services",
            "pregnancy-checks",
            "breeding-decisions",
            "treatments",
            "foremilk-checks",
            "milkings",
            "tank-readings",
            "tank-pickups",
            "prices",
            "settings");
    private static final Set<String> NAMES = Set.of(
            "animal_scheme", "animal_id", "name", "breed", "product_name", "sire", "note", "currency", "tank_limit");
    /** Symbols of units, and the program's name. */
    private static final Set<String> NOT_TRANSLATED = Set.of("Pailbook", "kg", "lb", "mL");

    private static final Pattern MARKED =
            Pattern.compile(MarkedWords.OPEN + "[^" + MarkedWords.OPEN + MarkedWords.CLOSE + "]*" + MarkedWords.CLOSE);
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}(?:[ -]\\p{L}+)*");

    private static TestHerd sample(Set<String> recorded) {
        TestHerd herd = TestHerd.make();
        for (String kind : KINDS) {
            String rows = file("/sample-herd/" + kind + ".csv");
            herd.bulk(kind, TestHerd.CSV, rows).expecting(200);
            addNames(rows, recorded);
        }
        return herd;
    }

    /** Names and numbers that people gave, which no translation changes. */
    private static void addNames(String rows, Set<String> recorded) {
        List<String> lines = rows.lines().toList();
        List<String> heads = List.of(lines.get(0).replace("\uFEFF", "").split(","));
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",");
            for (int i = 0; i < Math.min(cells.length, heads.size()); i++) {
                // a reason of several words is what somebody wrote; one of one word is a code
                boolean isWritten = heads.get(i).equals("reason") && cells[i].contains(" ");
                if (isWritten || NAMES.contains(heads.get(i)) && !cells[i].isBlank()) {
                    recorded.add(cells[i].strip());
                }
            }
        }
    }

    private static String lastTestDay() {
        return Pattern.compile("\\d{4}-\\d\\d-\\d\\d")
                .matcher(file("/sample-herd/test-days.csv"))
                .results()
                .map(date -> date.group())
                .max(Comparator.naturalOrder())
                .orElseThrow();
    }

    private static String file(String name) {
        try (InputStream in = TranslationContractTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new AssertionError(name, unreadable);
        }
    }

    private static String page(TestHerd herd, String rest) {
        return given().urlEncodingEnabled(false)
                .auth()
                .preemptive()
                .basic("anyone", DatabaseForTests.ADMIN_KEY)
                .header("Accept-Language", MarkedWords.LANGUAGE)
                .get("/pages/herds/" + herd.code() + rest)
                .asString();
    }

    /** What is shown and read aloud, one line a piece. */
    private static String shown(String page) {
        StringBuilder shown = new StringBuilder();
        for (Matcher label = Pattern.compile("aria-label=\"([^\"]*)\"").matcher(page); label.find(); ) {
            shown.append(label.group(1)).append('\n');
        }
        return shown.append(page.replaceAll("<[^>]*>", "\n")).toString();
    }

    @Test
    void nothingOfThePagesIsSaidOutsideTheFileOfWords() {
        Set<String> given = new LinkedHashSet<>();
        TestHerd herd = sample(given);
        given.add("Herd " + herd.code());
        given.add(herd.code());
        String asOf = "?asOf=" + lastTestDay();
        // titles of publications are not translated, nor are names by which methods and limits are called over the API
        addTexts(herd.send("GET", "/v1/methods", null, null).expecting(200).json(), given);
        // of a real language the platform has them
        Locale language = Locale.forLanguageTag(MarkedWords.LANGUAGE);
        for (Month month : Month.values()) {
            given.add(month.getDisplayName(TextStyle.FULL, language));
        }
        TankLimits.all().forEach(limit -> given.add(limit.id()));
        List<String> longestFirst = given.stream()
                .sorted(Comparator.comparing(String::length).reversed())
                .toList();
        List<String> pages = new ArrayList<>(
                List.of("", "/lists", "/projections", "/findings", "/settings", "/accuracy", "/animals"));
        for (String list : List.of(
                "milk-withheld",
                "to-breed",
                "not-yet-served-late",
                "watch-for-return",
                "to-check",
                "recheck",
                "repeat-breeder",
                "due-to-dry-off",
                "due-to-calve",
                "not-to-breed",
                "udder-health",
                "culling")) {
            pages.add("/lists/" + list);
        }
        Matcher cow = Pattern.compile("/pages/herds/[^/\"]+(/animals/[^?\"]+)").matcher(page(herd, "/animals" + asOf));
        while (cow.find()) {
            pages.add(cow.group(1));
        }
        assertThat(pages).hasSizeGreaterThan(40);
        Set<String> outside = new LinkedHashSet<>();
        for (String rest : pages) {
            String page = page(herd, rest + asOf);
            assertThat(page).as(rest).contains("<html lang=\"" + MarkedWords.LANGUAGE + "\"");
            for (String piece : shown(page).split("\n")) {
                for (Matcher word = WORD.matcher(unmarked(piece, longestFirst)); word.find(); ) {
                    if (!NOT_TRANSLATED.contains(word.group())) {
                        outside.add(word.group() + " - in: " + piece.strip() + "   on " + rest);
                    }
                }
            }
        }
        assertThat(outside).isEmpty();
    }

    private static void addTexts(JsonNode json, Set<String> texts) {
        if (json.isTextual() && json.asText().length() > 1) {
            texts.add(json.asText());
        }
        json.forEach(part -> addTexts(part, texts));
    }

    private static String unmarked(String piece, List<String> given) {
        String rest = MARKED.matcher(piece).replaceAll(" ");
        if (WORD.matcher(rest).find()) {
            for (String text : given) {
                rest = rest.replace(text, " ");
            }
        }
        return rest;
    }
}
