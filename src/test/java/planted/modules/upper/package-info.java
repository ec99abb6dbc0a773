@ApplicationModule(allowedDependencies = {})
@NullMarked
package planted.modules.upper;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
