package org.scarfwright.ledger;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicLong;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** A data source whose n-th statement fails, counted over everything that is sent to the database, the commit included. */
@TestConfiguration(proxyBeanMethods = false)
class FailingStatements {
    /** Statements that may still pass; below zero all of them may. */
    private static final AtomicLong LEFT = new AtomicLong(-1);

    private static final AtomicLong FAILED = new AtomicLong();

    static void failAfter(long statements) {
        FAILED.set(0);
        LEFT.set(statements);
    }

    /** @return whether one failed since */
    static boolean stop() {
        LEFT.set(-1);
        return FAILED.get() > 0;
    }

    private static void count() throws SQLException {
        if (LEFT.get() < 0) {
            return;
        }
        if (LEFT.getAndDecrement() == 0) {
            // From here on nothing passes, as when the database is gone.
            LEFT.set(0);
            FAILED.incrementAndGet();
            throw new SQLException("The database is gone, says the test.");
        }
    }

    @Bean
    static BeanPostProcessor failing() {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                return bean instanceof DataSource source ? new Failing(source) : bean;
            }
        };
    }

    private static final class Failing extends DelegatingDataSource {
        Failing(DataSource target) {
            super(target);
        }

        @Override
        public Connection getConnection() throws SQLException {
            Connection real = super.getConnection();
            return (Connection) Proxy.newProxyInstance(
                    Connection.class.getClassLoader(),
                    new Class<?>[] {Connection.class},
                    (proxy, method, arguments) -> {
                        if (method.getName().equals("commit")) {
                            count();
                        }
                        Object answer = passOn(real, method, arguments);
                        return answer instanceof Statement statement
                                ? counted(statement, method.getReturnType())
                                : answer;
                    });
        }

        private static Object counted(Statement real, Class<?> kind) {
            return Proxy.newProxyInstance(
                    Statement.class.getClassLoader(), new Class<?>[] {kind}, (proxy, method, arguments) -> {
                        if (method.getName().startsWith("execute")) {
                            count();
                        }
                        return passOn(real, method, arguments);
                    });
        }

        private static @Nullable Object passOn(Object target, Method method, Object @Nullable [] arguments)
                throws Throwable {
            try {
                return method.invoke(target, arguments);
            } catch (InvocationTargetException e) {
                throw e.getCause() == null ? e : e.getCause();
            }
        }
    }
}
