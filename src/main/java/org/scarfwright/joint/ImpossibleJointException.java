package org.scarfwright.joint;

import java.util.List;
import java.util.stream.Collectors;

/** A joint that has no such geometry. Carries every reason, each with the field and the value it is about. */
public class ImpossibleJointException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final transient List<JointRefusal> refusals;

    public ImpossibleJointException(List<JointRefusal> refusals) {
        super(refusals.stream().map(r -> r.field() + " " + r.reason() + ".").collect(Collectors.joining(" ")));
        this.refusals = List.copyOf(refusals);
    }

    /** Never empty. */
    public List<JointRefusal> refusals() {
        return refusals;
    }
}
