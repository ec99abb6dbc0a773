@NullMarked
package planted.visible;

import org.jspecify.annotations.NullMarked;
