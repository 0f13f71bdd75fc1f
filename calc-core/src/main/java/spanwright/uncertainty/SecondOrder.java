package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spanwright.quantity.Checks;

/**
 * Terms of next higher order of the variance (JCGM 100:2008, 5.1.2 note): for independent inputs the sum over
 * all i, j of {@code (f_ij^2 / 2 + f_i f_ijj) u_i^2 u_j^2}; for correlated ones its general form,
 * {@code tr((H V)^2) / 2 + sum_i (V c)_i sum_jk f_ijk V_jk}, with H the second derivatives, c the
 * sensitivities and V the covariances. Exact for a quadratic model of normal inputs.
 */
final class SecondOrder {
    private static final double CLEAR = 1e-3;
    private static final double ROUNDING = 1e-10;

    private final MeasurementModel model;
    private final List<String> names;
    private final int n;
    private final double[] x;
    private final double[] u;
    private final double[] contributions;
    private final double[][] curvature;
    private final Differences differences;
    private final List<SecondOrderTerm> terms = new ArrayList<>();
    private final List<String> undetermined = new ArrayList<>();
    private double scale;
    private double variance;
    private double meanShift;

    SecondOrder(MeasurementModel model, double[] contributions) {
        this.model = model;
        this.names = model.names();
        this.n = names.size();
        this.x = model.inputs().stream().mapToDouble(InputQuantity::value).toArray();
        this.u = model.inputs().stream().mapToDouble(InputQuantity::u).toArray();
        this.contributions = contributions;
        this.curvature = new double[n][n];
        this.differences = new Differences(model.formula());
        if (!(model.formula() instanceof LinearModel)) {
            scale = ROUNDING * Math.abs(model.formula().value(x.clone()));
            for (final double c : contributions) {
                scale = Math.max(scale, Math.abs(c));
            }
            fillCurvature();
            sumTerms();
        }
        terms.sort(Comparator.comparingDouble((SecondOrderTerm term) -> -Math.abs(term.variance())));
    }

    private double[] direction(int i) {
        final double[] d = new double[n];
        d[i] = u[i];
        return d;
    }

    private void fillCurvature() {
        final Derivative[][] found = new Derivative[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n && u[i] > 0; j++) {
                if (u[j] > 0) {
                    found[i][j] = differences.second(x, direction(i), direction(j));
                    if (found[i][j].error() <= CLEAR * Math.abs(found[i][j].value())) {
                        scale = Math.max(scale, Math.abs(found[i][j].value()));
                    }
                }
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                if (found[i][j] != null) {
                    curvature[i][j] = checked(found[i][j], i, j);
                    curvature[j][i] = curvature[i][j];
                }
            }
        }
    }

    /** The value of a derivative; 0 where its error hides it, and noted where that error would matter. */
    private double checked(Derivative d, int i, int j) {
        if (d.error() <= CLEAR * Math.abs(d.value())) {
            return d.value();
        }
        if (!(d.error() <= 10 * CLEAR * scale)) {
            final String pair = i == j ? names.get(i) : names.get(i) + " and " + names.get(j);
            if (!undetermined.contains(pair)) {
                undetermined.add(pair);
            }
        }
        return 0;
    }

    private void sumTerms() {
        final double[][] spread = spread();
        for (int i = 0; i < n; i++) {
            double own = curvature[i][i] * spread[i][i] / 2;
            own += thirdOrder(i);
            add(i, i, own);
            for (int j = 0; j < n; j++) {
                meanShift += curvature[i][j] * model.matrix().at(i, j) / 2;
                if (j > i) {
                    add(i, j, curvature[i][j] * spread[i][j]);
                }
            }
        }
        Checks.finite("second-order variance of " + model.measurand(), variance);
    }

    private void add(int i, int j, double part) {
        if (part != 0) {
            terms.add(new SecondOrderTerm(names.get(i), names.get(j), part));
            variance += part;
        }
    }

    /** R H R, with H the curvature in units of u and R the correlations. */
    private double[][] spread() {
        if (model.matrix().isIndependent()) {
            return curvature;
        }
        return byCorrelations(byCorrelations(curvature));
    }

    /** Transpose of R times a matrix; twice makes R M R, since R is symmetric. */
    private double[][] byCorrelations(double[][] m) {
        final double[][] product = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    product[j][i] += model.matrix().at(i, k) * m[k][j];
                }
            }
        }
        return product;
    }

    /** Contribution of input i, with what is correlated to it, times the sum over j, k of f_ijk V_jk. */
    private double thirdOrder(int i) {
        if (u[i] == 0) {
            return 0;
        }
        double weight = 0;
        for (int j = 0; j < n; j++) {
            weight += model.matrix().at(i, j) * contributions[j];
        }
        if (weight == 0) {
            return 0;
        }
        double sum = 0;
        for (final double[] axis : model.matrix().axes()) {
            final double[] d = new double[n];
            for (int j = 0; j < n; j++) {
                d[j] = axis[j] * u[j];
            }
            sum += checked(differences.third(x, direction(i), d), i, i);
        }
        return weight * sum;
    }

    double variance() {
        return variance;
    }

    double meanShift() {
        return meanShift;
    }

    List<SecondOrderTerm> terms() {
        return terms;
    }

    boolean isDetermined() {
        return undetermined.isEmpty();
    }

    String undetermined() {
        return String.join("; ", undetermined);
    }
}
