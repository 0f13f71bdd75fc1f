package spanwright.loop;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.quantity.Checks;

/**
 * Checks of the limits that data sheets state. A limit that is exceeded refuses the loop, whatever its
 * margin.
 *
 * @param loop  its name
 * @param items one sentence each
 */
public record LoopChecks(String loop, List<Item> items) {
    /** What came out of a check. */
    public enum Outcome {
        /** Within the limit. */
        ALLOWED("allowed"),
        /** Outside the limit: not to be built so. */
        REFUSED("refused"),
        /** The data do not tell. */
        NOT_DETERMINED("not determined");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * One check.
     *
     * @param rule     what was looked at
     * @param outcome  what came out
     * @param sentence the figure and the limit
     */
    public record Item(String rule, Outcome outcome, String sentence) {
        /** Checks the components. */
        public Item {
            Checks.notBlank("rule", rule);
            Objects.requireNonNull(outcome, "outcome");
            Checks.notBlank("sentence", sentence);
        }

        @Override
        public String toString() {
            return outcome + ": " + sentence;
        }
    }

    /** Checks the components and copies the list. */
    public LoopChecks {
        Checks.notBlank("name of the loop", loop);
        items = List.copyOf(items);
    }

    static LoopChecks of(CurrentLoop loop) {
        return new LoopChecks(loop.name(), LimitRules.of(loop));
    }

    /** With more checks of the same loop: of its digital signal, of the voltage across an isolation. */
    public LoopChecks with(List<Item> more) {
        return new LoopChecks(loop, Stream.concat(items.stream(), more.stream()).toList());
    }

    /** The checks that refuse the loop. */
    public List<Item> refusals() {
        return items.stream().filter(i -> i.outcome == Outcome.REFUSED).toList();
    }

    /** Whether nothing refuses the loop. */
    public boolean isAllowed() {
        return refusals().isEmpty();
    }

    @Override
    public String toString() {
        return items.isEmpty() ? loop + ": no data-sheet limits are stated, none is checked"
            : items.stream().map(Item::toString).collect(Collectors.joining("\n"));
    }
}
