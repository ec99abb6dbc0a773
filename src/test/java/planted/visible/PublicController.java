package planted.visible;

import org.springframework.web.bind.annotation.RestController;

/** A controller anybody can call. */
@RestController
public class PublicController {}
