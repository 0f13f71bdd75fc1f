package spanwright.loop;

/** The voltage each element takes from the circuit it stands in, over the current. */
final class Drops {
    private Drops() { }

    /** Of a transmitter: its lift-off; of an active one, 0, since it gives. */
    static PiecewiseLine of(LoopElement element, Pick pick) {
        if (element instanceof Cable cable) {
            return PiecewiseLine.ofOhms(0, cable.ohms(pick));
        }
        if (element instanceof Burden burden) {
            return burden.curve(pick);
        }
        if (element instanceof Isolator isolator) {
            return isolator.nests() ? nested(isolator, pick) : isolator.inputCurve(pick);
        }
        final Transmitter transmitter = (Transmitter) element;
        return transmitter.kind().isActive() ? PiecewiseLine.line(0, 0) : transmitter.curve(pick);
    }

    private static PiecewiseLine nested(Isolator isolator, Pick pick) {
        final PiecewiseLine load = isolator.loadCurve(pick);
        final PiecewiseLine seen = isolator.output().clampVolts().isEmpty() ? load
            : load.capped(isolator.output().clampVolts().getAsDouble());
        return isolator.inputCurve(pick).plus(seen);
    }
}
