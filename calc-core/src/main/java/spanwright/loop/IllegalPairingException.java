package spanwright.loop;

/** A wiring that cannot work or does damage, whatever the figures: refused, with the reason. */
public final class IllegalPairingException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** With the reason. */
    public IllegalPairingException(String reason) {
        super(reason);
    }
}
