package spanwright.kernel.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fields and what their absence means: "Messaging in Jupyter", the section of each message. */
class RequestTest {

    private static Request read(String type, String content) throws MalformedMessageException {
        final Header header = new Header("id", "s", "", "", type, "5.3");
        return Request.of(new Message(List.of(), header, Bytes.EMPTY, Json.object(),
            Json.readObject("content", Bytes.of(content)), List.of()));
    }

    @Test
    void readsAnExecuteRequestWithAllFields() throws MalformedMessageException {
        assertThat(read("execute_request", "{\"code\":\"1\",\"silent\":false,\"store_history\":false,"
            + "\"user_expressions\":{\"a\":\"b\"},\"allow_stdin\":false,\"stop_on_error\":false,"
            + "\"later\":1}"))
            .isEqualTo(new Request.Execute("1", false, false, Map.of("a", "b"), false, false));
    }

    @Test
    void fillsInWhatIsAbsentOrNull() throws MalformedMessageException {
        assertThat(read("execute_request", "{\"code\":\"1\",\"user_expressions\":null}"))
            .isEqualTo(new Request.Execute("1", false, true, Map.of(), true, true));
        assertThat(read("history_request", "{\"hist_access_type\":\"tail\",\"n\":3.0}"))
            .isEqualTo(new Request.History(Request.History.Access.TAIL, false, 0, 1, Optional.empty(),
                Optional.of(3), "*", false));
        assertThat(read("complete_request", "{\"code\":\"abc\"}"))
            .isEqualTo(new Request.Complete("abc", 3));
    }

    @Test
    void silentForcesStoreHistoryToFalse() throws MalformedMessageException {
        assertThat(read("execute_request", "{\"code\":\"1\",\"silent\":true,\"store_history\":true}"))
            .isEqualTo(new Request.Execute("1", true, false, Map.of(), true, true));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        execute_request     | {}                                        | code is missing
        execute_request     | {"code":5}                                | code is NUMBER, a text is needed
        execute_request     | {"code":null}                             | code is missing
        execute_request     | {"code":"1","silent":"no"}                | silent is STRING, true or false
        execute_request     | {"code":"1","user_expressions":[]}        | user_expressions is ARRAY, an object
        execute_request     | {"code":"1","user_expressions":{"a":1}}   | user_expressions.a is NUMBER, a text
        complete_request    | {"code":"1","cursor_pos":"1"}             | cursor_pos is STRING, a whole number
        complete_request    | {"code":"1","cursor_pos":1.5}             | cursor_pos is NUMBER, a whole number
        complete_request    | {"code":"1","cursor_pos":1e300}           | cursor_pos is NUMBER, a whole number
        history_request     | {"hist_access_type":"some"}  | 'some' is none of tail, range, search
        comm_msg            | {"data":{}}                               | comm_id is missing
        comm_open           | {"comm_id":"1","data":{}}                 | target_name is missing
        shutdown_request    | {"restart":"yes"}                         | restart is STRING
        input_reply         | {}                                        | value is missing
        """)
    void namesTheFieldThatIsWrong(String type, String content, String complaint) {
        assertThatThrownBy(() -> read(type, content)).isInstanceOf(MalformedMessageException.class)
            .hasMessageStartingWith(type).hasMessageContaining(complaint);
    }

    @ParameterizedTest
    @CsvSource({"5.3,true", "5.2,true", "5.1,false", "5.0,false", "4.1,false", "6.0,true", "5.10,true",
        "'',true", "odd,true", "99999999999.1,true"})
    void countsCodePointsFromVersion52On(String version, boolean codePoints) {
        assertThat(new Header("id", "s", "", "", "t", version).countsCodePoints()).isEqualTo(codePoints);
    }

    @Test
    void headersOfThisKernelAreUniqueAndCarryAZone() throws MalformedMessageException {
        final Header one = Header.fresh("s", "status");
        final Header two = Header.fresh("s", "status");
        assertThat(one.id()).isNotEqualTo(two.id());
        assertThat(one.date()).matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z");
        assertThat(Header.from(one.json())).isEqualTo(one);
    }
}
