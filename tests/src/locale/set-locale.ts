import { afterEach } from 'vitest';
import { findLocale } from '../../../src/locale/find-locale';
import { noPreferences, plainLocale, type Units } from '../../../src/locale/locale';
import { setLocale } from '../../../src/locale/locale-in-force';

/** Puts in force what a browser of this language gets, with other units if they are given. */
export function inLocale(tag: string, units: Units | null = null): void {
  setLocale(findLocale({ ...noPreferences, units }, [tag]));
}

/** Metric with a point again after each test of a file. */
export function plainAfterEach(): void {
  afterEach(() => setLocale(plainLocale));
}
