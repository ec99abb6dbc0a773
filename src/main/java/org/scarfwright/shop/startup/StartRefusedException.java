package org.scarfwright.shop.startup;

/** The program does not start like this. Carries what is wrong and what to do, for a person at a terminal. */
class StartRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String remedy;

    StartRefusedException(String wrong, String remedy) {
        super(wrong);
        this.remedy = remedy;
    }

    String remedy() {
        return remedy;
    }
}
