package org.scarfwright.necks.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** Strings on the joint's page and for programs. Pulls: two strings of an open university physics text. */
@OnH2
@SuppressWarnings("NullAway.Init")
class StringsWebTest {
    private static final String TWO = "E4 0.309; E2 5.78";

    @Autowired
    MockMvc mvc;

    @Test
    void answersThePullsOfThePhysicsText() throws Exception {
        mvc.perform(get("/api/strings").param("angle", "10").param("strings", TWO))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.strings", hasSize(2)))
                .andExpect(jsonPath("$.strings[0].tensionN").value(56.39))
                .andExpect(jsonPath("$.strings[1].tensionN").value(65.93))
                .andExpect(jsonPath("$.tensionN").value(122.32))
                .andExpect(jsonPath("$.slope").value(5.671))
                .andExpect(jsonPath(
                        "$.notes",
                        hasItem(containsString("How much of the strength its glue line keeps is not printed"))));
    }

    @Test
    void comparesWithAOnePieceHeadOfTheChosenWood() throws Exception {
        // Hard maple 15 800 psi is 108.9 MPa; at 1 in 5.67 Hankinson's formula with 0.040 and 0.045 leaves 58.0 and
        // 61.0 %.
        mvc.perform(get("/api/strings").param("angle", "10").param("strings", TWO))
                .andExpect(jsonPath("$.keptLowestPercent").value(58.0))
                .andExpect(jsonPath("$.keptHighestPercent").value(61.0))
                .andExpect(jsonPath("$.keptLowestMpa").value(63.2))
                .andExpect(jsonPath("$.keptHighestMpa").value(66.4));
        mvc.perform(get("/api/strings")
                        .param("angle", "10")
                        .param("strings", TWO)
                        .param("stringsWood", "wenge"))
                .andExpect(jsonPath("$.keptLowestMpa").value((Object) null))
                .andExpect(jsonPath("$.notes", hasItem(containsString("its bending strength is not known"))));
        mvc.perform(get("/api/strings")
                        .param("angle", "10")
                        .param("strings", TWO)
                        .param("stringsWood", ""))
                .andExpect(jsonPath("$.notes", hasSize(5)));
    }

    @Test
    void saysThatAStringDoesNotPress() throws Exception {
        mvc.perform(get("/api/strings")
                        .param("angle", "3")
                        .param("strings", TWO)
                        .param("nutHeight", "0")
                        .param("postHeight", "30"))
                .andExpect(jsonPath("$.downforceN").value(0.0))
                .andExpect(jsonPath("$.notes", hasItem(containsString("the string does not press on the nut"))));
    }

    @Test
    void refusesWithAPointerEach() throws Exception {
        mvc.perform(get("/api/strings"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(2)));
        refused("strings", "E4", "have “E4” as string 1; write its pitch and its mass");
        refused("strings", "E4 0.309\nH2 5", "have a wrong pitch as string 2: “H2” is no pitch");
        refused("strings", "E4 0.001", "have 0.001 g/m as mass of string 1");
        refused("strings", "E4 201", "have 201 g/m as mass of string 1");
        refused("strings", "E4 1\n".repeat(25), "are more than 24");
        refused("strings", ";\n;", "name no string");
        refused("strings", "x".repeat(100_000), "as string 1; write its pitch");
        refused("scale", "3 km", "is 3 km; it lies between 100 and 2000 mm");
        refused("nutHeight", "41", "is 41; it lies between 0 and 40 mm");
        refused("postDistance", "25 38", "can be read two ways");
        refused("sectionThickness", "0", "is 0; it lies between 3 and 100 mm");
        refused("stringsWood", "balsa", "“balsa” is no wood the shop knows");
        refused("angle", "90", "a tilt lies between 0° and 90°");
        refused("angle", "0", "a tilt lies between 0° and 90°");
        refused("angle", "steep", "is not a number");
    }

    private void refused(String name, String value, String message) throws Exception {
        var request = get("/api/strings").param(name, value);
        if (!name.equals("angle")) {
            request.param("angle", "10");
        }
        if (!name.equals("strings")) {
            request.param("strings", TWO);
        }
        mvc.perform(request)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(1)))
                .andExpect(jsonPath("$.errors[0].pointer").value("/" + name))
                .andExpect(jsonPath("$.errors[0].message", containsString(message)));
    }

    private String page(String address) throws Exception {
        return mvc.perform(get(address)).andReturn().getResponse().getContentAsString();
    }

    @Test
    void thePageShowsTheStringsOnlyWhereTheyAreAskedFor() throws Exception {
        assertThat(page("/joint"))
                .contains("name=\"strings\"")
                .doesNotContain("Strings at the nut")
                .contains("in Hard maple (sugar) at 8 %: about");
        assertThat(page("/joint?angle=10&strings=" + TWO))
                .contains("Strings at the nut", "56.39", "65.93", "122.3", "href=\"/science#strings-tension\"")
                .doesNotContain("..<");
        assertThat(page("/joint?angle=10&strings=E4"))
                .contains("have “E4” as string 1")
                .doesNotContain("Strings at the nut, a table");
    }

    /** What the description promises is what is refused: a tenth above the most. */
    @ParameterizedTest
    @CsvSource({
        "scale, 100, 2000",
        "nutHeight, 0, 40",
        "postHeight, 0, 60",
        "postDistance, 5, 500",
        "sectionWidth, 5, 300",
        "sectionThickness, 3, 100"
    })
    void saysInTheDescriptionWhatALengthMayBe(String name, String least, String most) throws Exception {
        String schema = "$.paths['/api/strings'].get.parameters[?(@.name == '" + name + "')].schema";
        mvc.perform(get("/api/openapi"))
                .andExpect(jsonPath(schema + ".minimum", contains(Integer.parseInt(least))))
                .andExpect(jsonPath(schema + ".maximum", contains(Integer.parseInt(most))));
        mvc.perform(get("/api/strings")
                        .param("angle", "10")
                        .param("strings", TWO)
                        .param(name, most + ".1"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/" + name));
    }
}
