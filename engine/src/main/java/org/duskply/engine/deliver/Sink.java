package org.duskply.engine.deliver;

import java.util.function.BooleanSupplier;
import org.duskply.engine.pixel.Planes;

/**
 * A file that is being delivered, band by band. Nothing stands at its name before {@link #commit};
 * from then on it is whole.
 *
 * <p>{@link #encode} is pure and may be called by any thread, for several bands at once, in any
 * order, more than once. {@link #append}, {@link #finish}, {@link #commit} and {@link #close} are
 * called by one thread at a time. After an exception of these nothing is left but the file that
 * stood there before, and only {@link #close} may still be called.
 */
public interface Sink extends AutoCloseable {
  /** How many bands the picture has. */
  int bands();

  /**
   * Encodes a band.
   *
   * @param band from 0, from the top
   * @param rows linear R, G, B in the working space; exactly the rows of this band, full width
   */
  Encoded encode(int band, Planes rows);

  /**
   * Writes a band; bands come in rising order, each once.
   *
   * @throws DeliverException if the file cannot be written
   */
  void append(int band, Encoded encoded);

  /**
   * Writes all that is left to write once every band is there, so that {@link #commit} is quick.
   * Where several files belong together, all are finished before the first is committed.
   *
   * @param stop asked from time to time; once it answers true the work is given up
   * @throws DeliverException if the file cannot be written
   * @throws java.util.concurrent.CancellationException if it was stopped
   */
  void finish(BooleanSupplier stop);

  /**
   * Finishes the file unless {@link #finish} has, forces it to the disk and gives it its name,
   * replacing what stood there.
   *
   * @param stop asked from time to time until the file has its name; once it answers true the work
   *     is given up
   * @throws DeliverException if the file cannot be written
   * @throws java.util.concurrent.CancellationException if it was stopped
   */
  void commit(BooleanSupplier stop);

  /** {@link #commit(BooleanSupplier)} that nobody stops. */
  default void commit() {
    commit(() -> false);
  }

  /** Ends the work; without a commit before it, as if it had never begun. */
  @Override
  void close();

  /**
   * Most bytes, on the heap and off it, that one {@link #encode} of {@code rows} rows needs while
   * it runs, its result included.
   */
  long encodeBytes(int rows);

  /** Bytes that are held from the opening to the commit, whatever the bands. */
  long heldBytes();
}
