package spanwright.readings;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a line that names a standard: "S-01; certificate C-123; due 2026-12-01; U 0.003 mA; k 2". */
final class StandardText {
    private static final Pattern WORD = Pattern.compile(
        "(?:^|[\\s;,])(certificate|cert\\.?|certified|calibrated|due|U|k)(?:\\s+no\\.?)?\\s*[=:]?\\s+");

    private StandardText() { }

    /**
     * The standard that a line names.
     *
     * @param date reads a date, nothing if it is unclear
     * @throws IllegalArgumentException if the line cannot be read; the message says which part
     */
    static Standard read(Preamble.Value value, DecimalSign decimal,
                         Function<String, Optional<LocalDate>> date) {
        final String line = value.text();
        final Map<String, String> parts = new TreeMap<>();
        final Matcher m = WORD.matcher(line);
        String key = "id";
        int from = 0;
        while (m.find()) {
            parts.put(key, part(line, from, m.start()));
            key = m.group(1).startsWith("cert") && !m.group(1).equals("certified") ? "certificate"
                : m.group(1).equals("calibrated") ? "certified" : m.group(1);
            from = m.end();
        }
        parts.put(key, part(line, from, line.length()));
        final Optional<CellContent> u = Optional.ofNullable(parts.get("U")).map(t -> number("U", t, decimal));
        if (u.isPresent() && u.get().unit().isEmpty()) {
            throw new IllegalArgumentException("U \"" + parts.get("U") + "\" of the standard has no unit");
        }
        final Optional<CellContent> k = Optional.ofNullable(parts.get("k")).map(t -> number("k", t, decimal));
        return new Standard(parts.get("id"), parts.getOrDefault("certificate", ""),
            Optional.ofNullable(parts.get("certified")).flatMap(date),
            Optional.ofNullable(parts.get("due")).flatMap(date),
            value(u), u.map(CellContent::unit).orElse(""), value(k), value.cell());
    }

    private static OptionalDouble value(Optional<CellContent> content) {
        return content.map(c -> OptionalDouble.of(c.number().orElseThrow().doubleValue()))
            .orElse(OptionalDouble.empty());
    }

    private static CellContent number(String name, String text, DecimalSign decimal) {
        final CellContent content = CellContent.of(text, decimal);
        if (content.kind() == CellContent.Kind.NUMBER && content.number().orElseThrow().signum() > 0) {
            return content;
        }
        throw new IllegalArgumentException(name + " \"" + text + "\" of the standard is no number above 0");
    }

    private static String part(String line, int from, int to) {
        return line.substring(from, Math.max(from, to)).replaceAll("^[\\s;,]+|[\\s;,]+$", "");
    }
}
