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
    void showsEveryOrderOfThinningAndWhatIsSawn() throws Exception {
        assertThat(page("/joint", 200))
                .contains(
                        "From its front, after gluing", "485.8 mm front", "36.5 mm front, 149.9 mm back, 20.0 mm thick")
                .contains("115.2 mm, 86.4 mm when it is thinned");
        assertThat(page("/joint?headStock=30", 200)).contains("Not possible: Head stock is 30 mm, but with 15.0 mm");
    }

    @Test
    void warnsOfTunerHolesNearTheSeam() throws Exception {
        assertThat(page("/joint?tuners=30,%20118", 200))
                .contains(
                        "The tuner hole at 118.0 mm lies 2.8 mm from the seam of an underlaid head, which is 115.2 mm");
        assertThat(page("/joint?tuners=30,%2062", 200)).contains("No tuner hole comes within 5.0 mm of the seam");
        assertThat(page("/joint?tuners=200", 422)).contains("which is not on the head", "value=\"200\"");
    }

    @Test
    void tellsVoluteHeelAndWedgesOnlyWhereTheyAreAsked() throws Exception {
        assertThat(page("/joint?volute=8&heelDepth=95", 200))
                .contains("needs head stock of 23.0 mm, which is 3.0 mm more than the 20.0 mm given")
                .contains("needs a neck piece 28.0 mm thick", "the seam of an underlaid head moves to 161.2 mm")
                .contains(
                        "a block 75.0 mm thick and 100.0 mm long",
                        "4 layers of neck stock",
                        "the last planed to 15.0 mm");
        assertThat(page("/joint?volute=5", 200)).contains("the head stock of 20.0 mm has it");
        assertThat(page("/joint?heelDepth=20", 200)).contains("which the neck piece has by itself");
        assertThat(page("/joint?volute=20", 200)).contains("underlaid, the seam would fall off the tip");
        assertThat(page("/joint", 200)).contains("113.4 mm × 20.0 mm × 60.0 mm").doesNotContain("Volute from");
    }

    @Test
    void setsUpEveryKindOfSaw() throws Exception {
        assertThat(page("/joint", 200))
                .contains("in a square fence jig", "it would have to be set to 80°")
                .contains("Upper guide just above the piece: 83.0 mm over the table")
                .contains("Blade high enough to cut through 78.0 mm", "beside a ramp block of 10°")
                .contains("220.0 mm along the fence, rising to 38.8 mm, its slope 223.4 mm long", "turns it by 0.252°")
                .contains("20.0 mm high for the thicker part")
                .contains("read to 0.5°, so one setting may be off by 0.25°", "0.75 mm underlaid, 1.01 mm overlaid")
                .contains("pieces up to 26.0 mm thick and 90.0 mm wide; through 20.0 mm angles from 7.663° to 45°")
                .contains("113.4 mm is right", "6.1 mm longer", "5.5 mm shorter", "they open at 20°");
        assertThat(page("/joint?neckThickness=200&neckLength=3000&headLength=2000", 200))
                .contains("through 200.0 mm no angle it can be set to");
        assertThat(page("/joint?angle=50", 200)).doesNotContain("Take two scraps");
    }

    @Test
    void savesAsADesignWithEveryFigureAsTyped() throws Exception {
        String page = page("/joint?neckThickness=25.4&headWidth=3%20in&arrangement=overlaid", 200);

        assertThat(page)
                .contains("/designs/new?angle=10&amp;neckThickness=25.4&amp;", "headWidth=3%20in")
                .contains("arrangements=overlaid", "shownUnit=mm");
        String form = page(
                "/designs/new?angle=10&neckThickness=25.4&neckWidth=60%20mm&arrangements=overlaid&shownUnit=mm", 200);
        assertThat(form).contains("value=\"25.4\"", "value=\"60 mm\"");
    }

    @Test
    void anEmptyRackSaysSo() throws Exception {
        assertThat(page("/joint", 200)).contains("The rack is empty.", "579.7 mm × 62.0 mm × 20.0 mm");
    }

    @Test
    void keepsTheHeadsStockOutOfTheWayOfALinkWithAThickHead() throws Exception {
        assertThat(page("/joint?headThickness=22", 200)).doesNotContain("thinner than the head");
    }

    @Test
    void refusesAnArrangementItDoesNotKnow() throws Exception {
        assertThat(page("/joint?arrangement=sideways", 422)).contains("“sideways” is not an arrangement");
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
