package org.pailbook.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A frame with two axes, and what is drawn into it. Units of the data in, an {@code <svg>} out.
 *
 * <p>No style sheet and no style attribute, so that a page may forbid both; ids begin with the kind of picture, so that several fit in one page.
 */
final class Chart {
    private static final int LEFT = 56;
    private static final int RIGHT = 14;
    private static final int BOTTOM = 44;
    private static final int LINE_HEIGHT = 18;
    /** Of a letter, on the mean, of the 13 units high sans serif of common systems; by eye. */
    private static final double LETTER_WIDTH = 6.6;

    private static final int KEY_SIGN_WIDTH = 26;

    private final String kind;
    private final PictureForm form;
    private final double xMost;
    private final double yMost;
    private final int top;
    private final StringBuilder svg = new StringBuilder();

    /** One line of the key: a sign and what it means. */
    record Key(String sign, String meaning) {
        static Key of(Mark mark, String meaning) {
            return new Key(mark.at(10, -4), meaning);
        }

        static Key of(Stroke stroke, String meaning) {
            return new Key("<path d=\"M0-4H20\" fill=\"none\" " + stroke.attributes() + "/>", meaning);
        }

        static Key ofLetter(String letter, String meaning) {
            return new Key("<text x=\"10\" text-anchor=\"middle\" font-weight=\"bold\">" + letter + "</text>", meaning);
        }

        /** A band is a tint between two thin lines. */
        static Key ofBand(String meaning) {
            return new Key(
                    "<path d=\"M0-10H20V2H0Z\" fill=\"#dbe4ec\"/><path d=\"M0-10H20M0 2H20\" stroke=\"#767676\"/>",
                    meaning);
        }
    }

