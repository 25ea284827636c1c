package org.duskply.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.duskply.engine.frame.FrameColour;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.ReadCounters;
import org.duskply.recipe.Frame;
import org.duskply.recipe.ReadsAs;
import org.jspecify.annotations.Nullable;

/** Opens one frame, and decides in which colour space it is read. */
final class FrameOpening {
  private FrameOpening() {}

  /**
   * Opens a frame.
   *
   * @param given the frame in memory that takes the file's place, if there is one
   * @param found told what is wrong or odd
   * @return its match not yet counted; null if there is a problem
   */
  static FrameSet.@Nullable Opened open(
      String name, Frame frame, Roots roots, @Nullable MemoryFrame given, Found found) {
    String path = "frames/" + name;
    try {
      FrameSource source;
      String identity;
      ReadsAs readsAs = frame.readsAs();
      if (given != null) {
        source = given.source();
        identity = given.identity();
        readsAs = readsAs == null ? given.readsAs() : readsAs;
      } else {
        Path file = roots.resolve(frame.file());
        source = FrameSources.open(file, new ReadCounters(), roots.tolerant());
        identity = identity(file);
      }
      FrameInfo info = source.info();
      FrameColour colour = FrameColour.of(frame.file(), info, frame.profile(), readsAs);
      info.notices().forEach(n -> found.notice(path, name + ": " + n));
      if (colour.notice() != null) {
        found.notice(path, name + ": " + colour.notice());
      }
      return new FrameSet.Opened(name, frame, source, colour, identity, frame.exposure());
    } catch (DuskplyException e) {
      found.problem(path, sentence(e));
    } catch (InvalidPathException e) {
      found.problem(path, "\"" + frame.file() + "\" cannot be a file name on this system.");
    } catch (IOException e) {
      found.problem(path, frame.file() + " cannot be read: " + e.getMessage());
    }
    return null;
  }

  static String sentence(RuntimeException e) {
    String message = e.getMessage();
    return message == null ? e.toString() : message;
  }

  /**
   * Size, time and key of a file: enough to tell within one run of a program that it is still the
   * same.
   */
  static String identity(Path file) throws IOException {
    BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
    return file.toAbsolutePath() + " " + a.size() + " " + a.lastModifiedTime() + " " + a.fileKey();
  }
}
