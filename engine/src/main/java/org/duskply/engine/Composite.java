package org.duskply.engine;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.type.numeric.real.FloatType;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;

/**
 * A recipe with its frames, checked and planned: ready to be looked at, explained and delivered.
 * Thread-safe.
 */
public interface Composite extends AutoCloseable {
  /** The recipe. */
  Recipe recipe();

  /** Columns of the finished picture. */
  int width();

  /** Rows of the finished picture. */
  int height();

  /** Things worth a look: in the recipe, in its frames. */
  List<Problem> notices();

  /** Name of the linear space that the picture is made in, for people. */
  String working();

  /**
   * The finished picture in linear light: width × height × 3, red, green and blue, in the primaries
   * of {@link #working}. Computed where it is read, in the reader's thread, and kept while memory
   * allows.
   */
  RandomAccessibleInterval<FloatType> image();

  /**
   * What the finished picture is compared with: the recipe's {@code before} frame, as it is read,
   * of the size and in the light of {@link #image}.
   */
  RandomAccessibleInterval<FloatType> before();

  /** What each step does, in words and numbers. */
  Explanation explain();

  /**
   * Looks at a part of the frames' pixels: whether all were developed alike, without tone curve and
   * without automatic exposure.
   *
   * @param progress told how far it has come
   * @return notices, each with its place in the recipe; also for frames that could not be measured
   * @throws CancelledException if {@code progress} asked for it
   */
  List<Problem> measure(Progress progress);

  /**
   * Renders the recipe's deliverables.
   *
   * @param out folder that their paths start from; made if it is not there
   * @param names which deliverables; empty: all
   * @param progress told how far it has come
   * @throws UnknownNameException if {@code names} holds one that is not there
   * @throws DuskplyException if a frame is damaged, memory does not do, or a file cannot be
   *     written; then no file has been changed
   * @throws CancelledException if {@code progress} asked for it
   */
  Delivered deliver(Path out, Set<String> names, Progress progress);

  /** Closes the frames' files. */
  @Override
  void close();
}
