package planted.pure;

import org.springframework.stereotype.Component;

/** A formula that became a part of the framework. */
@Component
public class PureNoMore {}
