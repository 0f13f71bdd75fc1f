package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.chart.WiringRing.Station;
import spanwright.loop.ElementState;

/**
 * Where the symbols of the two wires of a ring stand, left to right: as close as texts and potentials allow,
 * rings behind isolators beside each other, and both cores of a cable one above the other.
 */
final class WiringColumns {
    private static final double GAP = 14;

    private final WiringRing ring;
    private final List<Optional<WiringLayout>> behind;
    private final double potentialWidth;
    private final double lowerStart;
    private final double upperStart;

    WiringColumns(WiringRing ring, List<Optional<WiringLayout>> behind, double potentialWidth,
                  double lowerStart, double upperStart) {
        this.ring = ring;
        this.behind = behind;
        this.potentialWidth = potentialWidth;
        this.lowerStart = lowerStart;
        this.upperStart = upperStart;
    }

    /**
     * A core out and its core back.
     *
     * @param upper place of the one in the upper wire
     * @param lower place of the other in the lower wire
     */
    private record Pair(int upper, int lower) { }

    void place(double[] upperX, double[] lowerX) {
        int u = 0;
        int l = 0;
        for (Pair pair : pairs()) {
            for (; u < pair.upper; u++) {
                upperX[u] = next(ring.upper(), upperX, u, upperStart);
            }
            for (; l < pair.lower; l++) {
                lowerX[l] = nextLower(lowerX, l);
            }
            final double x = Math.max(next(ring.upper(), upperX, u, upperStart), nextLower(lowerX, l));
            upperX[u++] = x;
            lowerX[l++] = x;
        }
        for (; u < upperX.length; u++) {
            upperX[u] = next(ring.upper(), upperX, u, upperStart);
        }
        for (; l < lowerX.length; l++) {
            lowerX[l] = nextLower(lowerX, l);
        }
    }

    private List<Pair> pairs() {
        final List<Pair> pairs = new ArrayList<>();
        int after = 0;
        for (int u = 0; u < ring.upper().size(); u++) {
            final ElementState out = ring.upper().get(u).state();
            for (int l = after; l < ring.lower().size(); l++) {
                if (out.part() == ElementState.Part.CORE_OUT
                    && ring.lower().get(l).isCore(ElementState.Part.CORE_BACK)
                    && ring.lower().get(l).state().element().equals(out.element())) {
                    pairs.add(new Pair(u, l));
                    after = l + 1;
                }
            }
        }
        return pairs;
    }

    /** The leftmost place that the station before it, or the edge, allows. */
    private double next(List<Station> stations, double[] x, int i, double start) {
        final Station station = stations.get(i);
        final double half = station.symbol().halfWidth();
        final double halfText = station.text().width() / 2;
        if (i == 0) {
            return start + Math.max(half + potentialWidth, halfText + 2 * GAP);
        }
        final Station before = stations.get(i - 1);
        return x[i - 1] + Math.max(before.symbol().halfWidth() + potentialWidth + half,
            before.text().width() / 2 + GAP + halfText);
    }

    private double nextLower(double[] x, int i) {
        double place = next(ring.lower(), x, i, lowerStart);
        if (behind.get(i).isPresent()) {
            for (int k = 0; k < i; k++) {
                if (behind.get(k).isPresent()) {
                    place = Math.max(place, x[k] + behind.get(k).get().rightExtent() + 2 * GAP
                        - behind.get(i).get().leftExtent());
                }
            }
        }
        return place;
    }
}
