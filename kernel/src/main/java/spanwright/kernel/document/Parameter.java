package spanwright.kernel.document;

import java.util.regex.Pattern;
import javax.lang.model.SourceVersion;

/**
 * A value that a run gives to a variable of the notebook, in place of the one in its cell tagged
 * "parameters".
 *
 * <p>The value is put in as a Java literal in an assignment without a type: the variable keeps the type that
 * the notebook declares, a whole number given to a {@code double} becomes one, and a name that the notebook
 * does not declare, or a value of another type, is an error in the cell that sets it.
 *
 * @param name    a Java name
 * @param literal a Java literal
 */
public record Parameter(String name, String literal) {
    private static final Pattern INTEGER = Pattern.compile("[+-]?(0|[1-9][0-9]*)");
    private static final Pattern DECIMAL =
        Pattern.compile("[+-]?([0-9]+\\.[0-9]*|\\.[0-9]+|[0-9]+(?=[eEdDfF]))([eE][+-]?[0-9]+)?[dDfF]?");
    private static final Pattern LONG = Pattern.compile("[+-]?(0|[1-9][0-9]*)[lL]");

    /** Checks the name. */
    public Parameter {
        if (!SourceVersion.isName(name) || name.indexOf('.') >= 0) {
            throw new IllegalArgumentException("\"" + name + "\" is not a Java name");
        }
        if (literal.isEmpty()) {
            throw new IllegalArgumentException("no value for " + name);
        }
    }

    /**
     * Reads {@code name=value}. The value is true, false, a whole number, a decimal number (both as Java
     * writes them), or text; text may stand in double quotes, and must if it would read as one of the others.
     *
     * @throws IllegalArgumentException if there is no equals sign, the name is no Java name, or the number is
     *     beyond the range of its type
     */
    public static Parameter parse(String assignment) {
        final int equals = assignment.indexOf('=');
        if (equals < 0) {
            throw new IllegalArgumentException("\"" + assignment + "\" is not name=value");
        }
        return new Parameter(assignment.substring(0, equals).strip(),
            literal(assignment.substring(equals + 1)));
    }

    private static String literal(String value) {
        if (value.equals("true") || value.equals("false")) {
            return value;
        }
        if (INTEGER.matcher(value).matches()) {
            return wholeNumber(value);
        }
        if (LONG.matcher(value).matches()) {
            return Long.parseLong(value.substring(0, value.length() - 1)) + "L";
        }
        if (DECIMAL.matcher(value).matches()) {
            if (!Double.isFinite(Double.parseDouble(value))) {
                throw new IllegalArgumentException(value + " is beyond the largest double "
                    + Double.MAX_VALUE);
            }
            return value;
        }
        final boolean quoted = value.length() >= 2 && value.startsWith("\"") && value.endsWith("\"");
        return text(quoted ? value.substring(1, value.length() - 1) : value);
    }

    private static String wholeNumber(String value) {
        final long number;
        try {
            number = Long.parseLong(value);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(value + " is beyond the range of long, "
                + Long.MIN_VALUE + " to " + Long.MAX_VALUE, e);
        }
        return number == (int) number ? Long.toString(number) : number + "L";
    }

    private static String text(String value) {
        final StringBuilder literal = new StringBuilder("\"");
        for (int i = 0; i < value.length(); i++) {
            final char c = value.charAt(i);
            if (c == '"' || c == '\\') {
                literal.append('\\').append(c);
            } else if (c < ' ' || c > '~') {
                literal.append(String.format("\\u%04x", (int) c));
            } else {
                literal.append(c);
            }
        }
        return literal.append('"').toString();
    }

    /** The Java statement. */
    public String statement() {
        return name + " = " + literal + ";";
    }
}
