package org.scarfwright;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the program. Configuration stands in the rooms; nothing belongs here. */
@SpringBootApplication
public class ScarfwrightApplication {
    public static void main(String[] args) {
        SpringApplication.run(ScarfwrightApplication.class, args);
    }
}
