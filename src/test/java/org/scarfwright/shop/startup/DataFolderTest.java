package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    Path temp;

    @Test
    void makesTheFolderAndTheOnesAboveIt() {
        Path wanted = temp.resolve("shop/data");
        assertThat(DataFolder.prepare(wanted.toString())).isEqualTo(wanted).isDirectory();
    }

    @Test
    void aNewFolderIsReadableByItsOwnerOnly() throws IOException {
        Assumptions.assumeTrue(
                temp.getFileSystem().supportedFileAttributeViews().contains("posix"));
        Path made = DataFolder.prepare(temp.resolve("private").toString());
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(made)))
                .isEqualTo("rwx------");
    }

    @Test
    void leavesAFolderThatIsThereAsItIs() throws IOException {
        Path there = Files.createDirectory(temp.resolve("there"));
        Files.writeString(there.resolve("kept"), "kept");
        DataFolder.prepare(there.toString());
        assertThat(there.resolve("kept")).hasContent("kept");
    }

    @Test
    void refusesAFileAndSaysSo() throws IOException {
        Path file = Files.writeString(temp.resolve("file"), "");
        assertThatThrownBy(() -> DataFolder.prepare(file.toString()))
                .isInstanceOf(StartRefusedException.class)
                .hasMessage("The data folder “" + file + "” is a file, not a folder.");
    }

    @Test
    void refusesAFolderBelowAFile() throws IOException {
        Path file = Files.writeString(temp.resolve("file"), "");
        assertThatThrownBy(() -> DataFolder.prepare(file.resolve("below").toString()))
                .isInstanceOf(StartRefusedException.class)
                .hasMessageContaining("cannot be made");
    }

    @Test
    void refusesAnEmptyName() {
        assertThatThrownBy(() -> DataFolder.prepare(" ")).hasMessageContaining("is empty");
    }
}
