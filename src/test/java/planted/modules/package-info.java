@NullMarked
package planted.modules;

import org.jspecify.annotations.NullMarked;
