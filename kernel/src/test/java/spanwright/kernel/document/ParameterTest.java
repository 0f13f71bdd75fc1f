package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ParameterTest {
    /** Literals as the Java Language Specification, 17th edition, section 3.10 writes them. */
    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', textBlock = """
        a=3             | a = 3;
        a=-3            | a = -3;
        a=3000000000    | a = 3000000000L;
        a=5L            | a = 5L;
        a=0.5           | a = 0.5;
        a=.5e-3         | a = .5e-3;
        a=2f            | a = 2f;
        a=true          | a = true;
        a=TRUE          | a = "TRUE";
        a=007           | a = "007";
        a=Kestrel Fen   | a = "Kestrel Fen";
        a="5"           | a = "5";
        a=x=y           | a = "x=y";
        a=NaN           | a = "NaN";
        a="quote"mark"  | a = "quote\\"mark";
        a=C:\\data      | a = "C:\\\\data";
        a=10 µA         | a = "10 \\u00b5A";
        """)
    void valuesBecomeJavaLiterals(String given, String statement) {
        assertThat(Parameter.parse(given).statement()).isEqualTo(statement);
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', textBlock = """
        a                      | "a" is not name=value
        =1                     | "" is not a Java name
        a b=1                  | "a b" is not a Java name
        a.b=1                  | "a.b" is not a Java name
        class=1                | "class" is not a Java name
        a=1e999                | 1e999 is beyond the largest double 1.7976931348623157E308
        a=99999999999999999999 | 99999999999999999999 is beyond the range of long
        """)
    void whatIsNoAssignmentIsRefused(String given, String message) {
        assertThatThrownBy(() -> Parameter.parse(given)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining(message);
    }

    @Property
    void textNeverEndsItsLiteralEarly(@ForAll String text) {
        final String literal = Parameter.parse("a='" + text).literal();
        assertThat(literal).matches("\"'([ !#-\\[\\]-~]|\\\\[\"\\\\]|\\\\u[0-9a-f]{4})*\"");
    }
}
