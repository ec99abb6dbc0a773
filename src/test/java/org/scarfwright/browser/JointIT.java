package org.scarfwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The joint page as a person uses it: live while they type, and by its button where scripts are off. */
class JointIT {

    @Test
    void drawsAnewWhileAFigureIsTyped() {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            browser.go("/");
            browser.button("Load the demo shop");
            browser.go("/joint");
            assertThat(browser.text()).contains("1 : 5.67");

            browser.fill("Tilt angle (°)", "13");
            browser.waitFor("/joint\\?.*angle=13&.*");

            assertThat(browser.text()).contains("1 : 4.33").doesNotContain("1 : 5.67");
            assertThat(browser.value("Tilt angle (°)")).isEqualTo("13");
            assertThat(browser.links()).anyMatch(link -> link.startsWith("/designs/new?angle=13&"));

            browser.fill("Tilt angle (°)", "ninety");
            browser.waitFor("/joint\\?.*angle=ninety&.*");
            assertThat(browser.text()).contains("“ninety” is not a number");
            assertThat(browser.value("Tilt angle (°)")).isEqualTo("ninety");
        }
    }

    @Test
    void drawsByItsButtonWithoutScripts() {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            browser.scripts(false);
            browser.go("/");
            browser.button("Load the demo shop");
            browser.go("/joint?tuners=118");

            browser.fill("Tilt angle (°)", "13");
            browser.fill("Tuner holes (mm)", "30, 62");
            browser.button("Draw");

            assertThat(browser.text()).contains("1 : 4.33", "No tuner hole comes within 5.0 mm of the seam");
            assertThat(browser.value("Tuner holes (mm)")).isEqualTo("30, 62");
            browser.link("Save as a design");
            assertThat(browser.value("Neck length (mm)")).isEqualTo("457 mm");
            assertThat(browser.value("Tilt angle (°)")).isEqualTo("13");
        }
    }
}
