package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfReading;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Transfer;
import spanwright.temperature.Ambient;
import spanwright.temperature.Place;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureStatement;
import spanwright.temperature.TemperatureTest;
import spanwright.uncertainty.Estimate;

/**
 * One element of a measuring chain: a transmitter, an isolator, an input card. Immutable; every {@code with}
 * gives a new element.
 *
 * <p>Data-sheet limits are taken as guaranteed maxima. The accuracy rating holds linearity, hysteresis and
 * repeatability (ISA-51.1): given beside it, those are noted and not added again.
 *
 * @param name         unique in its chain
 * @param input        range of the input
 * @param output       range of the output
 * @param transfer     specified characteristic between them
 * @param site         where it is mounted and when it was calibrated
 * @param terms        its errors
 * @param remarks      what goes into the register, and what its data do not tell
 */
public record ChainElement(String name, Span input, Span output, Transfer transfer, Site site,
                           List<ErrorTerm> terms, Remarks remarks) {
    /**
     * Where an element is mounted, and at what temperature it was calibrated.
     *
     * @param place       field or cabinet of the chain's ambient
     * @param own         an ambient of its own, for example a control room; empty if it is in the chain's
     * @param calibration temperature at calibration; empty if not recorded
     */
    public record Site(Place place, Optional<Ambient> own, Optional<Celsius> calibration) {
        /** Checks the components. */
        public Site {
            Objects.requireNonNull(place, "place");
            Objects.requireNonNull(own, "own");
            Objects.requireNonNull(calibration, "calibration");
        }
    }

    /**
     * What a reader of the element's data must know.
     *
     * @param notes assumptions that go into the register
     * @param gaps  what the data do not determine and nothing else covers: a claim that rests on them is one
     *              with stated risk
     */
    public record Remarks(List<String> notes, List<String> gaps) {
        /** Nothing to remark. */
        public static final Remarks NONE = new Remarks(List.of(), List.of());

        /** Copies the lists. */
        public Remarks {
            notes = List.copyOf(notes);
            gaps = List.copyOf(gaps);
        }

        Remarks note(String note) {
            return notes.contains(note) ? this
                : new Remarks(Stream.concat(notes.stream(), Stream.of(note)).toList(), gaps);
        }

        Remarks gap(String gap) {
            return gaps.contains(gap) ? this
                : new Remarks(notes, Stream.concat(gaps.stream(), Stream.of(gap)).toList());
        }
    }

    /** Checks the components and copies the lists. */
    public ChainElement {
        Checks.notBlank("name of the element", name);
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(transfer, "transfer");
        Objects.requireNonNull(site, "site");
        terms = List.copyOf(terms);
        Objects.requireNonNull(remarks, "remarks");
        if (terms.stream().map(ErrorTerm::name).distinct().count() < terms.size()) {
            throw new IllegalArgumentException(name + ": two error terms have the same name in "
                + terms.stream().map(ErrorTerm::name).toList());
        }
    }

    /** An element from one range to another, without errors so far, mounted in the field. */
    public static ChainElement of(String name, Span input, Span output) {
        return new ChainElement(name, input, output, Transfer.LINEAR,
            new Site(Place.FIELD, Optional.empty(), Optional.empty()), List.of(), Remarks.NONE);
    }

    /** A 1:1 element for 4-20 mA, such as an isolator. */
    public static ChainElement oneToOne(String name) {
        return of(name, Span.milliamps4to20(), Span.milliamps4to20());
    }

    /**
     * An element with the errors of a calibration record: the known error at each point, hysteresis,
     * non-repeatability and resolution as far as the record determines them. The ambient of the record is the
     * calibration temperature.
     */
    public static ChainElement measured(String name, CalibrationRun run) {
        final MeasuredTerms measured = MeasuredTerms.of(run);
        return new ChainElement(name, run.input(), run.output(), run.transfer(),
            new Site(Place.FIELD, Optional.empty(), run.conditions().ambient()), measured.terms(),
            new Remarks(measured.notes(), measured.gaps()));
    }

    /** This element with another characteristic, for example a square root. */
    public ChainElement withTransfer(Transfer other) {
        return new ChainElement(name, input, output, other, site, terms, remarks);
    }

    /** Mounted in the cabinet of the chain's ambient. */
    public ChainElement inCabinet() {
        return at(new Site(Place.CABINET, site.own(), site.calibration()));
    }

    /** Mounted in the open air of the chain's ambient. */
    public ChainElement inField() {
        return at(new Site(Place.FIELD, site.own(), site.calibration()));
    }

    /** Mounted in an ambient of its own, such as a control room; it shares no temperature with the others. */
    public ChainElement in(Ambient own) {
        return at(new Site(site.place(), Optional.of(own), site.calibration()));
    }

    /** Calibrated at a temperature, from which all its excursions count. */
    public ChainElement calibratedAt(Celsius temperature) {
        return at(new Site(site.place(), site.own(), Optional.of(temperature)));
    }

    private ChainElement at(Site other) {
        return new ChainElement(name, input, output, transfer, other, terms, remarks);
    }

    /** With the accuracy rating of the data sheet, plus and minus. */
    public ChainElement withAccuracy(PercentOfSpan limit) {
        return withLimit(Influence.ACCURACY_RATING, limit, "data sheet");
    }

    /** With an accuracy rating of reading: 1.25 times the figure in percent of span at 20 mA. */
    public ChainElement withAccuracy(PercentOfReading limit) {
        return with(ErrorTerm.limit("accuracy rating of reading", Influence.ACCURACY_RATING, limit.value(),
            guaranteed("data sheet")).withProfile(ErrorProfile.ofReading(output)));
    }

    /** With a limit of non-linearity; inside the accuracy rating where there is one. */
    public ChainElement withLinearity(PercentOfSpan limit) {
        return withLimit(Influence.LINEARITY, limit, "data sheet");
    }

    /** With a limit of hysteresis; inside the accuracy rating where there is one. */
    public ChainElement withHysteresis(PercentOfSpan limit) {
        return withLimit(Influence.HYSTERESIS, limit, "data sheet");
    }

    /** With a limit of non-repeatability; inside the accuracy rating where there is one. */
    public ChainElement withRepeatability(PercentOfSpan limit) {
        return withLimit(Influence.REPEATABILITY, limit, "data sheet");
    }

    /** With a maker's statement of temperature influence; a typical figure must have been forced. */
    public ChainElement withTemperature(TemperatureStatement statement) {
        return with(TemperatureTerms.of(statement, output));
    }

    /** With a coefficient found in a chamber test; its method decides how it enters. */
    public ChainElement withTemperature(TemperatureCoefficient coefficient) {
        return TemperatureTerms.add(this, coefficient);
    }

    /** With the slopes of zero and span, and the non-return, of a chamber test, by least squares. */
    public ChainElement withTemperature(TemperatureTest test) {
        return TemperatureTerms.add(this, test);
    }

    /** With a limit that holds over the whole ambient range, as some data sheets give it. */
    public ChainElement withTemperatureLimit(PercentOfSpan limit) {
        return withLimit(Influence.TEMPERATURE, limit, "data sheet, over the whole ambient range");
    }

    /** With the influence of a load that differs from that at calibration. */
    public ChainElement withLoadEffect(PercentOfSpan per100Ohms, double calibrationOhms,
                                       double installedOhms) {
        final double ohms = Math.abs(Checks.notNegative("load at calibration in ohm", calibrationOhms)
            - Checks.notNegative("installed load in ohm", installedOhms));
        return withLimit(Influence.LOAD, new PercentOfSpan(per100Ohms.value() * ohms / 100),
            "data sheet, " + per100Ohms + " per 100 ohm, " + NumberText.plain(ohms, 5)
                + " ohm from calibration");
    }

    /** With the influence of a supply that may differ so many volts from that at calibration. */
    public ChainElement withSupplyEffect(PercentOfSpan perVolt, double volts) {
        return withLimit(Influence.SUPPLY,
            new PercentOfSpan(perVolt.value() * Checks.notNegative("supply difference in V", volts)),
            "data sheet, " + perVolt + " per V, " + NumberText.plain(volts, 5) + " V from calibration");
    }

    /** With a stated stability per year, over the time between calibrations. */
    public ChainElement withAgeing(PercentOfSpan perYear, double years, Ageing growth) {
        return withLimit(Influence.AGEING,
            new PercentOfSpan(perYear.value() * growth.factor(Checks.notNegative("years", years))),
            "data sheet, " + perYear + " per year, " + NumberText.plain(years, 4) + " years, " + growth);
    }

    /** With the steps of a converter of so many bits over a range in the unit of the input. */
    public ChainElement withResolution(int bits, Span converterRange) {
        Checks.within("bits of the converter", bits, 1, 32);
        final double step = input.ofSpan(converterRange.width() / Math.pow(2, bits)).value();
        return withLimit(Influence.RESOLUTION, new PercentOfSpan(step / 2),
            bits + " bits over " + converterRange);
    }

    /** Calibrated with a standard, whose error is shared by all elements that name it. */
    public ChainElement calibratedWith(SharedStandard standard) {
        return with(ErrorTerm.estimate("standard " + standard.id(), Influence.STANDARD,
            Estimate.of(0, standard.u()),
            ErrorTerm.Basis.of(Standing.MEASURED, false, "certificate of " + standard).through(standard)));
    }

    /** With a certificate's result: a known error and its expanded uncertainty. */
    public ChainElement withCertificate(PercentOfSpan error, PercentOfSpan expanded, double k) {
        return with(ErrorTerm.estimate("certificate", Influence.KNOWN_ERROR,
            Estimate.of(error.value(), expanded.value() / Checks.positive("coverage factor", k)),
            ErrorTerm.Basis.of(Standing.MEASURED, false, "certificate, U = " + expanded + ", k = "
                + NumberText.plain(k, 3))));
    }

    /** With a known error that is not removed: it adds with its sign, outside the root. */
    public ChainElement withKnownError(PercentOfSpan error, String source) {
        return with(ErrorTerm.known("known error", new ErrorProfile(
            List.of(new ErrorProfile.Knot(0, error.value()))),
            ErrorTerm.Basis.of(Standing.MEASURED, true, source)));
    }

    /** With its known errors corrected by computation; what is left is the uncertainty of the correction. */
    public ChainElement corrected(Estimate uncertaintyOfCorrection) {
        final List<ErrorTerm> left = new ArrayList<>(
            terms.stream().filter(t -> t.influence() != Influence.KNOWN_ERROR).toList());
        left.add(ErrorTerm.estimate("correction", Influence.KNOWN_ERROR,
            new Estimate(0, uncertaintyOfCorrection.u(), uncertaintyOfCorrection.dof()),
            ErrorTerm.Basis.of(Standing.MEASURED, false, "correction of the known error")));
        return withTerms(left).withNote(name + ": the known error is corrected by computation");
    }

    /** With any other guaranteed limit, as named. */
    public ChainElement withLimit(String termName, PercentOfSpan limit, String source) {
        return with(ErrorTerm.limit(termName, Influence.OTHER, limit.value(), guaranteed(source)));
    }

    /**
     * With a limit that is a judgement without a document: a claim that rests on it is one with stated risk.
     */
    public ChainElement withAssumedLimit(String termName, PercentOfSpan limit, String reason) {
        return with(ErrorTerm.limit(termName, Influence.OTHER, limit.value(), ErrorTerm.Basis.of(
            Standing.ASSUMED, false, Checks.notBlank("reason for the assumption", reason))));
    }

    /**
     * With a typical figure forced into the budget as one standard deviation: it carries no guarantee, and a
     * claim that rests on it is one with stated risk.
     */
    public ChainElement withTypical(String termName, PercentOfSpan figure, String reason) {
        return with(ErrorTerm.estimate(termName, Influence.OTHER, Estimate.of(0, figure.value()),
            ErrorTerm.Basis.of(Standing.TYPICAL, false,
                Checks.notBlank("reason for using a typical figure", reason))));
    }

    /** With one more term. Linearity, hysteresis and repeatability are not added to an accuracy rating. */
    public ChainElement with(ErrorTerm term) {
        final List<ErrorTerm> all = new ArrayList<>(terms);
        all.add(term);
        return DoubleCounting.resolve(withTerms(all));
    }

    ChainElement withTerms(List<ErrorTerm> other) {
        return new ChainElement(name, input, output, transfer, site, other, remarks);
    }

    ChainElement withNote(String note) {
        return withRemarks(remarks.note(note));
    }

    ChainElement withGap(String gap) {
        return withRemarks(remarks.gap(gap));
    }

    ChainElement withRemarks(Remarks other) {
        return new ChainElement(name, input, output, transfer, site, terms, other);
    }

    ChainElement named(String other) {
        return new ChainElement(other, input, output, transfer, site, terms, remarks);
    }

    private ChainElement withLimit(Influence influence, PercentOfSpan limit, String source) {
        return with(ErrorTerm.limit(influence.toString(), influence, limit.value(), guaranteed(source)));
    }

    private static ErrorTerm.Basis guaranteed(String source) {
        return ErrorTerm.Basis.of(Standing.GUARANTEED, true, source);
    }

    @Override
    public String toString() {
        return name + ": " + input + " to " + output + ", " + terms.size() + " error terms, " + site.place();
    }
}
