package spanwright.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import spanwright.kernel.message.Bytes;

class ReplayGuardTest {

    @Test
    void refusesWhatItHasSeen() {
        final ReplayGuard guard = new ReplayGuard(10);
        assertThat(guard.isNew(Bytes.of("a"))).isTrue();
        assertThat(guard.isNew(Bytes.of("b"))).isTrue();
        assertThat(guard.isNew(Bytes.of("a"))).isFalse();
    }

    @Property(tries = 50)
    void staysBoundedAndForgetsTheOldestOnly(@ForAll @IntRange(min = 1, max = 300) int capacity) {
        final ReplayGuard guard = new ReplayGuard(capacity);
        for (int i = 0; i < 1_000; i++) {
            assertThat(guard.isNew(Bytes.of("s" + i))).isTrue();
            assertThat(guard.isNew(Bytes.of("s" + i))).isEqualTo(capacity == 1 && guard.size() == 0);
            assertThat(guard.size()).isLessThanOrEqualTo(capacity);
        }
        final int kept = capacity - Math.max(1, capacity / 10);
        for (int i = 1_000 - kept; i < 1_000; i++) {
            assertThat(guard.isNew(Bytes.of("s" + i))).as("the %d latest of %d", kept, capacity).isFalse();
        }
    }
}
