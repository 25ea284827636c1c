package org.duskply.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.render.BoundedStore;
import org.duskply.engine.render.Store;
import org.duskply.recipe.Reading;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeException;
import org.duskply.recipe.RecipeReader;

/**
 * Makes pictures from recipes. One engine holds the threads and the memory that its composites
 * share; it is thread-safe, and costs little until something is rendered.
 *
 * <pre>{@code
 * try (Engine engine = Engine.builder().build();
 *     Composite composite = engine.open(Path.of("boathouse.yaml"))) {
 *   composite.deliver(Path.of("out"), Set.of(), Progress.SILENT);
 * }
 * }</pre>
 */
public final class Engine implements AutoCloseable {
  private final int threads;
  private final long memory;
  private final List<Path> allowed;
  private final boolean tolerant;
  private final int deflateLevel;
  private final Store store;
  private final Set<String> odd = ConcurrentHashMap.newKeySet();
  private final PlanSettings settings;
  private final ExecutorService pool;

  private Engine(Builder builder) {
    this.threads = builder.threads;
    this.memory = builder.memory;
    this.allowed = List.copyOf(builder.allowed);
    this.tolerant = builder.tolerant;
    this.deflateLevel = builder.deflateLevel;
    this.store = builder.keep > 0 ? new BoundedStore(builder.keep) : Store.NONE;
    this.settings = builder.settings;
    AtomicInteger number = new AtomicInteger();
    this.pool =
        Executors.newFixedThreadPool(
            threads,
            task -> {
              Thread thread = new Thread(task, "duskply-" + number.incrementAndGet());
              thread.setDaemon(true);
              return thread;
            });
  }

  /** Settings for a new engine. */
  public static Builder builder() {
    return new Builder();
  }

  /**
   * Opens a recipe's file with its frames.
   *
   * @throws RecipeException with all that is wrong, each with its place
   */
  public Composite open(Path recipe) {
    return open(recipe, View.WHOLE);
  }

  /**
   * Opens a recipe's file with its frames, to look at a part of it.
   *
   * @throws RecipeException with all that is wrong, each with its place
   * @throws UnknownNameException if {@code view} names a step that is not there
   */
  public Composite open(Path recipe, View view) {
    RecipeReader reader =
        allowed.isEmpty() ? RecipeReader.strict() : RecipeReader.allowingOtherFolders();
    Reading reading = reader.check(recipe);
    Recipe read = reading.orThrow();
    return open(
        new Opening(read, reading.notices(), stem(recipe), folderOf(recipe), view, Map.of()));
  }

  /**
   * Opens a recipe that a program holds.
   *
   * @param folder what its paths are relative to
   * @param frames frames held in memory, by their names in the recipe; they take the place of the
   *     files
   * @throws RecipeException with all that is wrong
   */
  public Composite open(Recipe recipe, Path folder, View view, Map<String, MemoryFrame> frames) {
    return open(new Opening(recipe, List.of(), "recipe", folder, view, Map.copyOf(frames)));
  }

  private Composite open(Opening opening) {
    return opening.open(this);
  }

  /** Threads that render. */
  public int threads() {
    return threads;
  }

  /** Bytes of working memory that one rendering may take. */
  public long memory() {
    return memory;
  }

  List<Path> allowed() {
    return allowed;
  }

  boolean tolerant() {
    return tolerant;
  }

  int deflateLevel() {
    return deflateLevel;
  }

  Store store() {
    return store;
  }

  /**
   * Where a rendering finds what was kept: nowhere if something was odd in one of its frames, since
   * what is kept cannot say so again.
   */
  Store store(Plan plan) {
    return plan.frames().stream().anyMatch(f -> odd.contains(f.contents())) ? Store.NONE : store;
  }

  /** Something was odd in a frame when it was read, and was told. */
  void noteOdd(FrameNode frame) {
    odd.add(frame.contents());
  }

  PlanSettings settings() {
    return settings;
  }

  ExecutorService pool() {
    return pool;
  }

  /** Lets the threads go once what is running has ended. */
  @Override
  public void close() {
    pool.shutdown();
  }

  private static Path folderOf(Path file) {
    Path absolute = file.toAbsolutePath();
    Path folder = absolute.getParent();
    return folder == null ? absolute : folder;
  }

  private static String stem(Path file) {
    Path last = file.getFileName();
    String name = last == null ? "recipe" : last.toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  /** Settings of an engine; not thread-safe. */
  public static final class Builder {
    /** Share of Java's heap that working memory may take where nothing else is said. */
    public static final double SHARE_OF_HEAP = 0.65;

    /** Most threads of an engine. */
    public static final int MOST_THREADS = 1024;

    private int threads = Runtime.getRuntime().availableProcessors();
    private long memory = (long) (Runtime.getRuntime().maxMemory() * SHARE_OF_HEAP);
    private long keep;
    private final List<Path> allowed = new ArrayList<>();
    private boolean tolerant;
    private int deflateLevel;
    private PlanSettings settings = PlanSettings.DEFAULT;

    private Builder() {}

    /**
     * How many threads render, 1 to 1024; as many as there are processors where nothing is said.
     */
    public Builder threads(int threads) {
      if (threads < 1 || threads > MOST_THREADS) {
        throw new IllegalArgumentException("threads: " + threads + "; 1 to " + MOST_THREADS);
      }
      this.threads = threads;
      return this;
    }

    /**
     * Bytes of working memory that one rendering may take; 65 % of Java's heap where nothing is
     * said.
     */
    public Builder memory(long bytes) {
      if (bytes < 1) {
        throw new IllegalArgumentException("memory: " + bytes);
      }
      this.memory = bytes;
      return this;
    }

    /**
     * Bytes, beside the working memory, in which finished work is kept: rows as they stand in the
     * files, frames at a preview's scale, masks and decoded samples. An edited recipe then decodes,
     * renders and packs what changed alone. 0 where nothing is said; to keep all of a composite
     * takes about the size of its files and of what its masks show of its frames.
     */
    public Builder keep(long bytes) {
      if (bytes < 0) {
        throw new IllegalArgumentException("keep: " + bytes);
      }
      this.keep = bytes;
      return this;
    }

    /** A folder, beside the recipe's own, that frames may be read from. */
    public Builder allow(Path folder) {
      allowed.add(folder);
      return this;
    }

    /**
     * Whether frames that are cut short or damaged are read as far as they go, with grey in place
     * of what is missing and a notice, instead of being refused; refused where nothing is said.
     */
    public Builder tolerant(boolean tolerant) {
      this.tolerant = tolerant;
      return this;
    }

    /**
     * How hard zlib packs deflated TIFFs, 1 to 9. It changes their size and the time they take, and
     * no pixel. Where nothing is said, the quickest way is taken that makes them about as small as
     * any.
     */
    public Builder deflateLevel(int level) {
      if (level < 1 || level > 9) {
        throw new IllegalArgumentException("deflate level: " + level + "; 1 to 9");
      }
      this.deflateLevel = level;
      return this;
    }

    /** How the work is cut up; for tests, since it changes no bit. */
    Builder settings(PlanSettings settings) {
      this.settings = settings;
      return this;
    }

    /** The engine. */
    public Engine build() {
      return new Engine(this);
    }
  }
}
