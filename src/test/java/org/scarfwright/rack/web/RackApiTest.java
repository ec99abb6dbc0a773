package org.scarfwright.rack.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.database.OnH2;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

/** What programs send to the rack and what they are told. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class RackApiTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    Rack rack;

    private ResultActions add(String json) throws Exception {
        return mvc.perform(
                post("/api/rack/pieces").contentType(MediaType.APPLICATION_JSON).content(json));
    }

    private ResultActions importFile(String csv, boolean preview) throws Exception {
        return mvc.perform(post("/api/rack/import")
                .param("preview", String.valueOf(preview))
                .contentType("text/csv")
                .content(csv.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void addsAPieceAndSaysWhereItIs() throws Exception {
        add("""
            {"code": "api-1", "wood": "maple_sugar", "length": "25 3/8 in", "widthMm": 70.5, "thicknessMm": "22",
             "moisture": 8.25, "bowMm": 1, "setAside": true,
             "defects": [{"kind": "screw_hole", "fromLengthMm": 10, "toLengthMm": 14}]}
            """)
                .andExpect(status().isCreated())
                .andExpect(header().string("Location", "/api/rack/pieces/API-1"))
                .andExpect(header().string("ETag", "\"0\""))
                .andExpect(jsonPath("$.code").value("API-1"))
                .andExpect(jsonPath("$.lengthMm").value(644.525))
                .andExpect(jsonPath("$.length").value("25 3/8 in"))
                .andExpect(jsonPath("$.state").value("on_rack"))
                .andExpect(jsonPath("$.moisture").value(8.25))
                .andExpect(jsonPath("$.setAside").value(true))
                .andExpect(jsonPath("$.defects[0].structural").value(true))
                .andExpect(jsonPath("$.defects[0].toWidthMm").value(70.5))
                .andExpect(jsonPath("$.zones", hasSize(2)));
    }

    @Test
    void laminationIsAList() throws Exception {
        add("""
            {"code": "api-2", "lengthMm": 640, "widthMm": 75, "thicknessMm": 22, "lamination": [
             {"wood": "maple_sugar", "widthMm": 34, "grain": "quarter"}, {"wood": "Black walnut", "widthMm": 7},
             {"wood": "maple_sugar", "widthMm": "34 mm"}]}
            """)
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.wood").isEmpty())
                .andExpect(jsonPath("$.lamination[1].wood").value("walnut_black"));
        add("""
            {"lengthMm": 640, "widthMm": 75, "thicknessMm": 22, "lamination": [
             {"wood": "maple_sugar", "widthMm": 34}, {"wood": "black walnt", "widthMm": 41}]}
            """)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/lamination/1"))
                .andExpect(jsonPath("$.errors[0].message", containsString("did you mean Black walnut")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
            {"wood":"maple_sugar","widthMm":70,"thicknessMm":22}                     | /lengthMm    | is missing
            {"wood":"maple_sugar","lengthMm":0,"widthMm":70,"thicknessMm":22}        | /lengthMm    | less than 1 mm
            {"wood":"maple_sugar","lengthMm":-5,"widthMm":70,"thicknessMm":22}       | /lengthMm    | is negative
            {"wood":"maple_sugar","length":"3 km","widthMm":70,"thicknessMm":22}     | /length      | more than 6000 mm
            {"wood":"maple_sugar","lengthMm":3000000,"widthMm":70,"thicknessMm":22}  | /lengthMm    | more than 6000 mm
            {"wood":"maple_sugar","lengthMm":1e999999,"widthMm":70,"thicknessMm":22} | /lengthMm    | “Infinity” is not a length
            {"wood":"maple_sugar","lengthMm":true,"widthMm":70,"thicknessMm":22}     | /lengthMm    | wrong kind
            {"wood":"maple_sugar","lengthMm":640,"length":"650","widthMm":70,"thicknessMm":22} | /lengthMm | send one
            {"wood":"mapel","lengthMm":640,"widthMm":70,"thicknessMm":22}            | /wood        | no wood the shop
            {"lengthMm":640,"widthMm":70,"thicknessMm":22}                           | /wood        | is missing
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"lenght":1} | /lenght | did you mean length
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"code":"new"} | /code | uses itself
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"code":"a b"} | /code | digits or hyphens
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"moisture":-1} | /moisture | negative
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"defects":"knot 600-700"} | /defects | outside
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"defects":[7]} | /defects/0 | send for example
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"trimLeftMm":640} | /trimLeftMm | nothing
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"warpOn":"2999-01-01"} | /warpOn | to come
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"note":"a\\u0000b"} | /note | cannot be printed
            {"wood":"maple_sugar","lengthMm":640,"widthMm":70,"thicknessMm":22,"note":{}} | /note | wrong kind
            """)
    void refusesWhatIsNotRightAtItsKey(String json, String pointer, String message) throws Exception {
        add(json)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().contentTypeCompatibleWith(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.errors[*].pointer", hasItem(pointer)))
                .andExpect(jsonPath("$.errors[*].message", hasItem(containsString(message))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[1]", "\"x\"", "null", "{\"wood\":}"})
    void refusesABodyThatIsNoPiece(String json) throws Exception {
        int status = add(json).andReturn().getResponse().getStatus();
        assertThat(status).isIn(400, 422);
    }

    @Test
    void everythingThatIsWrongIsToldAtOnceEvenBesideADefectThatCannotBeRead() throws Exception {
        add("""
            {"wood": "mapel_sugar", "lengthMm": 640, "widthMm": {}, "thicknessMm": 0, "colour": "red",
             "defects": [{"kind": "knot", "fromLengthMm": 100, "toLengthMm": 120}, {"kind": "knot"},
                         {"kind": "knot", "fromLengthMm": 600, "toLengthMm": 700}, {"kind": "bruise",
                         "fromLengthMm": 1, "toLengthMm": 2}]}
            """)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath(
                        "$.errors[*].pointer",
                        containsInAnyOrder(
                                "/colour", "/widthMm", "/defects/1", "/wood", "/thicknessMm", "/defects/3")));
        add("""
            {"wood": "maple_sugar", "lengthMm": 640, "widthMm": 70, "thicknessMm": 22,
             "defects": [{"kind": "knot"}, {"kind": "knot", "fromLengthMm": 600, "toLengthMm": 700}]}
            """)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[*].pointer", containsInAnyOrder("/defects/0", "/defects/1")))
                .andExpect(jsonPath("$.errors[1].message", containsString("lies outside the piece")));
        add("""
            {"lengthMm": 640, "widthMm": 70, "thicknessMm": 0,
             "lamination": [{"wood": "maple_sugar"}, {"wood": "maple_sugar", "widthMm": 70}]}
            """)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[*].pointer", containsInAnyOrder("/lamination/0", "/thicknessMm")));
    }

    @Test
    void measuresAgainAndTellsWhatChanged() throws Exception {
        add(
                "{\"code\":\"api-5\",\"wood\":\"maple_sugar\",\"lengthMm\":600,\"widthMm\":80,\"thicknessMm\":22,"
                        + "\"bowMm\":1,\"twistMm\":2,\"moisture\":9.5,\"warpOn\":\"2026-03-02\",\"moistureOn\":\"2026-03-02\"}");
        measure("API-5", "\"0\"", """
            {"bow": "1/8 in", "middleBowMm": 1, "stickGapMm": 6, "stickLengthMm": 240, "stickDistanceMm": 500,
             "moisture": 8, "measuredOn": "2026-07-01"}
            """)
                .andExpect(status().isCreated())
                .andExpect(header().string("ETag", "\"1\""))
                .andExpect(jsonPath("$.bowMm").value(3.175))
                .andExpect(jsonPath("$.middleBowMm").value(1.0))
                .andExpect(jsonPath("$.twistMm").value(2.4)); // 6 · 80/240 · 600/500
        mvc.perform(get("/api/rack/pieces/api-5/readings"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$", hasSize(2)))
                .andExpect(jsonPath("$[0].day").value("2026-03-02"))
                .andExpect(jsonPath("$[0].change").isEmpty())
                .andExpect(jsonPath("$[1].day").value("2026-07-01"))
                .andExpect(jsonPath("$[1].moistureChange").value(-1.5))
                .andExpect(jsonPath("$[1].change.bowMm").value(2.175))
                .andExpect(jsonPath("$[1].change.twistMm").value(0.4));
        measure("API-5", "\"0\"", "{\"bowMm\": 2}").andExpect(status().isPreconditionFailed());
        measure("API-5", null, "{\"bowMm\": 2}").andExpect(status().isPreconditionRequired());
        measure("NONE", "\"0\"", "{\"bowMm\": 2}").andExpect(status().isNotFound());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {}                                              | /bowMm            | write at least one
            {"middleBowMm":3,"bowMm":2}                     | /middleBowMm      | more than the bow over the whole piece, 2 mm
            {"middleCrookMm":1}                             | /middleCrookMm    | more than the crook over the whole piece, 0 mm
            {"stickGapMm":3}                                | /stickLengthMm    | write how long each stick is
            {"stickGapMm":90,"stickLengthMm":300}           | /stickGapMm       | more than a quarter of the sticks' length, 300 mm
            {"stickGapMm":30,"stickLengthMm":300,"stickDistanceMm":100} | /stickGapMm | comes to a twist of 48 mm, more than a quarter
            {"stickGapMm":3,"stickLengthMm":300,"stickDistanceMm":700}  | /stickDistanceMm | more than the length of the piece
            {"stickGapMm":3,"stickLengthMm":300,"stickDistanceMm":0}    | /stickDistanceMm | must be more than 0
            {"stickGapMm":3,"stickLengthMm":300,"twistMm":1} | /stickGapMm      | write one of the two
            {"stickLengthMm":300,"bowMm":1}                 | /stickGapMm       | is missing
            {"stickDistanceMm":300,"bowMm":1}               | /stickGapMm       | is missing
            {"middleStickGapMm":3,"middleTwistMm":1}        | /middleStickGapMm | write one of the two
            {"middleTwistMm":21}                            | /middleTwistMm    | more than a quarter of the width
            {"bowMm":1,"warpOn":"2999-01-01"}               | /warpOn           | is still to come
            {"bowMm":1,"measuredOn":"yesterday"}            | /measuredOn       | is not a day
            {"bowMm":1,"lengthMm":600}                      | /lengthMm         | is not known here
            {"bowMm":[1]}                                   | /bowMm            | wrong kind
            """)
    void refusesReadingsThatCannotBe(String json, String pointer, String message) throws Exception {
        add("{\"code\":\"api-6\",\"wood\":\"maple_sugar\",\"lengthMm\":600,\"widthMm\":80,\"thicknessMm\":22}");
        measure("API-6", "\"0\"", json)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[*].pointer", hasItem(pointer)))
                .andExpect(jsonPath("$.errors[*].message", hasItem(containsString(message))));
        mvc.perform(get("/api/rack/pieces/API-6/readings")).andExpect(jsonPath("$", hasSize(0)));
    }

    private ResultActions measure(String code, @Nullable String ifMatch, String json) throws Exception {
        MockHttpServletRequestBuilder request = post("/api/rack/pieces/" + code + "/readings")
                .contentType(MediaType.APPLICATION_JSON)
                .content(json);
        return mvc.perform(ifMatch == null ? request : request.header("If-Match", ifMatch));
    }

    @Test
    void tellsWhatAPieceCanStillGive() throws Exception {
        add("{\"code\":\"api-7\",\"wood\":\"maple_sugar\",\"lengthMm\":700,\"widthMm\":80,\"thicknessMm\":25,"
                + "\"bowMm\":6,\"cupMm\":1.6,\"moisture\":8}");
        mvc.perform(get("/api/rack/pieces/API-7/usable").param("thicknessMm", "20"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.planingPerFaceMm").value(1.0))
                .andExpect(jsonPath("$.straightEnoughMm").value(285.773))
                .andExpect(jsonPath("$.neck.lengthMm").value(285.773))
                .andExpect(jsonPath("$.neck.limit").value("straightness"))
                .andExpect(jsonPath("$.head.limit").value("thickness"))
                .andExpect(jsonPath("$.head.lengthMm").value(338.132)) // 25 − 2 − 1.6 − 6·(l/700)² = 20
                .andExpect(jsonPath("$.parts[-1].lengthMm").value(700.0))
                .andExpect(jsonPath("$.parts[-1].thicknessMm").value(15.4))
                .andExpect(jsonPath("$.parts[-1].outOfStraightMm").value(6.0))
                .andExpect(jsonPath("$.designs", hasSize(0)))
                .andExpect(jsonPath("$.readiness").value("ready"));
        mvc.perform(get("/api/rack/pieces/API-7/usable").param("widthMm", "40"))
                .andExpect(jsonPath("$.parts[-1].thicknessMm").value(16.6))
                .andExpect(jsonPath("$.neck").isEmpty());
        mvc.perform(get("/api/rack/pieces/API-7/usable")
                        .param("thicknessMm", "0")
                        .param("widthMm", "81"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[*].pointer", containsInAnyOrder("/thicknessMm", "/widthMm")));
        mvc.perform(get("/api/rack/pieces/API-7/uses"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$", hasSize(0)));
        mvc.perform(get("/api/rack/pieces/NONE/usable")).andExpect(status().isNotFound());
        mvc.perform(get("/api/rack/pieces").param("can", "violin"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].message").value("Can be “violin” is not one of neck, head."));
        mvc.perform(get("/api/rack/pieces").param("page", "1.5"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(
                        jsonPath("$.errors[0].message").value("Page “1.5” is not a whole number from 1 to 1000000."));
        mvc.perform(get("/api/rack/pieces").param("can", "neck").param("q", "api-7"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.total").value(0));
    }

    @Test
    void whatWasReadCanBeSentBackChanged() throws Exception {
        String read = add("{\"code\":\"api-3\",\"wood\":\"maple_sugar\",\"length\":\"25 3/8 in\",\"widthMm\":70,"
                        + "\"thicknessMm\":22,\"bow\":\"1/16 in\",\"defects\":\"knot 10-20 x 5-9; stain 30-40\"}")
                .andReturn()
                .getResponse()
                .getContentAsString();
        mvc.perform(put("/api/rack/pieces/API-3")
                        .header("If-Match", "\"0\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(read))
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"0\""))
                .andExpect(content().json(read));
        mvc.perform(put("/api/rack/pieces/api-3")
                        .header("If-Match", "\"0\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(read.replace("\"note\":\"\"", "\"note\":\"looked at\"")))
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"1\""))
                .andExpect(jsonPath("$.note").value("looked at"))
                .andExpect(jsonPath("$.length").value("25 3/8 in"));
    }

    @Test
    void editNeedsTheVersionItSaw() throws Exception {
        String json =
                "{\"code\":\"api-4\",\"wood\":\"maple_sugar\",\"lengthMm\":640,\"widthMm\":70,\"thicknessMm\":22}";
        add(json);
        mvc.perform(put("/api/rack/pieces/API-4")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(json))
                .andExpect(status().isPreconditionRequired());
        mvc.perform(put("/api/rack/pieces/API-4")
                        .header("If-Match", "\"7\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(json))
                .andExpect(status().isPreconditionFailed());
        rack.reserve(3, List.of(new Rack.PieceStamp("API-4", 0)));
        mvc.perform(get("/api/rack/pieces/API-4")).andExpect(header().string("ETag", "\"0-reserved\""));
        mvc.perform(put("/api/rack/pieces/API-4")
                        .header("If-Match", "\"0\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(json))
                .andExpect(status().isPreconditionFailed());
        mvc.perform(put("/api/rack/pieces/API-4")
                        .header("If-Match", "\"0-reserved\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(json.replace("640", "630")))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.detail", containsString("Undo the plan that holds it first.")));
    }

    @Test
    void unknownPieceIsNotFound() throws Exception {
        mvc.perform(get("/api/rack/pieces/NONE"))
                .andExpect(status().isNotFound())
                .andExpect(jsonPath("$.detail").value("There is no piece “NONE”."));
    }

    @Test
    void listIsFilteredAndRefusesWhatItCannotRead() throws Exception {
        add("{\"code\":\"apl-1\",\"wood\":\"wenge\",\"lengthMm\":640,\"widthMm\":70,\"thicknessMm\":22}");
        add("{\"code\":\"apl-2\",\"wood\":\"wenge\",\"lengthMm\":300,\"widthMm\":70,\"thicknessMm\":22}");
        mvc.perform(get("/api/rack/pieces").param("q", "apl-").param("minLengthMm", "25 in"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.total").value(1))
                .andExpect(jsonPath("$.pieces[0].code").value("APL-1"));
        mvc.perform(get("/api/rack/pieces")
                        .param("q", "apl-")
                        .param("sort", "longest")
                        .param("size", "1"))
                .andExpect(jsonPath("$.pages").value(2))
                .andExpect(jsonPath("$.pieces[0].code").value("APL-1"));
        mvc.perform(get("/api/rack/pieces")
                        .param("minWidthMm", "wide")
                        .param("state", "lost")
                        .param("page", "0")
                        .param("size", "9999")
                        .param("wood", "plastic"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[*].field", hasItem("minWidthMm")))
                .andExpect(jsonPath("$.errors", hasSize(5)));
    }

    @Test
    void importAnswersWithEveryBadCellAndTheRest() throws Exception {
        String csv = "code,wood,length,width,thickness\nim-a,maple_sugar,640,70,22\n,maple_sugar,6x0,70,0\n";
        importFile(csv, true)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.preview").value(true));
        importFile(csv, false)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().contentTypeCompatibleWith(MediaType.APPLICATION_PROBLEM_JSON));
        for (boolean preview : new boolean[] {true, false}) {
            importFile(csv, preview)
                    .andExpect(jsonPath("$.errors", hasSize(2)))
                    .andExpect(jsonPath("$.errors[0].pointer").value("/rows/3/length"))
                    .andExpect(jsonPath("$.errors[0].field").value("length"))
                    .andExpect(jsonPath("$.errors[0].value").value("6x0"))
                    .andExpect(jsonPath("$.rows[0].fate").value("new"))
                    .andExpect(jsonPath("$.rows[0].lengthMm").value(640.0))
                    .andExpect(jsonPath("$.rows[1].fate").value("refused"));
        }
        assertThat(rack.find("IM-A")).isEmpty();
    }

    @Test
    void importSavesOnceAndPreviewNever() throws Exception {
        String csv = "code;wood;length;width;thickness\nim-b;maple_sugar;640,5;70;22\n";
        importFile(csv, true)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.preview").value(true))
                .andExpect(jsonPath("$.added").value(1));
        assertThat(rack.find("IM-B")).isEmpty();
        importFile(csv, false)
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.added").value(1));
        importFile(csv, false)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.added").value(0))
                .andExpect(jsonPath("$.unchanged").value(1));
    }

    @Test
    void importRefusesOtherEncodingsAndNothing() throws Exception {
        mvc.perform(post("/api/rack/import")
                        .contentType("text/csv;charset=ISO-8859-1")
                        .content("wood,length,width,thickness\n".getBytes(StandardCharsets.ISO_8859_1)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].message").value("File is sent as ISO-8859-1; send it as UTF-8."));
        importFile("", false)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].message", containsString("is empty")));
        mvc.perform(post("/api/rack/import")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{}"))
                .andExpect(status().isUnsupportedMediaType());
    }
}
