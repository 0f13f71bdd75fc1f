package spanwright.kernel.dispatch;

/**
 * The request on whose behalf a thread works; threads that a cell starts inherit it, also beyond its end.
 * What is published by a thread without a request belongs to the request that was handled last.
 */
final class Current {
    private static final InheritableThreadLocal<Origin> ORIGIN = new InheritableThreadLocal<>();
    private static volatile Origin latest = Origin.NONE;

    private Current() { }

    static void enter(Origin origin) {
        ORIGIN.set(origin);
        latest = origin;
    }

    static void leave() {
        ORIGIN.remove();
    }

    static Origin origin() {
        final Origin own = ORIGIN.get();
        return own == null ? latest : own;
    }
}
