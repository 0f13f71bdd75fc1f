package spanwright.kernel.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.message.PastCell;
import spanwright.kernel.message.Request.History;

/** What each access means: "Messaging in Jupyter", History. */
class HistoryStoreTest {
    @TempDir
    Path folder;
    private final ByteArrayOutputStream log = new ByteArrayOutputStream();

    private HistoryStore session() {
        return new HistoryStore(folder.resolve("history"), new Log(new PrintStream(log, true)));
    }

    private static History tail(int n) {
        return new History(History.Access.TAIL, false, 0, 1, Optional.empty(), Optional.of(n), "*", false);
    }

    private static History range(int session, int start, Integer stop) {
        return new History(History.Access.RANGE, false, session, start, Optional.ofNullable(stop),
            Optional.empty(), "*", false);
    }

    private static History search(String glob, int n, boolean unique) {
        return new History(History.Access.SEARCH, false, 0, 1, Optional.empty(), Optional.of(n), glob,
            unique);
    }

    private static List<String> inputs(List<PastCell> cells) {
        return cells.stream().map(c -> c.session() + "/" + c.line() + " " + c.input()).toList();
    }

    @Test
    void survivesARestartAndNumbersSessions() {
        try (HistoryStore first = session()) {
            first.add(1, "int a = 1;", Optional.empty());
            first.add(2, "a\n+ 1", Optional.of("2"));
        }
        try (HistoryStore second = session()) {
            assertThat(inputs(second.find(tail(5)))).containsExactly("1/1 int a = 1;", "1/2 a\n+ 1");
            second.add(1, "b", Optional.of("\u03a9"));
            assertThat(inputs(second.find(tail(2)))).containsExactly("1/2 a\n+ 1", "2/1 b");
            assertThat(second.find(tail(2)).get(0).output()).contains("2");
        }
        try (HistoryStore third = session()) {
            assertThat(third.find(tail(1))).containsExactly(new PastCell(2, 1, "b", Optional.of("\u03a9")));
        }
    }

    @Test
    void findsARangeOfThisAndOfEarlierSessions() {
        try (HistoryStore first = session()) {
            first.add(1, "x1", Optional.empty());
            first.add(2, "x2", Optional.empty());
            first.add(3, "x3", Optional.empty());
        }
        try (HistoryStore second = session()) {
            assertThat(inputs(second.find(range(-1, 1, null)))).as("before the first cell").hasSize(3);
            second.add(1, "y1", Optional.empty());
            assertThat(inputs(second.find(range(0, 1, null)))).containsExactly("2/1 y1");
            assertThat(inputs(second.find(range(-1, 2, 3)))).containsExactly("1/2 x2");
            assertThat(inputs(second.find(range(1, 2, null)))).containsExactly("1/2 x2", "1/3 x3");
            assertThat(second.find(range(77, 1, null))).isEmpty();
            assertThat(second.find(range(-5, 1, null))).isEmpty();
        }
    }

    @Test
    void searchesByGlobWithTheLatestOfEqualInputs() {
        try (HistoryStore h = session()) {
            for (final String input : List.of("loop(1)", "chain()", "loop(2)", "loop(1)", "x = loop(1)")) {
                h.add(h.find(tail(99)).size() + 1, input, Optional.empty());
            }
            assertThat(inputs(h.find(search("loop*", 10, false))))
                .containsExactly("1/1 loop(1)", "1/3 loop(2)", "1/4 loop(1)");
            assertThat(inputs(h.find(search("loop*", 10, true))))
                .containsExactly("1/3 loop(2)", "1/4 loop(1)");
            assertThat(inputs(h.find(search("*loop*", 2, false))))
                .containsExactly("1/4 loop(1)", "1/5 x = loop(1)");
            assertThat(h.find(search("loop", 10, false))).as("a glob matches the whole input").isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({"a*c, abbc, true", "a*c, abbd, false", "a?c, abc, true", "a?c, ac, false", "[ab]x, bx, true",
        "[^ab]x, bx, false", "[a-c]x, bx, true", "a.c, abc, false", "(a), (a), true", "[z-a], '[z-a]', true",
        "[, [, true", "*[*, a[b, true", "'', '', true", "a\\d, a1, false"})
    void readsAGlob(String glob, String input, boolean matches) {
        assertThat(HistoryStore.glob(glob).matcher(input).matches()).isEqualTo(matches);
    }

    @Test
    void severalKernelsShareTheFolder() {
        try (HistoryStore a = session(); HistoryStore b = session(); HistoryStore c = session()) {
            a.add(1, "a", Optional.empty());
            b.add(1, "b", Optional.empty());
            c.add(1, "c", Optional.empty());
            a.add(2, "aa", Optional.empty());
            assertThat(inputs(b.find(range(1, 1, null)))).containsExactly("1/1 a", "1/2 aa");
            assertThat(b.find(tail(10))).hasSize(4);
        }
    }

    @Test
    void kernelsThatBeginAtTheSameMomentGetDifferentNumbers() throws Exception {
        final int many = 8;
        final CountDownLatch begin = new CountDownLatch(1);
        final ExecutorService pool = Executors.newFixedThreadPool(many);
        final List<Future<Integer>> numbers = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            numbers.add(pool.submit(() -> {
                try (HistoryStore h = session()) {
                    begin.await();
                    h.add(1, "x", Optional.empty());
                    return h.find(range(0, 1, null)).get(0).session();
                }
            }));
        }
        begin.countDown();
        final Set<Integer> different = new HashSet<>();
        for (final Future<Integer> number : numbers) {
            different.add(number.get());
        }
        pool.shutdown();
        assertThat(different).hasSize(many);
    }

    @Test
    void skipsALineThatACrashCutShort() throws IOException {
        try (HistoryStore first = session()) {
            first.add(1, "whole", Optional.empty());
        }
        Files.writeString(folder.resolve("history").resolve("session-1.jsonl"), "{\"line\":2,\"inp",
            StandardOpenOption.APPEND);
        try (HistoryStore second = session()) {
            assertThat(inputs(second.find(tail(5)))).containsExactly("1/1 whole");
        }
    }

    @Test
    void keepsABoundedNumberOfSessionsAndOutputs() throws IOException {
        Files.createDirectories(folder.resolve("history"));
        for (int i = 1; i <= HistoryStore.SESSIONS_KEPT + 5; i++) {
            Files.writeString(folder.resolve("history").resolve("session-" + i + ".jsonl"),
                "{\"line\":1,\"input\":\"x\"}\n");
        }
        try (HistoryStore h = session()) {
            h.add(1, "y", Optional.of("z".repeat(1_000_000)));
            assertThat(h.find(tail(10_000))).hasSize(HistoryStore.SESSIONS_KEPT);
            assertThat(h.find(tail(1)).get(0).output().orElseThrow()).hasSize(HistoryStore.OUTPUT_KEPT + 3);
            assertThat(h.find(tail(1)).get(0).session()).isEqualTo(HistoryStore.SESSIONS_KEPT + 6);
        }
    }

    @Test
    void lastsAsLongAsTheSessionWhereNothingCanBeWritten() throws IOException {
        Files.writeString(folder.resolve("history"), "a file where the folder should be");
        try (HistoryStore h = session()) {
            h.add(1, "x", Optional.empty());
            h.add(2, "y", Optional.empty());
            assertThat(inputs(h.find(tail(5)))).containsExactly("1/1 x", "1/2 y");
        }
        assertThat(log.toString().lines()).as("said once").hasSize(1).first().asString()
            .contains("history is not kept");
    }
}
