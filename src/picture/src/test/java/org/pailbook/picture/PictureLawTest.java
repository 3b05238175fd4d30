package org.pailbook.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What holds for every picture: well-formed, told in words, nothing from outside runs, everything drawn stands where it belongs. */
class PictureLawTest {
    private static final LocalDate CALVING = LocalDate.of(2025, 1, 1);
    private static final List<String> NAMES = List.of(
            "<script>alert(1)</script>",
            "\"onload=\"x",
            "a & b]]>",
            "\u05e4\u05e8\u05d4 \u202e12",
            "0123456789-0123456789-012345678");

    private static Document parsed(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        } catch (Exception unreadable) {
            throw new AssertionError(svg, unreadable);
        }
    }

    private static String lactation(PictureForm form, String name, Lactation lactation, LocalDate asOf) {
        return LactationPicture.of(form, name, lactation, projection(lactation, asOf), List.of(), asOf);
    }

    private static Projection305 projection(Lactation lactation, LocalDate asOf) {
        return new BestPrediction().project(lactation, LactationStandards.forCow("HOL", lactation.parity()), asOf);
    }

    private static Lactation tested(int tests) {
        List<TestDay> days = new ArrayList<>();
        for (int i = 0; i < tests; i++) {
            days.add(TestDay.ofMilk(CALVING.plusDays(20 + 30L * i), 34 - 2 * i));
        }
        return Lactation.inMilk(2, CALVING, days);
    }

    @Test
    void everyPictureIsAnImageToldInWordsAndHoldsNoStyleAndNoOutsideAddress() {
        List<String> all = new ArrayList<>();
        for (PictureForm form : List.of(PictureForm.PAGE, PictureForm.FILE)) {
            for (String name : NAMES) {
                all.add(lactation(form, name, tested(3), CALVING.plusDays(100)));
                all.add(HerdStagePicture.of(form, name, List.of(new HerdStagePicture.Point(40, 31.2, 1))));
                all.add(CellHistoryPicture.of(
                        form, name, List.of(TestDay.ofMilk(CALVING, 20).withSccThousandPerMl(84)), List.of(CALVING)));
                all.add(CalibrationPicture.of(form, name, List.of(row(0, 0.7), row(3, 0.9))));
                all.add(HerdMilkPicture.of(form, name, milkOfTestDays(1_400, 60)));
            }
        }
        for (String svg : all) {
            Element root = parsed(svg).getDocumentElement();
            assertThat(root.getAttribute("role")).isEqualTo("img");
            String[] told = root.getAttribute("aria-labelledby").split(" ");
            NodeList title = root.getElementsByTagName("title");
            NodeList description = root.getElementsByTagName("desc");
            assertThat(((Element) title.item(0)).getAttribute("id")).isEqualTo(told[0]);
            assertThat(((Element) description.item(0)).getAttribute("id")).isEqualTo(told[1]);
            assertThat(description.item(0).getTextContent()).isNotBlank();
            assertThat(root.getElementsByTagName("script").getLength()).isZero();
            assertThat(svg).doesNotContain("style=", "href", "url(", "NaN", "Infinity");
            NodeList everything = root.getElementsByTagName("*");
            for (int i = 0; i < everything.getLength(); i++) {
                assertThat(((Element) everything.item(i)).hasAttribute("onload"))
                        .isFalse();
            }
        }
    }

    private static ProjectionAccuracy.Row row(int tests, double share) {
        return new ProjectionAccuracy.Row(tests, 10, 8000, 0, 500, 400, 500, 0.9, share, 0.95, 1);
    }

    @Test
    void theTitleSaysTheFigureAndItsInterval() {
        Projection305 projection = projection(tested(3), CALVING.plusDays(100));
        String title = parsed(lactation(PictureForm.FILE, "Rosa", tested(3), CALVING.plusDays(100)))
                .getElementsByTagName("title")
                .item(0)
                .getTextContent();
        assertThat(title)
                .startsWith("Rosa, lactation 2, as of 2025-04-11: ")
                .contains(String.format(
                        java.util.Locale.ENGLISH,
                        "%,.0f kg in 305 days",
                        projection.milk305().orThrow()));
    }

    @Test
    void eachTestIsDrawnOnceWhereItsDayAndWeightAre() {
        // two tests fix the scale of each axis; the third must lie on it
        Random random = new Random(7);
        for (int trial = 0; trial < 20; trial++) {
            int day = 100 + random.nextInt(100);
            double kg = 10 + 15 * random.nextDouble();
            Lactation lactation = Lactation.inMilk(
                    2,
                    CALVING,
                    List.of(
                            TestDay.ofMilk(CALVING.plusDays(50), 30),
                            TestDay.ofMilk(CALVING.plusDays(day), kg),
                            TestDay.ofMilk(CALVING.plusDays(250), 10)));
            NodeList discs = parsed(lactation(PictureForm.FILE, "x", lactation, CALVING.plusDays(300)))
                    .getElementsByTagName("circle");
            // the first stands in the key
            assertThat(discs.getLength()).isEqualTo(4);
            double x50 = number(discs, 1, "cx");
            double x250 = number(discs, 3, "cx");
            double y30 = number(discs, 1, "cy");
            double y10 = number(discs, 3, "cy");
            // drawn to a tenth
            assertThat(number(discs, 2, "cx")).isCloseTo(x50 + (day - 50) * (x250 - x50) / 200, within(0.15));
            assertThat(number(discs, 2, "cy")).isCloseTo(y10 + (kg - 10) * (y30 - y10) / 20, within(0.15));
        }
    }

    private static double number(NodeList nodes, int index, String attribute) {
        return Double.parseDouble(((Element) nodes.item(index)).getAttribute(attribute));
    }

    @Test
    void aCowWithoutTestsAndOneDriedOffAreDrawn() {
        assertThat(parsed(lactation(PictureForm.PAGE, "new", tested(0), CALVING.plusDays(3)))
                        .getElementsByTagName("circle")
                        .getLength())
                .isEqualTo(1);
        String dry =
                lactation(PictureForm.PAGE, "dry", tested(5).withEndDate(CALVING.plusDays(200)), CALVING.plusDays(260));
        assertThat(dry).contains("last milked, day 200").doesNotContain("day 260");
        String old = lactation(PictureForm.PAGE, "long", tested(5), CALVING.plusDays(500));
        assertThat(old).doesNotContain("day 500");
    }

    @Test
    void marksOfTestsWeighedLaterAreHollow() {
        String svg = LactationPicture.of(
                PictureForm.FILE,
                "x",
                tested(2),
                projection(tested(2), CALVING.plusDays(60)),
                List.of(TestDay.ofMilk(CALVING.plusDays(90), 28)),
                CALVING.plusDays(60));
        NodeList circles = parsed(svg).getElementsByTagName("circle");
        List<String> hollow = new ArrayList<>();
        for (int i = 0; i < circles.getLength(); i++) {
            if (((Element) circles.item(i)).getAttribute("fill").equals("#fff")) {
                hollow.add(((Element) circles.item(i)).getAttribute("cx"));
            }
        }
        assertThat(svg).contains("weighed later");
        // the key's and the test's
        assertThat(circles.getLength()).isEqualTo(5);
        assertThat(hollow).hasSize(2);
    }

    @Test
    void lactationsAreToldApartByShape() {
        String svg = HerdStagePicture.of(
                PictureForm.PAGE,
                "herd",
                List.of(
                        new HerdStagePicture.Point(10, 20, 1),
                        new HerdStagePicture.Point(400, 20, 2),
                        new HerdStagePicture.Point(900, 20, 3),
                        new HerdStagePicture.Point(20, 20, 7)));
        // each shape once more in the key
        assertThat(svg.split(java.util.regex.Pattern.quote("<circle"))).hasSize(3);
        assertThat(svg.split(java.util.regex.Pattern.quote("d=\"M0-5.5"))).hasSize(3);
        assertThat(svg.split(java.util.regex.Pattern.quote("d=\"M-4-4"))).hasSize(4);
    }

    @Test
    void aCellHistoryNeedsACellCount() {
        assertThatThrownBy(() ->
                        CellHistoryPicture.of(PictureForm.PAGE, "x", List.of(TestDay.ofMilk(CALVING, 20)), List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static List<HerdMilkPicture.Point> milkOfTestDays(double kg, int... daysAfter) {
        List<HerdMilkPicture.Point> points = new ArrayList<>(List.of(new HerdMilkPicture.Point(CALVING, kg)));
        for (int days : daysAfter) {
            points.add(new HerdMilkPicture.Point(CALVING.plusDays(days), kg));
        }
        return points;
    }

    @Test
    void theMilkOfAnyHerdStandsUnderFewLines() {
        for (double kg : new double[] {3, 99, 1_400, 151_000}) {
            String svg = HerdMilkPicture.of(PictureForm.PAGE, "a herd", milkOfTestDays(kg, 30, 364));
            assertThat(svg.split("stroke=\"#ccc\"")).as(kg + " kg").hasSizeBetween(3, 8);
            assertThat(svg.split("<circle")).as(kg + " kg").hasSize(5);
        }
        assertThatThrownBy(() -> HerdMilkPicture.of(PictureForm.PAGE, "a herd", milkOfTestDays(5)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void momentsOfTheDaysDrawnHaveTheirLetterAndTheirKeyAndOthersNeither() {
        Lactation lactation = tested(3);
        LocalDate asOf = CALVING.plusDays(100);
        String svg = LactationPicture.of(
                PictureForm.PAGE,
                "a cow",
                lactation,
                projection(lactation, asOf),
                List.of(),
                asOf,
                List.of(
                        new LactationPicture.Moment(CALVING.plusDays(62), LactationPicture.Event.SERVICE),
                        new LactationPicture.Moment(CALVING.minusDays(90), LactationPicture.Event.TREATMENT)));
        // once above the curve and once in the key
        assertThat(svg.split(">S</text>")).hasSize(3);
        assertThat(svg).contains(">service</text>").doesNotContain(">T</text>", "treatment");
    }

    @Test
    void aPictureSpeaksTheLanguageAskedForAndEnglishWhereAWordIsLacking() {
        Lactation lactation = tested(3);
        String portuguese = lactation(spoken("pt-BR"), "7", lactation, CALVING.plusDays(90));
        assertThat(portuguese).contains(">kg por dia<", ">contraste<", ">days in milk<");
        assertThat(lactation(spoken("de"), "7", lactation, CALVING.plusDays(90)))
                .isEqualTo(lactation(PictureForm.PAGE, "7", lactation, CALVING.plusDays(90)))
                .contains(">kg per day<", ">test<");
    }

    private static PictureForm spoken(String language) {
        return PictureForm.PAGE.in(Locale.forLanguageTag(language), PictureForm.PAGE.numbers());
    }

    // one international pound is 0.45359237 kg exactly (agreement of 1959; from memory)
    private static final double POUND_KG = 0.45359237;
    private static final PictureForm.WeightUnit POUND = new PictureForm.WeightUnit("lb", POUND_KG);

    @Test
    void inPoundsEveryWeightIsThatOfKilogramsOverThePound() {
        PictureForm pounds = PictureForm.FILE.withWeightsIn(POUND);
        LocalDate asOf = CALVING.plusDays(100);
        Projection305 projection = projection(tested(3), asOf);
        String svg = lactation(pounds, "Rosa", tested(3), asOf);
        assertThat(parsed(svg).getElementsByTagName("title").item(0).getTextContent())
                .contains(String.format(
                        Locale.ENGLISH,
                        "%,.0f lb in 305 days",
                        projection.milk305().orThrow() / POUND_KG));
        for (String drawn : List.of(
                svg,
                HerdStagePicture.of(pounds, "h", List.of(new HerdStagePicture.Point(40, 31.2, 1))),
                HerdMilkPicture.of(pounds, "h", milkOfTestDays(1_400, 60)))) {
            assertThat(drawn).contains("lb per day").doesNotContain("kg");
        }
    }

    @Test
    void aMarkInPoundsLiesAtItsPoundsOnTheAxis() {
        for (PictureForm form : List.of(PictureForm.FILE, PictureForm.FILE.withWeightsIn(POUND))) {
            boolean isPounds = form.weights() == POUND;
            String svg = HerdStagePicture.of(
                    form,
                    "h",
                    List.of(
                            new HerdStagePicture.Point(40, 40 * (isPounds ? POUND_KG : 1), 1),
                            new HerdStagePicture.Point(90, 60 * (isPounds ? POUND_KG : 1), 1)));
            // the same marks and lines, whatever the unit: 40 and 60 of it
            NodeList discs = parsed(svg).getElementsByTagName("circle");
            assertThat(number(discs, 1, "cy")).isCloseTo(levelAt(svg, "40"), within(0.15));
            assertThat(number(discs, 2, "cy")).isCloseTo(levelAt(svg, "60"), within(0.15));
        }
    }

    /** Height of the line across that has this label. */
    private static double levelAt(String svg, String label) {
        java.util.regex.Matcher line = java.util.regex.Pattern.compile(
                        "<path d=\"M56 ([0-9.]+)H[0-9]+\" stroke=\"#ccc\"/><text [^>]*>" + label + "</text>")
                .matcher(svg);
        assertThat(line.find()).as("a line at " + label).isTrue();
        return Double.parseDouble(line.group(1));
    }

    @Test
    void numbersAreWrittenAsTheReaderWritesThem() {
        PictureForm comma = PictureForm.PAGE.in(
                Locale.GERMAN, (value, decimals) -> String.format(Locale.GERMANY, "%,." + decimals + "f", value));
        String cells = CellHistoryPicture.of(
                comma, "x", List.of(TestDay.ofMilk(CALVING, 20).withSccThousandPerMl(84)), List.of());
        assertThat(cells).contains(">12,5<", ">12.800<").doesNotContain("12.5<");
        assertThat(HerdMilkPicture.of(comma, "x", milkOfTestDays(1_400, 60))).contains(">1.500<");
    }
}
