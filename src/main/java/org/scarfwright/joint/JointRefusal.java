package org.scarfwright.joint;

/**
 * Why a joint cannot be, or should not be.
 *
 * @param field the component of {@link JointInput} to change first, such as headLength
 * @param value what was given there
 * @param reason what is wrong and what would be right; reads on from the field's label, without a full stop
 */
public record JointRefusal(String field, String value, String reason) {}
