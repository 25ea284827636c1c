package org.duskply.engine.frame;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.jspecify.annotations.Nullable;

/**
 * A frame's file, open for reading at any place. Plain positioned reads in small pieces: a memory
 * map would take the whole process down when a file shrinks, and one large read would leave a large
 * buffer of the same size behind in every thread.
 */
final class FrameFile implements ByteSource, AutoCloseable {
  private final Path path;
  private final SeekableByteChannel channel;
  private final long size;
  private final String stamp;
  private final ReadCounters counters;
  private final boolean tolerant;

  private FrameFile(
      Path path,
      SeekableByteChannel channel,
      long size,
      String stamp,
      ReadCounters counters,
      boolean tolerant) {
    this.path = path;
    this.channel = channel;
    this.size = size;
    this.stamp = stamp;
    this.counters = counters;
    this.tolerant = tolerant;
  }

  /**
   * Opens a file.
   *
   * @param tolerant whether its readers go on where it is damaged
   * @throws FrameException if it is missing, a folder, empty or may not be read
   */
  static FrameFile open(Path path, ReadCounters counters, boolean tolerant) {
    if (Files.isDirectory(path)) {
      throw sentence(path, "is a folder, not a picture", null);
    }
    SeekableByteChannel channel = null;
    try {
      channel = Files.newByteChannel(path);
      long size = channel.size();
      if (size == 0) {
        throw sentence(path, "is empty: it holds 0 bytes", null);
      }
      FrameFile file = new FrameFile(path, channel, size, stamp(path), counters, tolerant);
      channel = null;
      return file;
    } catch (NoSuchFileException e) {
      throw sentence(path, "is not there", e);
    } catch (AccessDeniedException e) {
      throw sentence(path, "may not be read: permission is missing", e);
    } catch (IOException e) {
      throw sentence(path, "cannot be read from its disk", e);
    } finally {
      closeQuietly(channel);
    }
  }

  /** When the file was written last, and which file it is. */
  private static String stamp(Path path) throws IOException {
    BasicFileAttributes a = Files.readAttributes(path, BasicFileAttributes.class);
    return a.lastModifiedTime() + " " + a.fileKey();
  }

  /**
   * Opens the same file once more. It must not have changed: its header is known, and so may be
   * some of its samples, from a time when it was another.
   */
  FrameFile again() {
    FrameFile again = open(path, counters, tolerant);
    if (again.size != size || !again.stamp.equals(stamp)) {
      again.close();
      throw fail("has changed since it was opened");
    }
    return again;
  }

  /** The counters that this file's reads go to. */
  ReadCounters counters() {
    return counters;
  }

  /** Whether readers go on where the file is damaged, with a notice. */
  boolean tolerant() {
    return tolerant;
  }

  /** The file's name without its folders. */
  String name() {
    return name(path);
  }

  @Override
  public long size() {
    return size;
  }

  @Override
  public void read(long at, byte[] into, int from, int count) {
    if (at < 0 || at > size - count) {
      throw fail("is cut short: it points to data behind its own end");
    }
    int done = 0;
    while (done < count) {
      int piece = Math.min(count - done, FrameLimits.READ_BYTES);
      int got = readSome(ByteBuffer.wrap(into, from + done, piece), at + done);
      if (got <= 0) {
        throw fail("became shorter while it was read");
      }
      done += got;
    }
    counters.countBytes(count);
  }

  private int readSome(ByteBuffer into, long at) {
    try {
      if (channel instanceof FileChannel file) {
        return file.read(into, at);
      }
      synchronized (channel) {
        return channel.position(at).read(into);
      }
    } catch (IOException e) {
      throw fail("cannot be read from its disk", e);
    }
  }

  @Override
  public FrameException fail(String predicate) {
    return new FrameException(name() + " " + predicate + ".");
  }

  @Override
  public FrameException fail(String predicate, Throwable cause) {
    return new FrameException(name() + " " + predicate + ".", cause);
  }

  @Override
  public void close() {
    closeQuietly(channel);
  }

  private static FrameException sentence(Path path, String predicate, @Nullable Throwable cause) {
    String text = name(path) + " " + predicate + ".";
    return cause == null ? new FrameException(text) : new FrameException(text, cause);
  }

  private static String name(Path path) {
    Path name = path.getFileName();
    return name == null ? path.toString() : name.toString();
  }

  /** Nothing was written, so that nothing can be lost by a failure to close. */
  private static void closeQuietly(@Nullable SeekableByteChannel channel) {
    if (channel != null) {
      try {
        channel.close();
      } catch (IOException e) {
        // What was read has been read.
      }
    }
  }
}
