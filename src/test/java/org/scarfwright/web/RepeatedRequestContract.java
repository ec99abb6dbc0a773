package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.annotation.Transactional;

/** An act sent twice under one key is done once (the Idempotency-Key header of the IETF HTTP API working group's draft). */
@Transactional
abstract class RepeatedRequestContract {
    private static final String PIECE =
            "{\"code\":\"TWICE\",\"wood\":\"maple_sugar\",\"lengthMm\":640,\"widthMm\":70,\"thicknessMm\":22}";

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    private MockHttpServletResponse send(String key, String body) throws Exception {
        return mvc.perform(post("/api/rack/pieces")
                        .header(RepeatedRequestFilter.HEADER, key)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(body))
                .andReturn()
                .getResponse();
    }

    @Test
    void repeatsTheFirstAnswerAndDoesNothingTwice() throws Exception {
        MockHttpServletResponse first = send("key-1", PIECE);
        MockHttpServletResponse second = send("key-1", PIECE);
        assertThat(first.getStatus()).isEqualTo(201);
        assertThat(second.getStatus()).isEqualTo(201);
        assertThat(second.getContentAsString()).isEqualTo(first.getContentAsString());
        assertThat(second.getHeader("ETag")).isEqualTo(first.getHeader("ETag"));
        assertThat(second.getHeader("Location")).isEqualTo(first.getHeader("Location"));
    }

    @Test
    void refusesAKeyThatWasUsedForAnotherAct() throws Exception {
        assertThat(send("key-2", PIECE).getStatus()).isEqualTo(201);
        assertThat(send("key-2", PIECE.replace("TWICE", "OTHER")).getStatus()).isEqualTo(409);
        assertThat(mvc.perform(get("/api/rack/pieces/OTHER"))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void takesTheCorrectedActUnderTheKeyOfARefusedOne() throws Exception {
        MockHttpServletResponse refused = send("key-3", PIECE.replace("640", "-5"));
        assertThat(refused.getStatus()).isEqualTo(422);
        assertThat(refused.getContentAsString()).contains("/lengthMm");
        assertThat(send("key-3", PIECE).getStatus()).isEqualTo(201);
    }

    @Test
    void refusesAKeyThatIsTooLong() throws Exception {
        assertThat(send("k".repeat(201), PIECE).getStatus()).isEqualTo(400);
    }
}