    /** @param xMost largest value across; both axes begin at 0 */
    Chart(String kind, PictureForm form, String title, String description, List<Key> keys, double xMost, double yMost) {
        this.kind = kind;
        this.form = form;
        this.xMost = xMost;
        this.yMost = yMost;
        List<String> placedKeys = new ArrayList<>();
        this.top = (form.isHeaded() ? LINE_HEIGHT + 8 : 4) + LINE_HEIGHT * place(keys, placedKeys) + 8;
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\""
                        + " aria-labelledby=\"%s-title %s-desc\" font-family=\"sans-serif\" font-size=\"13\" fill=\"#111\">%n",
                form.width(), form.height(), kind, kind);
        add(
                "<title id=\"%s-title\">%s</title>%n<desc id=\"%s-desc\">%s</desc>%n",
                kind, escaped(title), kind, escaped(description));
        add("<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>%n", form.width(), form.height());
        if (form.isHeaded()) {
            add("<text x=\"%d\" y=\"20\" font-weight=\"bold\">%s</text>%n", LEFT, escaped(title));
        }
        placedKeys.forEach(svg::append);
    }

    /** Puts the keys beside each other, as many a line as fit; tells how many lines they need. */
    private int place(List<Key> keys, List<String> placed) {
        double x = LEFT;
        int line = 1;
        int first = form.isHeaded() ? LINE_HEIGHT + 8 : 4;
        for (Key key : keys) {
            double width = KEY_SIGN_WIDTH + LETTER_WIDTH * key.meaning().length() + 12;
            if (x > LEFT && x + width > form.width()) {
                x = LEFT;
                line++;
            }
            placed.add(text(
                    "<g transform=\"translate(%.1f %d)\">%s<text x=\"%d\">%s</text></g>%n",
                    x, first + LINE_HEIGHT * line - 4, key.sign(), KEY_SIGN_WIDTH, escaped(key.meaning())));
            x += width;
        }
        return line;
    }

    /** Lines across at these whole values, and what the axis is. */
    Chart levels(List<Double> values, String axis) {
        return levels(values, whole(values), axis);
    }

    /** Lines across at these values, each with its label, and what the axis is. */
    Chart levels(List<Double> values, List<String> labels, String axis) {
        for (int i = 0; i < values.size(); i++) {
            double y = y(values.get(i));
            add(
                    "<path d=\"M%d %.1fH%d\" stroke=\"#ccc\"/><text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s</text>%n",
                    LEFT, y, form.width() - RIGHT, LEFT - 6, y + 4, escaped(labels.get(i)));
        }
        double middle = (top + form.height() - BOTTOM) / 2.0;
        add(
                "<text x=\"13\" y=\"%.1f\" transform=\"rotate(-90 13 %.1f)\" text-anchor=\"middle\">%s</text>%n",
                middle, middle, escaped(axis));
        return this;
    }

    /** Whole values below, and what the axis is. */
    Chart ticks(List<Double> values, String axis) {
        return ticks(values, whole(values), axis);
    }

    private List<String> whole(List<Double> values) {
        return values.stream().map(value -> form.numbers().text(value, 0)).toList();
    }

    /** Labels below, and what the axis is. */
    Chart ticks(List<Double> values, List<String> labels, String axis) {
        int floor = form.height() - BOTTOM;
        add("<path d=\"M%d %dH%d\" stroke=\"#111\"/>%n", LEFT, floor, form.width() - RIGHT);
        for (int i = 0; i < values.size(); i++) {
            add(
                    "<path d=\"M%.1f %dv5\" stroke=\"#111\"/><text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%s</text>%n",
                    x(values.get(i)), floor, x(values.get(i)), floor + 18, escaped(labels.get(i)));
        }
        add(
                "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%s</text>%n",
                (LEFT + form.width() - RIGHT) / 2.0, form.height() - 8, escaped(axis));
        return this;
    }

    Chart band(double[] xs, double[] lows, double[] highs) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < xs.length; i++) {
            points.append(text("%.1f,%.1f ", x(xs[i]), y(highs[i])));
        }
        for (int i = xs.length - 1; i >= 0; i--) {
            points.append(text("%.1f,%.1f ", x(xs[i]), y(lows[i])));
        }
        add(
                "<polygon fill=\"#dbe4ec\" stroke=\"#767676\" stroke-width=\"0.8\" points=\"%s\"/>%n",
                points.toString().strip());
        return this;
    }

    Chart line(double[] xs, double[] ys, Stroke stroke) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < xs.length; i++) {
            points.append(text("%.1f,%.1f ", x(xs[i]), y(ys[i])));
        }
        add(
                "<polyline fill=\"none\" %s points=\"%s\"/>%n",
                stroke.attributes(), points.toString().strip());
        return this;
    }

    Chart mark(double x, double y, Mark mark) {
        svg.append(mark.at(x(x), y(y))).append('\n');
        return this;
    }

    /** A line from floor to top at a place across, with a word beside it, so many lines of text above the floor. */
    Chart post(double x, Stroke stroke, String word, int linesUp) {
        boolean isLate = x(x) + LETTER_WIDTH * word.length() > form.width() - RIGHT;
        add(
                "<path d=\"M%.1f %dV%d\" fill=\"none\" %s/><text x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">%s</text>%n",
                x(x),
                top,
                form.height() - BOTTOM,
                stroke.attributes(),
                x(x) + (isLate ? -4 : 4),
                form.height() - BOTTOM - 6 - linesUp * LINE_HEIGHT,
                isLate ? "end" : "start",
                escaped(word));
        return this;
    }

    /** A letter at the top of a place across, with a tick below it; those of nearby places may touch. */
    Chart letter(double x, String letter) {
        add(
                "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" font-weight=\"bold\">%s</text><path d=\"M%.1f %dv6\" stroke=\"#111\"/>%n",
                x(x), top + 11, escaped(letter), x(x), top + 14);
        return this;
    }

    String svg() {
        return svg + "</svg>\n";
    }

    private double x(double value) {
        return LEFT + value * (form.width() - LEFT - RIGHT) / xMost;
    }

    private double y(double value) {
        double inside = Math.max(0, Math.min(yMost, value));
        return form.height() - BOTTOM - inside * (form.height() - top - BOTTOM) / yMost;
    }

    private void add(String form, Object... values) {
        svg.append(text(form, values));
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form.replace("%n", "\n"), values);
    }

    /** Text as SVG takes it; a cow may be called {@code <script>}. */
    static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(sign -> {
            switch (sign) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(Character.isISOControl(sign) ? ' ' : sign);
            }
        });
        return safe.toString();
    }
}
