package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Keeps what the accuracy rating holds already from being added again. */
final class DoubleCounting {
    private static final Set<Influence> INSIDE_THE_RATING =
        Set.of(Influence.LINEARITY, Influence.HYSTERESIS, Influence.REPEATABILITY);

    private DoubleCounting() { }

    /**
     * Drops guaranteed limits of linearity, hysteresis and repeatability beside an accuracy rating, with a
     * note.
     */
    static ChainElement resolve(ChainElement element) {
        if (element.terms().stream().noneMatch(t -> t.influence() == Influence.ACCURACY_RATING)) {
            return element;
        }
        final List<ErrorTerm> kept = new ArrayList<>();
        ChainElement noted = element;
        for (ErrorTerm term : element.terms()) {
            if (INSIDE_THE_RATING.contains(term.influence())) {
                noted = noted.withNote(element.name() + ": " + term.name()
                    + " is inside the accuracy rating and not added again");
            } else {
                kept.add(term);
            }
        }
        return noted.withTerms(kept);
    }
}
