package spanwright.verdict;

import java.util.List;

/**
 * What a verdict rests on, in the caller's words, printed with it.
 *
 * @param dominating   the terms that make up most of the uncertainty, the largest first, for example "cabinet
 *                     isolator, temperature: 62 % of the variance"
 * @param assumptions  what is taken for granted
 * @param reservations what keeps an accepted result from a plain "Meets": typical figures, a one-cycle
 *                     record; they turn it into "Meets with stated risk"
 * @param missing      what a decision still needs; unless an error already lies outside its limit, the
 *                     verdict is then "Not determined"
 * @param warnings     what a reader should know beside the decision
 */
public record Grounds(List<String> dominating, List<String> assumptions, List<String> reservations,
                      List<String> missing, List<String> warnings) {
    /** Nothing stated. */
    public static final Grounds NONE =
        new Grounds(List.of(), List.of(), List.of(), List.of(), List.of());

    /** Copies the lists. */
    public Grounds {
        dominating = List.copyOf(dominating);
        assumptions = List.copyOf(assumptions);
        reservations = List.copyOf(reservations);
        missing = List.copyOf(missing);
        warnings = List.copyOf(warnings);
    }

    /** These grounds with other dominating terms. */
    public Grounds dominatedBy(List<String> terms) {
        return new Grounds(terms, assumptions, reservations, missing, warnings);
    }

    /** These grounds with other assumptions. */
    public Grounds assuming(List<String> given) {
        return new Grounds(dominating, given, reservations, missing, warnings);
    }

    /** These grounds with other reservations. */
    public Grounds reserving(List<String> stated) {
        return new Grounds(dominating, assumptions, stated, missing, warnings);
    }

    /** These grounds with other missing things. */
    public Grounds lacking(List<String> things) {
        return new Grounds(dominating, assumptions, reservations, things, warnings);
    }

    /** These grounds with other warnings. */
    public Grounds warning(List<String> notes) {
        return new Grounds(dominating, assumptions, reservations, missing, notes);
    }
}
