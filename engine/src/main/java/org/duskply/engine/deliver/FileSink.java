package org.duskply.engine.deliver;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** The one {@link Sink}: colours, a format and a safe file put together. */
final class FileSink implements Sink {
  private enum State {
    OPEN,
    FINISHED,
    COMMITTED,
    CLOSED
  }

  private final BandLayout layout;
  private final OutputColour colour;
  private final Rounding rounding;
  private final Container container;
  private final SafeFile file;
  private int next;
  private State state = State.OPEN;

  FileSink(
      BandLayout layout,
      OutputColour colour,
      Rounding rounding,
      Container container,
      SafeFile file) {
    this.layout = layout;
    this.colour = colour;
    this.rounding = rounding;
    this.container = container;
    this.file = file;
    guarded(() -> container.begin(file));
  }

  @Override
  public int bands() {
    return layout.bands();
  }

  @Override
  public Encoded encode(int band, Planes rows) {
    Region expected = layout.area(band);
    if (!rows.area().equals(expected) || rows.count() < BandLayout.CHANNELS) {
      throw new IllegalArgumentException(
          "band " + band + " is " + expected + ", not " + rows.count() + " × " + rows.area());
    }
    return container.encode(band, new CodeRows(colour, rounding, rows));
  }

  @Override
  public synchronized void append(int band, Encoded encoded) {
    if (state != State.OPEN || band != next || band >= bands()) {
      throw new IllegalStateException("band " + band + " where " + next + " is due, " + state);
    }
    guarded(() -> container.append(file, band, encoded));
    next++;
  }

  @Override
  public synchronized void finish(BooleanSupplier stop) {
    if (state != State.OPEN || next != bands()) {
      throw new IllegalStateException(next + " of " + bands() + " bands, " + state);
    }
    guarded(() -> container.end(file, stop));
    state = State.FINISHED;
  }

  @Override
  public synchronized void commit(BooleanSupplier stop) {
    if (state != State.FINISHED) {
      finish(stop);
    }
    guarded(
        () -> {
          if (stop.getAsBoolean()) {
            throw new CancellationException();
          }
          file.commit();
        });
    state = State.COMMITTED;
  }

  @Override
  public synchronized void close() {
    if (state != State.COMMITTED) {
      state = State.CLOSED;
    }
    file.close();
  }

  @Override
  public long encodeBytes(int rows) {
    return container.encodeBytes(rows);
  }

  @Override
  public long heldBytes() {
    return container.heldBytes();
  }

  /** Whatever goes wrong, an error of the machine included, nothing half-written stays. */
  private void guarded(Runnable work) {
    boolean done = false;
    try {
      work.run();
      done = true;
    } finally {
      if (!done) {
        close();
      }
    }
  }
}
