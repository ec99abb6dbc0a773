package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.scarfwright.ScarfwrightApplication;
import org.scarfwright.database.FreshHome;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The real program, started as from a terminal, because a refusal must reach a person and not a log reader. */
@ExtendWith(OutputCaptureExtension.class)
class StartupTest {
    private final Path home = FreshHome.create();

    @Test
    void refusesAnUnsafeAddressBeforeItOpensTheDatabase(CapturedOutput output) {
        assertThatThrownBy(() -> start("--spring.datasource.url=jdbc:h2:file:" + home + "/shop;MODE=PostgreSQL"))
                .hasRootCauseInstanceOf(StartRefusedException.class);
        assertThat(home).isEmptyDirectory();
        assertThat(output.getAll())
                .contains("has no WRITE_DELAY=0: work the program already confirmed could be lost")
                .doesNotContain("\tat org.");
    }

    @Test
    void saysWhereItIsReadyAndWritesEveryCommitAtOnce(CapturedOutput output) {
        try (ConfigurableApplicationContext program = start()) {
            List<String> delays = program.getBean(JdbcClient.class)
                    .sql("select setting_value from information_schema.settings where setting_name = 'WRITE_DELAY'")
                    .query(String.class)
                    .list();
            assertThat(delays).isNotEmpty().containsOnly("0");
            assertThat(output.getAll()).containsPattern("Scarfwright is ready: http://127\\.0\\.0\\.1:\\d+");
        }
    }

    private ConfigurableApplicationContext start(String... more) {
        String[] all = new String[more.length + 2];
        all[0] = "--scarfwright.home=" + home;
        all[1] = "--server.port=0";
        System.arraycopy(more, 0, all, 2, more.length);
        return SpringApplication.run(ScarfwrightApplication.class, all);
    }
}
