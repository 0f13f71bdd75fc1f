package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Timeout;
import spanwright.kernel.wire.Channel;

/** For any mix of requests, sent without waiting: each has one busy, then its output, then one idle. */
class BusyIdleTest extends ServerCase {
    private static final List<String[]> REQUESTS = List.of(
        new String[] {"execute_request", "{\"code\":\"out a\\nvalue 1\"}"},
        new String[] {"execute_request", "{\"code\":\"value 1\",\"silent\":true}"},
        new String[] {"execute_request", "{\"code\":\"fail x\"}"},
        new String[] {"execute_request", "{\"code\":\"fail x\",\"stop_on_error\":false}"},
        new String[] {"execute_request", "{\"code\":\"boom\"}"},
        new String[] {"complete_request", "{\"code\":\"pr\",\"cursor_pos\":2}"},
        new String[] {"inspect_request", "{\"code\":\"known\",\"cursor_pos\":2}"},
        new String[] {"is_complete_request", "{\"code\":\"x\"}"},
        new String[] {"history_request", "{\"hist_access_type\":\"tail\",\"n\":3}"},
        new String[] {"kernel_info_request", "{}"},
        new String[] {"connect_request", "{}"},
        new String[] {"usage_request", "{}"},
        new String[] {"comm_info_request", "{}"},
        new String[] {"interrupt_request", "{}"},
        new String[] {"comm_open", "{\"comm_id\":\"c\",\"target_name\":\"none\",\"data\":{}}"},
        new String[] {"comm_msg", "{\"comm_id\":\"c\",\"data\":{}}"},
        new String[] {"comm_close", "{\"comm_id\":\"c\",\"data\":{}}"},
        new String[] {"unheard_of_request", "{}"});

    @RepeatedTest(5)
    @Timeout(20)
    void everyRequestHasOneBusyAndOneIdleInOrder(RepetitionInfo repetition) {
        final Random random = new Random(repetition.getCurrentRepetition());
        final Map<String, String> states = new HashMap<>();
        for (int i = 0; i < 150; i++) {
            final String[] request = REQUESTS.get(random.nextInt(REQUESTS.size()));
            final Channel channel = random.nextInt(4) == 0 ? Channel.CONTROL : Channel.SHELL;
            states.put(client.send(channel, request[0], request[1]), "");
        }
        int idle = 0;
        while (idle < states.size()) {
            final RawClient.Received r = client.receive(Channel.IOPUB, 5_000);
            assertThat(states).containsKey(r.parentId());
            final String state = types(List.of(r)).get(0);
            idle += state.equals("idle") ? 1 : 0;
            states.merge(r.parentId(), state + " ", String::concat);
        }
        assertThat(states.values()).allSatisfy(s -> assertThat(s).matches("busy ((?!busy|idle)\\w+ )*idle "));
        assertThat(client.silentFor(Channel.IOPUB, 100)).as("nothing after the last idle").isTrue();
    }
}
