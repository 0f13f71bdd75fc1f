package spanwright.temperature;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.Rectangular;
import spanwright.uncertainty.UShaped;

/**
 * The temperatures that the modules of a chain meet: the outdoor air, and what makes each place warmer.
 *
 * <p>A range alone says nothing of how often a temperature occurs, so a claim over it must hold at every
 * temperature in it. A distribution or an hourly history does say it, and a claim over that holds for a share
 * of the time. The difference is the {@link Basis}, and every claim names it.
 *
 * @param lowest       lowest outdoor temperature
 * @param highest      highest outdoor temperature
 * @param distribution how the outdoor temperature is spread over time, degC; empty if only the range is known
 * @param rises        what makes the places warmer
 */
public record Ambient(Celsius lowest, Celsius highest, Optional<Distribution> distribution,
                      List<TemperatureRise> rises) {
    /** What a claim over an ambient means. */
    public enum Basis {
        /** The claim holds at each temperature of the range, the worst one included. */
        EVERY_TEMPERATURE("at every temperature"),
        /** The claim holds for a share of the time, as the temperatures occur. */
        SHARE_OF_TIME("weighted by time");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components and copies the list. */
    public Ambient {
        Objects.requireNonNull(distribution, "distribution");
        rises = List.copyOf(rises);
        if (!(lowest.value() <= highest.value())) {
            throw new IllegalArgumentException("lowest ambient temperature " + lowest
                + " is above the highest " + highest);
        }
    }

    /** Any temperature in a range, nothing said of how often. */
    public static Ambient between(Celsius lowest, Celsius highest) {
        return new Ambient(lowest, highest, Optional.empty(), List.of());
    }

    /** One temperature that never changes. */
    public static Ambient always(Celsius temperature) {
        return between(temperature, temperature);
    }

    /** Every temperature of a range equally often. */
    public static Ambient evenlyBetween(Celsius lowest, Celsius highest) {
        return new Ambient(lowest, highest,
            Optional.of(new Rectangular(lowest.value(), highest.value())), List.of());
    }

    /** Swinging between two temperatures like a sine, as from day to night: most time near the ends. */
    public static Ambient swingingBetween(Celsius lowest, Celsius highest) {
        return new Ambient(lowest, highest,
            Optional.of(new UShaped(lowest.value(), highest.value())), List.of());
    }

    /**
     * A range with a distribution over time, degC. The worst case counts to the ends of the range only, also
     * where the distribution reaches beyond.
     *
     * @throws IllegalArgumentException if the mean of the distribution lies outside the range
     */
    public static Ambient spread(Celsius lowest, Celsius highest, Distribution overTime) {
        Checks.within("mean temperature in degC", overTime.mean(), lowest.value(), highest.value());
        return new Ambient(lowest, highest, Optional.of(overTime), List.of());
    }

    /** The hours of a recorded history. */
    public static Ambient of(HourlyHistory history) {
        return new Ambient(history.lowest(), history.highest(), Optional.of(history.distribution()),
            List.of());
    }

    /** The same range with nothing said of how often: a claim must hold at every temperature. */
    public Ambient atEveryTemperature() {
        return new Ambient(lowest, highest, Optional.empty(), rises);
    }

    /** With the air in the cabinet always so much warmer than outdoors. */
    public Ambient withCabinetRise(Kelvin rise) {
        return withCabinetRise(rise, rise);
    }

    /** With the air in the cabinet warmer than outdoors by something between two figures. */
    public Ambient withCabinetRise(Kelvin least, Kelvin most) {
        return with(new TemperatureRise("rise", Place.CABINET, least.value(), most.value()));
    }

    /** With sun on the housings in the field, from none up to so much. */
    public Ambient withSunInTheField(Kelvin most) {
        Checks.notNegative("rise by the sun in K", most.value());
        return with(new TemperatureRise("sun", Place.FIELD, 0, most.value()));
    }

    /** With sun on the cabinet, from none up to so much. */
    public Ambient withSunOnTheCabinet(Kelvin most) {
        Checks.notNegative("rise by the sun in K", most.value());
        return with(new TemperatureRise("sun", Place.CABINET, 0, most.value()));
    }

    /** With the heat of neighbouring modules in the cabinet, over the currents they carry. */
    public Ambient withNeighbours(SelfHeating heating, double leastMilliamps, double mostMilliamps) {
        final double a = heating.riseByNeighbours(leastMilliamps).value();
        final double b = heating.riseByNeighbours(mostMilliamps).value();
        return with(new TemperatureRise("neighbouring modules", Place.CABINET,
            Math.min(a, b), Math.max(a, b)));
    }

    /** With one more rise. */
    public Ambient with(TemperatureRise rise) {
        final List<TemperatureRise> all = new ArrayList<>(rises);
        all.add(rise);
        return new Ambient(lowest, highest, distribution, all);
    }

    /** What a claim over this ambient means. */
    public Basis basis() {
        return distribution.isPresent() ? Basis.SHARE_OF_TIME : Basis.EVERY_TEMPERATURE;
    }

    /** Sum of the smallest rises at a place, kelvin. */
    public double leastRise(Place place) {
        return rises.stream().filter(r -> r.place() == place).mapToDouble(TemperatureRise::least).sum();
    }

    /** Sum of the largest rises at a place, kelvin. */
    public double mostRise(Place place) {
        return rises.stream().filter(r -> r.place() == place).mapToDouble(TemperatureRise::most).sum();
    }

    /** Lowest temperature at a place. */
    public Celsius lowestAt(Place place) {
        return lowest.plus(new Kelvin(leastRise(place)));
    }

    /** Highest temperature at a place. */
    public Celsius highestAt(Place place) {
        return highest.plus(new Kelvin(mostRise(place)));
    }

    /** How far a module at a place goes from its calibration temperature, both sides. */
    public Excursion excursionAt(Place place, Celsius calibration) {
        return Excursion.of(calibration, lowestAt(place), highestAt(place));
    }

    @Override
    public String toString() {
        final String range = lowest + " to " + highest + " outdoor, " + basis()
            + distribution.map(d -> " (" + d.kind() + ")").orElse("");
        return rises.isEmpty() ? range : range + ", "
            + rises.stream().map(TemperatureRise::toString).collect(Collectors.joining(", "));
    }
}
