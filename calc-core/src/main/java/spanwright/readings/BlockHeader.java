package spanwright.readings;

import java.util.Optional;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;

/** The header lines of one table, understood: what its rows need to become readings. */
record BlockHeader(RecordHeader record, Transfer transfer, Span input, Span output,
                   Optional<Span> inputScale, Optional<Span> outputScale, Optional<Tolerance> tolerance,
                   Conditions conditions, Optional<Span> ambientLimits, Optional<Phase> phase) { }
