package org.duskply.engine.deliver;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafeFileTest {
  @TempDir private Path folder;

  private Path target() {
    return folder.resolve("print.tif");
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
    }
  }

  private static void write(SafeFile file, String text) {
    file.append(text.getBytes(UTF_8));
  }

  @Test
  void nothingHasTheNameBeforeTheCommit() throws IOException {
    try (SafeFile file = SafeFile.open(target())) {
      write(file, "whole");
      assertThat(target()).doesNotExist();
      assertThat(names(folder))
          .singleElement()
          .asString()
          .matches("\\.print\\.tif\\.[0-9a-f]{8}\\.part");
      assertThat(SafeFile.isLeftOver(folder.resolve(names(folder).get(0)))).isTrue();
      file.commit();
    }
    assertThat(target()).hasContent("whole");
    assertThat(names(folder)).containsExactly("print.tif");
    assertThat(SafeFile.isLeftOver(target())).isFalse();
  }

  @Test
  void commitReplacesTheOldFile() throws IOException {
    Files.writeString(target(), "old and longer than the new");
    try (SafeFile file = SafeFile.open(target())) {
      write(file, "n?w");
      assertThat(target()).hasContent("old and longer than the new");
      file.write(1, "e".getBytes(UTF_8));
      assertThat(file.size()).isEqualTo(3);
      file.commit();
    }
    assertThat(target()).hasContent("new");
  }

  @Test
  void closeWithoutCommitLeavesNothing() throws IOException {
    Files.writeString(target(), "old");
    try (SafeFile file = SafeFile.open(target())) {
      write(file, "new");
    }
    assertThat(target()).hasContent("old");
    assertThat(names(folder)).containsExactly("print.tif");
  }

  @Test
  void aSecondCloseDoesNotDeleteTheFile() {
    SafeFile file = SafeFile.open(target());
    write(file, "whole");
    file.commit();
    file.close();
    file.close();
    assertThat(target()).hasContent("whole");
  }

  @Test
  void writesAcrossSlices() throws IOException {
    byte[] much = new byte[2 * SafeFile.SLICE + 7];
    for (int i = 0; i < much.length; i++) {
      much[i] = (byte) (i * 31 + (i >> 8));
    }
    try (SafeFile file = SafeFile.open(target())) {
      file.append(much);
      file.commit();
    }
    assertThat(Files.readAllBytes(target())).isEqualTo(much);
  }

  @Test
  void twoAtOnceDoNotDisturbEachOther() {
    try (SafeFile first = SafeFile.open(target());
        SafeFile second = SafeFile.open(target())) {
      write(first, "first");
      write(second, "second");
      second.commit();
      first.commit();
    }
    assertThat(target()).hasContent("first");
  }

  @Test
  void makesMissingFolders() {
    Path deep = folder.resolve("a/b/print.tif");
    try (SafeFile file = SafeFile.open(deep)) {
      write(file, "x");
      file.commit();
    }
    assertThat(deep).hasContent("x");
  }

  @Test
  void aLongNameStillHasRoomForTheTemporaryOne() {
    Path longest = folder.resolve("🏮".repeat(60) + ".tif"); // 244 bytes of the 255 there are
    try (SafeFile file = SafeFile.open(longest)) {
      write(file, "x");
      file.commit();
    }
    assertThat(longest).hasContent("x");
  }

  @Test
  void replacesALinkAndNotWhatItPointsTo() throws IOException {
    Path outside = Files.writeString(folder.resolve("outside.tif"), "outside");
    Files.createSymbolicLink(target(), outside);
    try (SafeFile file = SafeFile.open(target())) {
      write(file, "new");
      file.commit();
    }
    assertThat(outside).hasContent("outside");
    assertThat(target()).hasContent("new").isRegularFile();
    assertThat(Files.isSymbolicLink(target())).isFalse();
  }

  @Test
  void refusesAFolder() throws IOException {
    Files.createDirectory(target());
    assertThatThrownBy(() -> SafeFile.open(target()))
        .isInstanceOf(DeliverException.class)
        .hasMessage(target() + " cannot be written: a folder has this name.");
    assertThat(names(folder)).containsExactly("print.tif");
  }

  @Test
  void doesNotReplaceAFolderThatCameMeanwhile() throws IOException {
    SafeFile file = SafeFile.open(target());
    write(file, "x");
    Files.createDirectory(target());
    assertThatThrownBy(file::commit)
        .isInstanceOf(DeliverException.class)
        .hasMessageContaining("folder");
    assertThat(target()).isDirectory();
    assertThat(names(folder)).containsExactly("print.tif");
  }

  @Test
  void refusesAFileWhereAFolderIsMeant() throws IOException {
    Files.writeString(folder.resolve("out"), "a file");
    assertThatThrownBy(() -> SafeFile.open(folder.resolve("out/print.tif")))
        .isInstanceOf(DeliverException.class)
        .hasMessageContaining("is in the way, a file where a folder is meant.");
  }

  /** As systems answer for a folder in a place that holds none, such as a list of processes. */
  @Test
  void aFolderThatCannotBeMadeIsNamed() {
    IOException fault = new NoSuchFileException("/held/nothing");
    assertThat(WriteFault.of(target(), fault, 0))
        .hasMessage(
            target() + " cannot be written: /held/nothing is not there and cannot be made.");
  }

  @Test
  void saysWhenTheFolderIsClosed() {
    SafeFile.Opener closed =
        part -> {
          throw new AccessDeniedException(part.toString());
        };
    assertThatThrownBy(() -> SafeFile.open(target(), closed))
        .hasMessage(
            target() + " cannot be written: you may not write in the folder " + folder + ".");
  }

  @Test
  void refusesAWriteProtectedFile() throws IOException {
    Files.writeString(target(), "dear");
    Files.setPosixFilePermissions(target(), PosixFilePermissions.fromString("r--r--r--"));
    assumeFalse(Files.isWritable(target()), "SKIPPED: this user may write everything");
    assertThatThrownBy(() -> SafeFile.open(target())).hasMessageContaining("write-protected");
  }

  /** A disk that really is full, in memory: 1 MiB in blocks of 8 KiB. */
  @Test
  void saysWhenTheDiskIsFull() throws IOException {
    Configuration small = Configuration.unix().toBuilder().setMaxSize(1 << 20).build();
    try (FileSystem disk = Jimfs.newFileSystem(small)) {
      Path on = Files.createDirectory(disk.getPath("/out")).resolve("print.tif");
      Files.writeString(on, "old");
      SafeFile file = SafeFile.open(on);
      file.append(new byte[600_000]);
      assertThatThrownBy(() -> file.append(new byte[600_000]))
          .isInstanceOf(DeliverException.class)
          .hasMessage("/out/print.tif cannot be written: the disk is full.");
      assertThat(names(on.getParent())).containsExactly("print.tif");
      assertThat(Files.readString(on)).isEqualTo("old");
    }
  }

  @Test
  void aFaultAtAnyByteLeavesTheOldFile() throws IOException {
    Files.writeString(target(), "old");
    for (int bytes = 0; bytes < 12; bytes++) {
      SafeFile file =
          SafeFile.open(target(), FaultyChannel.after(bytes, new IOException("cable pulled")));
      assertThatThrownBy(() -> write(file, "twelve bytes"))
          .isInstanceOf(DeliverException.class)
          .hasMessage(target() + " cannot be written: the system says \"cable pulled\".");
      assertThat(target()).hasContent("old");
      assertThat(names(folder)).containsExactly("print.tif");
    }
  }

  @Test
  void anInterruptIsOneToo() throws IOException {
    SafeFile file = SafeFile.open(target());
    Thread.currentThread().interrupt();
    try {
      assertThatThrownBy(() -> write(file, "x")).hasMessageContaining("the work was interrupted.");
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
    assertThat(names(folder)).isEmpty();
  }
}
