package org.scarfwright.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.google.ortools.Loader;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.lang.ArchRule;
import java.sql.Connection;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.NullMarked;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.modulith.ApplicationModule;
import org.springframework.stereotype.Controller;
import org.springframework.stereotype.Repository;
import org.springframework.web.bind.annotation.ControllerAdvice;

/** The rules themselves, so that the program and the planted violators are judged by the same ones. */
final class Rules {
    private static final Set<String> CLOCK_READERS = Set.of("now", "currentTimeMillis");

    private static final String SOLVER = Loader.class.getPackageName();

    private Rules() {}

    /**
     * A pure package computes: it knows Java, null marks and the packages named, and nothing of the web, the database or
     * the framework.
     */
    static ArchRule pure(Package room, Package... known) {
        List<String> allowed = new ArrayList<>(List.of("java..", NullMarked.class.getPackageName()));
        allowed.add(room.getName());
        for (Package other : known) {
            allowed.add(other.getName());
        }
        DescribedPredicate<JavaClass> fine = resideInAnyPackage(allowed.toArray(String[]::new))
                .and(DescribedPredicate.not(resideInAnyPackage("java.sql..", "java.net..")))
                .or(describe(
                        "the module mark",
                        c -> c.isEquivalentTo(ApplicationModule.class)
                                || c.getName().startsWith(ApplicationModule.class.getName())))
                .or(describe(
                        "a primitive or an array of them",
                        c -> c.getBaseComponentType().isPrimitive()));
        return classes().that().resideInAPackage(room.getName()).should().onlyDependOnClassesThat(fine);
    }

    /** Top-level classes that know the native solver: one adapter behind each port, and no other. */
    static Set<String> knowTheSolver(JavaClasses classes) {
        return classes.stream()
                .filter(c -> c.getDirectDependenciesFromSelf().stream()
                        .anyMatch(d -> d.getTargetClass().getPackageName().startsWith(SOLVER)))
                .map(c -> c.getName().replaceFirst("\\$.*", ""))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** What answers requests or reads rows is nobody else's business. */
    static ArchRule hidden() {
        DescribedPredicate<JavaClass> readsRows = describe(
                "read rows",
                c -> c.getDirectDependenciesFromSelf().stream()
                        .map(d -> d.getTargetClass().getPackageName())
                        .anyMatch(p -> p.startsWith(JdbcClient.class.getPackageName())
                                || p.equals(Connection.class.getPackageName())));
        DescribedPredicate<JavaClass> answer = describe(
                "answer requests",
                c -> c.isMetaAnnotatedWith(Controller.class)
                        || c.isMetaAnnotatedWith(ControllerAdvice.class)
                        || c.isMetaAnnotatedWith(Repository.class));
        return classes().that(readsRows.or(answer)).should().notBePublic();
    }

    /** Time comes from the one injected clock, so that a test can say what day it is. */
    static ArchRule clockIsInjected(Class<?> theOneThatMakesIt) {
        DescribedPredicate<JavaMethodCall> readsTheMachinesClock = describe("the machine's clock", call -> {
            boolean noClockGiven =
                    call.getTarget().getRawParameterTypes().stream().noneMatch(p -> p.isEquivalentTo(Clock.class));
            String owner = call.getTargetOwner().getPackageName();
            boolean aboutTime = owner.equals(Clock.class.getPackageName())
                    || call.getTargetOwner().isEquivalentTo(System.class);
            boolean makesAClock = call.getTargetOwner().isEquivalentTo(Clock.class)
                    && call.getName().startsWith("system");
            return aboutTime && noClockGiven && (CLOCK_READERS.contains(call.getName()) || makesAClock);
        });
        return noClasses()
                .that(DescribedPredicate.not(belongToAnyOf(theOneThatMakesIt)))
                .should()
                .callMethodWhere(readsTheMachinesClock)
                .orShould()
                .callConstructor(Date.class);
    }

    /** A package is named after what it is about. */
    static ArchRule noCatchAllPackage() {
        return noClasses().should().resideInAnyPackage("..util..", "..utils..", "..common..", "..helper..", "..misc..");
    }
}
