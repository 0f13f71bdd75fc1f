package spanwright.loop;

/** What a loop is made of, besides its supply. */
public sealed interface LoopElement permits Cable, Transmitter, Burden, Isolator {
    /** As it is called in results; unique in its loop. */
    String name();
}
