import { findLocale } from '../src/locale/find-locale';
import { noPreferences } from '../src/locale/locale';
import { setLocale } from '../src/locale/locale-in-force';

/** Elements are tested as a page from Britain shows them, wherever the machine stands. */
setLocale(findLocale(noPreferences, ['en-GB']));
