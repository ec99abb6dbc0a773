package org.scarfwright.durability;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.FreshHome;

class SecondStartIT {
    @Test
    void aSecondStartOnTheSameFolderSaysSoInASentenceAndLeavesTheFirstAlone() throws Exception {
        Path home = FreshHome.create();
        try (RunningProgram first = RunningProgram.start(home)) {
            Path log = Files.createTempFile(home.getParent(), "second-", ".log");
            Process second = RunningProgram.launch(home, log);
            assertThat(second.waitFor(2, TimeUnit.MINUTES)).isTrue();
            assertThat(second.exitValue()).isNotZero();
            assertThat(Files.readString(log))
                    .contains("Scarfwright is already running on this data folder")
                    .doesNotContain("\tat org.");
            assertThat(first.said()).contains("Scarfwright is ready: http://127.0.0.1:");
        }
    }
}
