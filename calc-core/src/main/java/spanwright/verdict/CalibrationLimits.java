package spanwright.verdict;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Span;

/**
 * The two limits of a calibration: what is accepted as found, and the setting tolerance to be reached as
 * left.
 *
 * @param acceptance what an instrument must have held, as found
 * @param setting    what an adjustment must reach, as left; absent where none is stated
 */
public record CalibrationLimits(Limit acceptance, Optional<Limit> setting) {
    /** Checks the components. */
    public CalibrationLimits {
        Objects.requireNonNull(acceptance, "acceptance");
        Objects.requireNonNull(setting, "setting");
    }

    /** Both limits. */
    public static CalibrationLimits of(Limit acceptance, Limit setting) {
        return new CalibrationLimits(acceptance, Optional.of(setting));
    }

    /** An acceptance limit alone. */
    public static CalibrationLimits of(Limit acceptance) {
        return new CalibrationLimits(acceptance, Optional.empty());
    }

    /** The limit for a use; a claim has none of its own here. */
    public Optional<Limit> forUse(LimitUse use) {
        return use == LimitUse.SETTING ? setting
            : use == LimitUse.ACCEPTANCE ? Optional.of(acceptance) : Optional.empty();
    }

    /**
     * Whether the setting tolerance lies inside the acceptance limit at a point, as it must if drift is to
     * have any room. True where there is no setting tolerance.
     *
     * @throws IllegalArgumentException as {@link Limit#at(Span, double)}
     */
    public boolean leavesRoomAt(Span output, double percent) {
        if (setting.isEmpty()) {
            return true;
        }
        final ToleranceInterval found = acceptance.at(output, percent);
        final ToleranceInterval left = setting.get().at(output, percent);
        return found.and(left).filter(left::equals).isPresent();
    }

    @Override
    public String toString() {
        return "as found " + acceptance + "; as left " + setting.map(Limit::toString).orElse("not stated");
    }
}
