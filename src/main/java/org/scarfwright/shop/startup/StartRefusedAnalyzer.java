package org.scarfwright.shop.startup;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Prints a refusal as two sentences instead of a stack trace. */
class StartRefusedAnalyzer extends AbstractFailureAnalyzer<StartRefusedException> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, StartRefusedException cause) {
        return new FailureAnalysis(String.valueOf(cause.getMessage()), cause.remedy(), cause);
    }
}
