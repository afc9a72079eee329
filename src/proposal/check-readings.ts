import { temperatureText } from '../locale/temperature-text';
import { msg, str } from '@lit/localize';
import type { Readings } from '../reading/reading';
import type { Layout } from '../system/channel';
import { trouble, type Trouble } from '../trouble';

/** Readings without a bad number; they do not change, and a dragged handle asks often. */
const clean = new WeakSet<Readings>();

/** Why no proposal can be made of these readings for this layout, or null when one can. */
export function checkReadings(readings: Readings, layout: Layout): Trouble | null {
  if (readings.layout !== layout.name) {
    return trouble(
      'other-take',
      msg(
        str`These readings are of a ${readings.layout} system and the layout is ${layout.name}: read a take of this layout first.`,
      ),
    );
  }
  const path = clean.has(readings) ? null : findNotANumber(readings, '');
  if (path !== null) {
    return trouble(
      'not-a-number',
      msg(str`The readings hold something that is not a number at ${path}: read the take again.`),
    );
  }
  clean.add(readings);
  if (readings.temperatureCelsius <= -273.15) {
    return trouble(
      'bad-number',
      msg(str`No room is as cold as ${temperatureText(readings.temperatureCelsius)}.`),
    );
  }
  return null;
}

/** Path of the first number that is NaN or endless, curves and kept bass aside. */
function findNotANumber(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : path;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    if (key === 'curves' || key === 'bass') continue;
    const found = findNotANumber(inner, path === '' ? key : `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}
