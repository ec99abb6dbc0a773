package org.scarfwright.matching.web;

import java.net.URI;
import java.util.List;
import org.scarfwright.matching.Hands;
import org.scarfwright.necks.IsoWeek;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** What people decided about a week by hand, over the API. */
@RestController
@RequestMapping("/api/weeks/{week}/hands")
class HandsApi {
    private final Hands hands;

    HandsApi(Hands hands) {
        this.hands = hands;
    }

    @GetMapping
    List<HandJson> all(@PathVariable String week) {
        return hands.of(PlansApi.week(week)).stream().map(HandJson::of).toList();
    }

    /** Notes a decision; it holds from the next match on. One that is noted already is answered and not noted twice. */
    @PostMapping
    ResponseEntity<HandJson> add(@PathVariable String week, @RequestBody HandForm form) {
        IsoWeek of = PlansApi.week(week);
        Hands.Kept kept = hands.add(of, form.read());
        return ResponseEntity.created(URI.create("/api/weeks/" + of + "/hands/" + kept.id()))
                .body(HandJson.of(kept));
    }

    /** Takes a decision back. */
    @DeleteMapping("/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void undo(@PathVariable String week, @PathVariable long id) {
        hands.undo(PlansApi.week(week), id);
    }
}
