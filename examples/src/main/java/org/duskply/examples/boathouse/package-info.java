/**
 * The demo: a timber boathouse café on a tarn at dusk, how it is lit, how a camera sees it, and the
 * frames of one evening. Everything here is invented.
 */
@NullMarked
package org.duskply.examples.boathouse;

import org.jspecify.annotations.NullMarked;
