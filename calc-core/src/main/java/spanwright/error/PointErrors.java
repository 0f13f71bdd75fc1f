package spanwright.error;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;

/**
 * The errors at one point of the scale, upscale and downscale, over all cycles.
 *
 * @param position   place on the scale, in percent of the input span
 * @param upscale    errors of the readings with rising input
 * @param downscale  errors of the readings with falling input; not both empty
 */
public record PointErrors(double position, List<ReadingError> upscale, List<ReadingError> downscale) {
    /** Checks the components and copies the lists. */
    public PointErrors {
        Checks.finite("position", position);
        upscale = List.copyOf(upscale);
        downscale = List.copyOf(downscale);
        Checks.atLeast("number of readings at a point", upscale.size() + downscale.size(), 1);
    }

    /** The errors of one direction. */
    public List<ReadingError> in(Direction direction) {
        return direction == Direction.UPSCALE ? upscale : downscale;
    }

    /** Mean error of one direction in percent of span, empty if there is no reading. */
    public OptionalDouble mean(Direction direction) {
        return in(direction).stream().mapToDouble(ReadingError::percentOfSpan).average();
    }

    /** Whether the point was read from both sides. */
    public boolean hasBothDirections() {
        return !upscale.isEmpty() && !downscale.isEmpty();
    }

    /**
     * Average of the upscale mean and the downscale mean, in percent of span; the one mean there is where the
     * point was approached from one side only.
     */
    public double average() {
        return overDirections(ReadingError::percentOfSpan);
    }

    /** Expected output at the point in percent of span, averaged as the error is. */
    public double expectedPercent() {
        return overDirections(ReadingError::expectedPercent);
    }

    /** Hysteresis: mean up against mean down, without sign; not determined from one side only. */
    public Finding<PercentOfSpan> hysteresis() {
        if (!hasBothDirections()) {
            return Finding.notDetermined("the point " + NumberText.plain(position, 4) + " % was read "
                + (upscale.isEmpty() ? Direction.DOWNSCALE : Direction.UPSCALE) + "scale only");
        }
        return Finding.of(new PercentOfSpan(Math.abs(
            mean(Direction.UPSCALE).orElseThrow() - mean(Direction.DOWNSCALE).orElseThrow())));
    }

    /**
     * Largest minus smallest error of one direction, in percent of span; not determined below two readings.
     */
    public Finding<PercentOfSpan> spread(Direction direction) {
        final List<ReadingError> errors = in(direction);
        if (errors.size() < 2) {
            return Finding.notDetermined("the point " + NumberText.plain(position, 4) + " % has "
                + errors.size() + " reading" + (errors.size() == 1 ? "" : "s") + " " + direction + "scale");
        }
        final var statistics = errors.stream().mapToDouble(ReadingError::percentOfSpan).summaryStatistics();
        return Finding.of(new PercentOfSpan(statistics.getMax() - statistics.getMin()));
    }

    /** All errors of the point, upscale first. */
    public List<ReadingError> all() {
        return Stream.concat(upscale.stream(), downscale.stream()).toList();
    }

    static List<CellAddress> cells(List<ReadingError> errors) {
        return errors.stream().map(ReadingError::cell).toList();
    }

    private double overDirections(ToDoubleFunction<ReadingError> figure) {
        return Stream.of(upscale, downscale).filter(errors -> !errors.isEmpty())
            .mapToDouble(errors -> errors.stream().mapToDouble(figure).average().orElseThrow())
            .average().orElseThrow();
    }

    @Override
    public String toString() {
        return NumberText.plain(position, 4) + " %: up " + text(Direction.UPSCALE) + ", down "
            + text(Direction.DOWNSCALE) + " % of span";
    }

    private String text(Direction direction) {
        return mean(direction).isPresent() ? NumberText.signed(mean(direction).getAsDouble(), 3)
            : "not read";
    }
}
