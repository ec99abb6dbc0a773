package org.scarfwright.necks.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.net.URI;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** What a person sees on the joint calculator. The figures are those of the worked example. */
@OnH2
class JointPageTest {
    private static final Pattern ID = Pattern.compile(" id=\"([^\"]+)\"");

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Test
    void opensWithTheWorkedExampleBothWays() throws Exception {
        String page = page("/joint", 200);

        assertThat(page)
                .contains("457.0 mm", "570.4 mm", "370.6 mm", "484.0 mm", "51.8 cm²", "two of 9.0 mm", "no seam");
        assertThat(page).contains("+27.0 mm", "1 : 5.67", "5.76. The Wood Handbook", "0.75 mm", "1.01 mm");
        assertThat(page)
                .contains("Underlaid scarf joint at 10°, from the side", "Overlaid scarf joint at 10°, from the side");
    }

    @Test
    void drawingsCarryTheirNumbersForThoseWhoCannotSeeThem() throws Exception {
        assertThat(page("/joint", 200))
                .contains("<svg role=\"img\"", "aria-labelledby=\"underlaid-side-title underlaid-side-desc\"")
                .contains("Neck piece 20.0 mm thick, 457.0 mm along its front and 570.4 mm along its back.")
                .contains("The seam crosses the head’s front face 115.2 mm from the nut.");
    }

    @Test
    void usesEveryIdOnce() throws Exception {
        assertThat(ID.matcher(page("/joint", 200)).results().map((MatchResult r) -> r.group(1)))
                .hasSizeGreaterThan(10)
                .doesNotHaveDuplicates();
    }

    @Test
    void aLinkMayCarryOneFigureAlone() throws Exception {
        assertThat(page("/joint?angle=13&neckThickness=25.4", 200))
                .contains("567.0 mm", "value=\"25.4\"", "value=\"457 mm\"");
    }

    @Test
    void keepsWhatWasTypedAndTellsEveryErrorBesideItsField() throws Exception {
        String page = page("/joint?angle=ninety&headLength=1,234&neckWidth=", 422);

        assertThat(page)
                .contains("value=\"ninety\"", "value=\"1,234\"", "id=\"angle-error\"", "id=\"headLength-error\"");
        assertThat(page).contains("“1,234” can be read two ways; write 1234 or 1.234.", "Neck width is empty");
        assertThat(page).doesNotContain("<svg role=\"img\"");
    }

    @Test
    void tellsWhyOneArrangementCannotBeAndDrawsTheOther() throws Exception {
        String page = page("/joint?headLength=110", 200);

        assertThat(page)
                .contains("would fall off the tip", "overlaid-side-title")
                .doesNotContain("underlaid-side-title");
    }

    @Test
    void showsTheCautionAtTheSawsAndNoEfficiency() throws Exception {
        assertThat(page("/joint", 200))
                .contains("Clamp the piece", "test cut in scrap", "The machine’s manual, local rules")
                .contains("No efficiency of the joint is printed here");
    }

    @Test
    void tellsWhatASawCannotDo() throws Exception {
        assertThat(page("/joint?neckWidth=400&headWidth=400", 200)).contains("but the piece on edge is 400 mm wide");
    }

    @Test
    void escapesWhatWasTyped() throws Exception {
        assertThat(page("/joint?angle=%3Cscript%3Ealert(1)%3C/script%3E", 422)).doesNotContain("<script>alert");
    }

    private String page(String address, int status) throws Exception {
        return mvc.perform(get(URI.create(address)))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
