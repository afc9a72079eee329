import { metresPerFoot, metresPerInch } from './length-text';
import { isGrouped, parseNumber, tidyText, type NoNumber } from './parse-number';

/** A number without sign, as parseNumber takes it. */
const number = String.raw`(\d+(?:[.,]\d*)?|[.,]\d+)`;
/** Inches may have a fraction, as on a tape: "10 1/2". */
const inches = String.raw`(?:${number}(?:[ -](\d+)/(\d+))?|(\d+)/(\d+)) ?(?:in|inch|inches|")\.?`;
const foot = String.raw`(?:ft|foot|feet|')\.?`;

const metric = new RegExp(`^${number} ?(m|cm|mm|metres?|meters?)$`);
const inchesAlone = new RegExp(`^${inches}$`);
const feet = new RegExp(`^${number} ?${foot}(?:[ ,-]*${inches})?$`);

const metresIn: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001 };

/**
 * Reads a typed length, in metres: a number alone is in the given unit; with a unit it is in that,
 * whichever is preferred: "2.4 m", "240 cm", "7'10\"", "7 ft 10 1/2 in", "94 in".
 */
export function parseLength(text: string, alone: 'm' | 'ft'): number | NoNumber {
  const plain = parseNumber(text);
  if (typeof plain === 'number') return alone === 'm' ? plain : plain * metresPerFoot;
  const tidy = tidyText(text)
    .toLowerCase()
    .replace(/''|[\u2033\u201d\u201c]/g, '"')
    .replace(/[\u2032\u2019\u2018]/g, "'");
  const sign = tidy.startsWith('-') ? -1 : 1;
  const bare = tidy.replace(/^[+-] ?/, '');
  const metres = metricLength(bare) ?? inchLength(bare) ?? footLength(bare);
  if (metres !== null) return sign * metres;
  return plain === 'two readings' || isGrouped(bare.replace(/ ?[a-z"']+$/, ''))
    ? 'two readings'
    : 'no number';
}

function metricLength(text: string): number | null {
  const [, amount, unit] = metric.exec(text) ?? [];
  if (amount === undefined || unit === undefined) return null;
  return valueOf(amount) * (metresIn[unit] ?? 1);
}

function inchLength(text: string): number | null {
  const found = inchesAlone.exec(text);
  const amount = found && inchesOf(found.slice(1));
  return amount === null ? null : amount * metresPerInch;
}

/** Whole feet with fewer than twelve inches, or any number of feet without inches. */
function footLength(text: string): number | null {
  const found = feet.exec(text);
  if (!found) return null;
  const [, whole = '', ...rest] = found;
  const some = rest.some((part: string | undefined) => part !== undefined);
  if (!some) return valueOf(whole) * metresPerFoot;
  const more = inchesOf(rest);
  if (more === null || more >= 12 || !/^\d+$/.test(whole)) return null;
  return Number(whole) * metresPerFoot + more * metresPerInch;
}

/** From the groups of `inches`: a number, and a fraction with it or alone; null for n/0. */
function inchesOf(groups: readonly (string | undefined)[]): number | null {
  const [whole, over, under, onlyOver, onlyUnder] = groups;
  const [top, bottom] = [over ?? onlyOver, under ?? onlyUnder];
  if (bottom !== undefined && Number(bottom) === 0) return null;
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  return (whole === undefined ? 0 : valueOf(whole)) + fraction;
}

function valueOf(amount: string): number {
  return Number(amount.replace(',', '.'));
}
