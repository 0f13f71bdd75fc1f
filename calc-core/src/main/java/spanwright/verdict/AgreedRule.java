package spanwright.verdict;

import java.time.LocalDate;
import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * A decision rule with when and where it was agreed. A rule agreed after the record was made is refused:
 * chosen with the data in view, it would prove anything.
 *
 * @param rule     the rule
 * @param agreedOn the day it was agreed
 * @param agreedIn where: contract, procedure, design basis
 */
public record AgreedRule(DecisionRule rule, LocalDate agreedOn, String agreedIn) {
    /** Checks the components. */
    public AgreedRule {
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(agreedOn, "agreedOn");
        Checks.notBlank("where the rule was agreed", agreedIn);
    }

    /** Whether the rule was agreed no later than the day of a record. */
    public boolean precedes(LocalDate record) {
        return !agreedOn.isAfter(record);
    }

    @Override
    public String toString() {
        return rule.sentence() + " Agreed " + agreedOn + " in " + agreedIn + ".";
    }
}
