import { trouble, type Trouble } from '../trouble';
import type { GivenOptions } from './command';
import { given } from './command';

/** What a number on the command line may be. */
export interface NumberRange {
  readonly low: number;
  readonly high: number;
  /** Such as "°C". */
  readonly unit?: string;
  readonly whole?: true;
}

/** Reads a number option; a Trouble when it is no number or out of range. */
export function numberOption(
  options: GivenOptions,
  name: string,
  range: NumberRange,
): number | Trouble {
  const text = given(options, name).trim();
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : NaN;
  const fits = value >= range.low && value <= range.high;
  if (fits && (!range.whole || Number.isInteger(value))) return value;
  const kind = range.whole ? 'a whole number' : 'a number, with a dot for decimals,';
  const unit = range.unit ? ` ${range.unit}` : '';
  const sentence = `--${name} must be ${kind} from ${range.low} to ${range.high}${unit}`;
  return trouble('bad-number', `${sentence}, and "${text}" is not.`);
}
