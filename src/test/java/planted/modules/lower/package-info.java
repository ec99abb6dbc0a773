@ApplicationModule(allowedDependencies = {})
@NullMarked
package planted.modules.lower;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
