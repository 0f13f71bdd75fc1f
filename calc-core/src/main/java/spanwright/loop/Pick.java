package spanwright.loop;

/** Chooses a value for each toleranced parameter. Asked in the same order whenever a loop is the same. */
interface Pick {
    /** A parameter that takes voltage from the loop. */
    double drop(String what, Toleranced value);

    /** A parameter that gives voltage to the loop. */
    double push(String what, Toleranced value);

    /** What the ripple of a supply, with this peak value, adds to its voltage. */
    double ripple(double peakVolts);

    /** The values of a corner. */
    static Pick of(Corner corner) {
        return switch (corner) {
            case NOMINAL -> new AtCorner(0);
            case LEAST_VOLTAGE -> new AtCorner(-1);
            case MOST_VOLTAGE -> new AtCorner(1);
        };
    }

    /**
     * The values of a corner.
     *
     * @param side of the voltage left: -1 least, 0 nominal, 1 most
     */
    record AtCorner(int side) implements Pick {
        @Override
        public double drop(String what, Toleranced value) {
            return choose(value, -side);
        }

        @Override
        public double push(String what, Toleranced value) {
            return choose(value, side);
        }

        @Override
        public double ripple(double peakVolts) {
            return side * peakVolts;
        }

        private static double choose(Toleranced value, int towards) {
            if (towards == 0) {
                return value.nominal();
            }
            return towards < 0 ? value.least() : value.most();
        }
    }
}
