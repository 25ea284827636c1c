package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutFolderTest {
  private final FileSystem disk = Jimfs.newFileSystem(Configuration.unix());
  private final Path out = disk.getPath("/job/out");

  @AfterEach
  void close() throws IOException {
    disk.close();
  }

  @Test
  void takesNamesInside() throws IOException {
    assertThat(OutFolder.file(out, "a/b.tif")).isEqualTo(out.resolve("a/b.tif"));
    Files.createDirectories(out.resolve("a"));
    assertThat(OutFolder.file(out, "a/b.tif")).isEqualTo(out.resolve("a/b.tif"));
    assertThat(Files.list(out)).as("asking makes nothing").hasSize(1);
  }

  @Test
  void takesARelativeFolder() {
    assertThat(OutFolder.file(disk.getPath("out"), "b.tif")).isEqualTo(disk.getPath("out/b.tif"));
    assertThat(OutFolder.file(disk.getPath("../out"), "b.tif"))
        .isEqualTo(disk.getPath("../out/b.tif"));
    assertThat(OutFolder.file(disk.getPath("."), "b.tif")).isEqualTo(disk.getPath("b.tif"));
    assertThat(OutFolder.file(disk.getPath(""), "b.tif")).isEqualTo(disk.getPath("b.tif"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"../a.tif", "a/../../b.tif", "/etc/a.tif", "..", ".", "", "a/.."})
  void refusesNamesOutside(String name) {
    assertThatThrownBy(() -> OutFolder.file(out, name))
        .isInstanceOf(DeliverException.class)
        .hasMessage(
            "\"" + name + "\" leads out of the folder /job/out that files are delivered to.");
  }

  @Test
  void refusesALinkThatLeadsOut() throws IOException {
    Files.createDirectories(disk.getPath("/elsewhere"));
    Files.createDirectories(out);
    Files.createSymbolicLink(out.resolve("door"), disk.getPath("/elsewhere"));
    Files.createSymbolicLink(out.resolve("dangling"), disk.getPath("/nowhere"));
    Files.createSymbolicLink(out.resolve("inner"), out.resolve("sub"));
    Files.createDirectories(out.resolve("sub"));
    assertThatThrownBy(() -> OutFolder.file(out, "door/a.tif")).hasMessageContaining("leads out");
    assertThatThrownBy(() -> OutFolder.file(out, "door/x/a.tif")).hasMessageContaining("leads out");
    assertThatThrownBy(() -> OutFolder.file(out, "dangling/a.tif"))
        .hasMessageContaining("leads out");
    assertThat(OutFolder.file(out, "inner/a.tif")).isEqualTo(out.resolve("inner/a.tif"));
  }

  @Test
  void theFolderItselfMayBeALink() throws IOException {
    Files.createDirectories(disk.getPath("/elsewhere"));
    Files.createDirectories(disk.getPath("/job"));
    Files.createSymbolicLink(out, disk.getPath("/elsewhere"));
    assertThat(OutFolder.file(out, "a.tif")).isEqualTo(out.resolve("a.tif"));
  }

  @Test
  void saysWhenTheSystemHasNoSuchName() {
    assertThatThrownBy(() -> OutFolder.file(Path.of("out"), "a\0b"))
        .isInstanceOf(DeliverException.class)
        .hasMessageEndingWith("cannot be a file name on this system.");
  }
}
