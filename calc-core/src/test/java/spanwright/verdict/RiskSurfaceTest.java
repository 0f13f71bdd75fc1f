package spanwright.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spanwright.reference.AsPrinted.assertAsPrinted;

import java.util.List;
import org.junit.jupiter.api.Test;

class RiskSurfaceTest {
    private static final List<Double> RATIOS = List.of(1.0, 2.0, 4.0);
    private static final List<Double> RELIABILITIES = List.of(0.5, 0.85, 0.95);

    @Test
    void holdsThePublishedPoint() {
        // 0.858 % and 1.554 %: test-data/published/pfa_pfr_calc.csv, by R 4.2
        final RiskSurface surface = RiskSurface.of(new GuardBand(0), Reliability.TRUE, 2, RATIOS,
            RELIABILITIES);
        final RiskSurface.Cell cell = surface.cell(2, 2);
        assertEquals(4, cell.ratio());
        assertEquals(0.95, cell.reliability());
        assertAsPrinted("0.858", 100 * cell.risk().orElseThrow().falseAccept());
        assertAsPrinted("1.554", 100 * cell.risk().orElseThrow().falseReject());
        // pfa_pfr_calc.csv: 0.850, 2.0: 2.95225 and 5.51034 %
        assertAsPrinted("2.95225", 100 * surface.cell(1, 1).risk().orElseThrow().falseAccept());
    }

    @Test
    void observedProportionsThatTheMeasurementExplainsAreLeftOut() {
        final RiskSurface surface = RiskSurface.of(new GuardBand(0), Reliability.OBSERVED, 2, RATIOS,
            RELIABILITIES);
        // At 1 : 1, u = 0.5; 95 % observed means an observed spread of 0.510, 0.1 of it true; at 98 %
        // nothing.
        assertEquals(Math.sqrt(0.5102134569246539 * 0.5102134569246539 - 0.25),
            ((NormalPrior) surface.cell(0, 2).risk().orElseThrow().prior()).sd(), 1e-12);
        assertTrue(RiskSurface.of(new GuardBand(0), Reliability.OBSERVED, 2, RATIOS, List.of(0.98))
            .cell(0, 0).risk().isEmpty());
    }

    @Test
    void aRuleThatDoesNotApplyLeavesTheCellEmpty() {
        final RiskSurface surface = RiskSurface.of(SimpleAcceptance.withRatioAtLeast(4), Reliability.TRUE, 2,
            RATIOS, RELIABILITIES);
        assertTrue(surface.cell(1, 0).risk().isEmpty());
        assertTrue(surface.cell(2, 0).risk().isPresent());
    }

    @Test
    void refusesARuleOfAnotherPopulationAndUnsortedAxes() {
        assertThrows(IllegalArgumentException.class, () -> RiskSurface.of(new PlantRiskGuardBand(0.01,
            NormalPrior.of(0, 1, "any")), Reliability.TRUE, 2, RATIOS, RELIABILITIES));
        assertThrows(IllegalArgumentException.class,
            () -> RiskSurface.of(new GuardBand(0), Reliability.TRUE, 2, List.of(2.0, 1.0), RELIABILITIES));
        assertThrows(IllegalArgumentException.class,
            () -> RiskSurface.of(new GuardBand(0), Reliability.TRUE, 2, RATIOS, List.of(1.0)));
    }
}
