package spanwright.readings;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spanwright.quantity.UnitSymbols;

/**
 * The head of a column, taken apart: trade words, unit, resistor, and the words for phase, direction and
 * cycle that name one column of a wide table ("As found up (mA)").
 */
final class ColumnHead {
    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*[(\\[](.+)[)\\]]\\s*");
    private static final Pattern SEPARATED = Pattern.compile("(.*\\S)\\s*[,/|]\\s*(\\S.*)");
    private static final Pattern LAST_WORD = Pattern.compile("(.*\\S)[\\s_]+(\\S+)");
    private static final Pattern ACROSS = Pattern.compile(
        "(.+?)\\s+(?:across|over|on|at)\\s+([0-9.]+)\\s*(?:ohms?|Ohms?|\u03a9|\u2126|R)");
    private static final Pattern AS_FOUND = Pattern.compile("\\b(as found|af|found)\\b");
    private static final Pattern AS_LEFT = Pattern.compile("\\b(as left|al|left)\\b");
    private static final Pattern UP =
        Pattern.compile("\\b(up|upscale|rising|increasing|ascending)\\b|\u2191");
    private static final Pattern DOWN = Pattern.compile(
        "\\b(down|dn|downscale|falling|decreasing|descending)\\b|\u2193");
    private static final Pattern CYCLE = Pattern.compile("\\b(?:(?:cycle|run|no|traverse) ?)?(\\d{1,2})$");
    private static final int MOST_CYCLES = 99;

    private ColumnHead() { }

    /** What the head of a column says, or nothing if its words are not known. */
    static Optional<ColumnMeaning> understand(int index, String text) {
        final String plain = Characters.plain(text);
        final String[] parts = withUnit(plain);
        final String unit = parts[1];
        final String[] voltage = across(unit);
        return words(index, text, parts[0], voltage[0], voltage[1]);
    }

    /** The words before the unit, and the unit, empty if there is none. */
    static String[] withUnit(String plain) {
        final Matcher bracketed = BRACKETED.matcher(plain);
        if (bracketed.matches() && !bracketed.group(1).isBlank()) {
            return new String[] {bracketed.group(1), bracketed.group(2).strip()};
        }
        for (Pattern form : new Pattern[] {SEPARATED, LAST_WORD}) {
            final Matcher m = form.matcher(plain);
            if (m.matches() && !"1".equals(m.group(2)) && isUnit(m.group(2))) {
                return new String[] {m.group(1), m.group(2).strip()};
            }
        }
        return new String[] {plain, ""};
    }

    private static boolean isUnit(String text) {
        return UnitSymbols.find(across(text)[0]).isPresent();
    }

    /** The unit and the resistor of "V across 250 ohm"; the resistor is empty if there is none. */
    static String[] across(String unit) {
        final Matcher m = ACROSS.matcher(unit);
        return m.matches() ? new String[] {m.group(1), m.group(2)} : new String[] {unit, ""};
    }

    private static Optional<ColumnMeaning> words(int index, String head, String words, String unit,
                                                 String ohms) {
        String rest = words.toLowerCase(Locale.ROOT).replaceAll("[_\\-.:\\s]+", " ").strip();
        final Optional<ColumnRole> whole = ColumnRole.of(rest);
        if (whole.isPresent()) {
            return Optional.of(plain(index, head, percentPoint(whole.get(), unit), unit, ohms));
        }
        final boolean found = AS_FOUND.matcher(rest).find();
        final boolean left = !found && AS_LEFT.matcher(rest).find();
        rest = strip(rest, AS_FOUND, found);
        rest = strip(rest, AS_LEFT, left);
        final boolean up = UP.matcher(rest).find();
        final boolean down = !up && DOWN.matcher(rest).find();
        rest = strip(rest, UP, up);
        rest = strip(rest, DOWN, down);
        final Matcher number = CYCLE.matcher(rest);
        final boolean cycle = number.find();
        final OptionalInt n = cycle ? cycle(number.group(1)) : OptionalInt.empty();
        rest = strip(rest, CYCLE, n.isPresent());
        final boolean named = found || left || up || down || n.isPresent();
        final Optional<ColumnRole> role = named && rest.isEmpty() && (found || left || up || down)
            ? Optional.of(ColumnRole.INDICATED) : ColumnRole.of(rest);
        return role.filter(r -> named).map(r -> new ColumnMeaning(index, head, r, unit, ohms,
            found ? Optional.of(Phase.AS_FOUND) : left ? Optional.of(Phase.AS_LEFT) : Optional.empty(),
            up ? Optional.of(Direction.UPSCALE) : down ? Optional.of(Direction.DOWNSCALE) : Optional.empty(),
            n));
    }

    private static OptionalInt cycle(String digits) {
        final int n = Integer.parseInt(digits);
        return n >= 1 && n <= MOST_CYCLES ? OptionalInt.of(n) : OptionalInt.empty();
    }

    private static ColumnRole percentPoint(ColumnRole role, String unit) {
        return role == ColumnRole.POINT && unit.startsWith("%") ? ColumnRole.NOMINAL : role;
    }

    private static ColumnMeaning plain(int index, String head, ColumnRole role, String unit, String ohms) {
        return new ColumnMeaning(index, head, role, unit, ohms, Optional.empty(), Optional.empty(),
            OptionalInt.empty());
    }

    private static String strip(String text, Pattern word, boolean there) {
        return there ? word.matcher(text).replaceFirst("").replaceAll("\\s+", " ").strip() : text;
    }
}
