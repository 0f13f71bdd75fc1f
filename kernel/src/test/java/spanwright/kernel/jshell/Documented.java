package spanwright.kernel.jshell;

/** Has an entry in the documentation index of the test resources. */
public final class Documented {
    private Documented() { }

    public static double measure(double value) {
        return value;
    }
}
