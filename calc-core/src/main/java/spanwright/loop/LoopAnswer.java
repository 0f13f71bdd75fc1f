package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.NumberText;

/**
 * Will the loop reach the current it must carry? From its downscale to its upscale failure current, with
 * every limit against it, and within every limit of the data sheets.
 *
 * @param loop    the loop
 * @param word    the verdict
 * @param worst   reach with every limit against it
 * @param nominal reach with all parameters nominal
 * @param checks  limits of the data sheets
 */
public record LoopAnswer(CurrentLoop loop, Word word, LoopReach nominal, LoopReach worst, LoopChecks checks) {
    /** The verdict. */
    public enum Word {
        /** It carries every current with every limit against it. */
        MEETS("Meets", "\u2713"),
        /** It carries every current nominally, not with every limit against it. */
        NOT_SHOWN("Not shown", "?"),
        /** It does not even nominally. */
        DOES_NOT_MEET("Does not meet", "\u2717"),
        /** A limit of a data sheet is exceeded. */
        REFUSED("Refused", "\u2717");

        private final String words;
        private final String mark;

        Word(String words, String mark) {
            this.words = words;
            this.mark = mark;
        }

        /** A mark beside the word. */
        public String mark() {
            return mark;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public LoopAnswer {
        Objects.requireNonNull(loop, "loop");
        Objects.requireNonNull(word, "word");
        Objects.requireNonNull(nominal, "nominal");
        Objects.requireNonNull(worst, "worst");
        Objects.requireNonNull(checks, "checks");
    }

    static LoopAnswer of(CurrentLoop loop) {
        final Transmitter.Ends ends = loop.transmitter().limits();
        final LoopReach nominal = loop.reach(Corner.NOMINAL);
        final LoopReach worst = loop.reach(Corner.LEAST_VOLTAGE);
        final LoopChecks checks = loop.checks();
        final Word word = !checks.isAllowed() ? Word.REFUSED
            : worst.covers(ends.failLowMilliamps(), ends.failHighMilliamps()) ? Word.MEETS
                : nominal.covers(ends.failLowMilliamps(), ends.failHighMilliamps()) ? Word.NOT_SHOWN
                    : Word.DOES_NOT_MEET;
        return new LoopAnswer(loop, word, nominal, worst, checks);
    }

    /** Largest current that counts: that of the upscale failure, in mA. */
    public double neededMilliamps() {
        return loop.transmitter().limits().failHighMilliamps();
    }

    /** Voltage to spare at the upscale failure current with every limit against it, in V. */
    public double worstMarginVolts() {
        return loop.marginVolts(neededMilliamps(), Corner.LEAST_VOLTAGE);
    }

    /** Voltages over the currents that matter. */
    public LoopMargins margins() {
        return loop.margins();
    }

    /** The answer in one sentence. */
    public String sentence() {
        final String need = NumberText.plain(neededMilliamps(), 4) + " mA";
        return switch (word) {
            case REFUSED -> "Refused: " + checks.refusals().stream().map(LoopChecks.Item::sentence)
                .collect(Collectors.joining("; ")) + ".";
            case MEETS -> "Meets " + need + " with " + NumberText.fixed(worstMarginVolts(), 2)
                + " V to spare, every limit against it.";
            case NOT_SHOWN -> "Not shown to meet " + need + ": nominally "
                + NumberText.fixed(loop.marginVolts(neededMilliamps(), Corner.NOMINAL), 2)
                + " V to spare, but with every limit against the loop " + ends(worst) + ".";
            case DOES_NOT_MEET -> "Does not meet " + need + ": nominally " + ends(nominal) + ".";
        };
    }

    private String ends(LoopReach reach) {
        if (reach.high().isEmpty() || reach.low().isEmpty()) {
            return "it carries no current at all";
        }
        final LoopReach.End high = reach.high().get();
        return high.milliamps() < neededMilliamps()
            ? "it stops at " + NumberText.fixed(high.milliamps(), 2) + " mA, "
                + NumberText.fixed(high.percentOfSpan(), 1) + " % of span, where " + high.because()
            : "it goes down only to " + NumberText.fixed(reach.low().get().milliamps(), 2) + " mA, "
                + reach.low().get().because();
    }

    /** What the answer rests on. */
    public List<String> assumptions() {
        final List<String> notes = new ArrayList<>();
        notes.add("The loop must carry " + NumberText.plain(loop.transmitter().limits().failLowMilliamps(), 4)
            + " to " + NumberText.plain(neededMilliamps(), 4) + " mA, its failure currents.");
        Pairing.all(loop.elements()).forEach(e -> notes.add(e.toString()));
        loop.supply().ifPresent(s -> notes.add("Supply: " + s + ", at its terminals "
            + NumberText.fixed(loop.availableVolts(neededMilliamps(), Corner.LEAST_VOLTAGE), 2) + " to "
            + NumberText.fixed(loop.availableVolts(neededMilliamps(), Corner.MOST_VOLTAGE), 2) + " V."));
        return notes;
    }

    /** What to heed before work on the loop. */
    public List<String> cautions() {
        return LoopCautions.all();
    }

    @Override
    public String toString() {
        return word.mark() + " " + sentence() + "\n" + margins();
    }
}
