package org.scarfwright.shop.startup;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.context.EnvironmentAware;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Makes the data folder before anything opens a file in it. A new one belongs to the person who started the program alone. */
@Component
class DataFolder implements BeanFactoryPostProcessor, EnvironmentAware {
    private static final String PROPERTY = "scarfwright.home";

    private String setting = "";

    @Override
    public void setEnvironment(Environment environment) {
        setting = environment.getRequiredProperty(PROPERTY);
    }

    @Override
    public void postProcessBeanFactory(ConfigurableListableBeanFactory beanFactory) {
        prepare(setting);
    }

    static Path prepare(String setting) {
        if (setting.isBlank()) {
            throw refused(setting, "is empty");
        }
        Path folder;
        try {
            folder = Path.of(setting).toAbsolutePath().normalize();
        } catch (InvalidPathException e) {
            throw refused(setting, "is not a folder name");
        }
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw refused(setting, "is a file, not a folder");
        }
        try {
            if (!Files.exists(folder)) {
                Files.createDirectories(folder);
                keepForOwner(folder);
            }
        } catch (IOException e) {
            throw refused(setting, "cannot be made (" + e.getMessage() + ")");
        }
        if (!Files.isWritable(folder)) {
            throw refused(setting, "cannot be written to");
        }
        return folder;
    }

    private static void keepForOwner(Path folder) throws IOException {
        if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    private static StartRefusedException refused(String setting, String why) {
        return new StartRefusedException(
                "The data folder “" + setting + "” " + why + ".",
                "Set scarfwright.home to a folder you may write to, for example --scarfwright.home=./scarfwright-data");
    }
}
