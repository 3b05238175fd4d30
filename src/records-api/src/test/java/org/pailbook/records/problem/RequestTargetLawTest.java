package org.pailbook.records.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.net.URI;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("law")
class RequestTargetLawTest {
    private static final long SEED = 20261125L;
    private static final String PIECES = "/%%%azAZ059.-_~:?&=+|[]{}<>\"\\^` #;,@!$'()*éÿ\u0001\u007f";

    @Test
    void whatPassesHereIsAnAddressForTheHttpLayerAndKeepsItsText() {
        Random random = new Random(SEED);
        int passed = 0;
        for (int i = 0; i < 200_000; i++) {
            StringBuilder address = new StringBuilder("/v1/");
            for (int length = random.nextInt(8); length > 0; length--) {
                address.append(PIECES.charAt(random.nextInt(PIECES.length())));
            }
            String uri = address.toString();
            if (RequestTarget.flawIn(uri).isEmpty()) {
                passed++;
                assertThatCode(() -> new URI(uri)).as("seed %d, %s", SEED, uri).doesNotThrowAnyException();
                assertThat(URLDecoder.decode(uri, StandardCharsets.UTF_8))
                        .as("seed %d, %s", SEED, uri)
                        .doesNotContain("\uFFFD");
            }
        }
        assertThat(passed).as("addresses that passed, seed %d", SEED).isGreaterThan(1000);
    }

    @Test
    void everyTextPassesWhenItIsPercentEncodedAsUtf8() {
        Random random = new Random(SEED);
        for (int i = 0; i < 2_000; i++) {
            int codePoint = 0x20 + random.nextInt(0xD800 - 0x20);
            String text = Character.toString(codePoint == 127 ? 126 : codePoint);
            String uri = "/v1/herds/" + URLEncoder.encode(text, StandardCharsets.UTF_8);
            assertThat(RequestTarget.flawIn(uri))
                    .as("seed %d, U+%04X", SEED, codePoint)
                    .isEmpty();
        }
    }

    @Test
    void aPercentSignNeedsTwoHexadecimalDigits() {
        for (String uri : new String[] {"/%", "/%4", "/%zz", "/%4z", "/%z4", "/%-1", "/a%20%"}) {
            assertThat(RequestTarget.flawIn(uri))
                    .map(RequestTarget.Flaw::code)
                    .as(uri)
                    .contains(ProblemCode.BAD_PATH);
            assertThat(RequestTarget.flawIn(uri))
                    .map(RequestTarget.Flaw::detail)
                    .as(uri)
                    .hasValueSatisfying(detail -> assertThat(detail).contains("hexadecimal"));
        }
        assertThat(RequestTarget.flawIn("/a?q=%zz"))
                .map(RequestTarget.Flaw::code)
                .contains(ProblemCode.BAD_PARAMETER);
        assertThat(RequestTarget.flawIn("/a%25?q=%25")).isEmpty();
    }

    @Test
    void bytesThatAreNotUtf8AreRefusedInsteadOfReplaced() {
        assertThat(RequestTarget.flawIn("/v1/herds/%FF"))
                .map(RequestTarget.Flaw::code)
                .contains(ProblemCode.BAD_PATH);
        assertThat(RequestTarget.flawIn("/v1/herds/%C3%A7")).isEmpty();
        assertThat(RequestTarget.flawIn("/v1?q=%C3"))
                .map(RequestTarget.Flaw::code)
                .contains(ProblemCode.BAD_PARAMETER);
    }

    @Test
    void rawBytesAreRefusedBecauseTheHttpLayerReadsThemAsLatin1() {
        String cedillaAsTheServerSeesIt = new String("ç".getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
        assertThat(RequestTarget.flawIn("/v1/herds/" + cedillaAsTheServerSeesIt))
                .map(RequestTarget.Flaw::code)
                .contains(ProblemCode.BAD_PATH);
    }

    @Test
    void anAddressThatIsNoPathIsToldApartFromAnUnknownOne() {
        for (String uri : new String[] {"*", "v1/herds", "", "?"}) {
            assertThat(RequestTarget.flawIn(uri))
                    .map(RequestTarget.Flaw::code)
                    .as(uri)
                    .contains(ProblemCode.BAD_PATH);
        }
        assertThat(RequestTarget.flawIn("//")).map(RequestTarget.Flaw::code).contains(ProblemCode.NO_SUCH_ROUTE);
        assertThat(RequestTarget.flawIn("http://host/v1/herds")).isEmpty();
    }
}
