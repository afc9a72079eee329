import type { ChannelLabel } from '../channel';
import type { ProcessorSheet } from '../sheet/processor-sheet';

/** A channel that may not go on an output, both by index. */
export type Closed = readonly [channel: number, output: number];

/** Where one choice of an exclusive set is in use, by index. */
export interface ChoicePlaces {
  readonly channels: readonly number[];
  readonly outputs: readonly number[];
}

/** One rule that a search can hold or leave out; channels and outputs by index. */
export type WiringRule =
  | { readonly kind: 'wired'; readonly channels: readonly number[] }
  | { readonly kind: 'one role'; readonly outputs: readonly number[] }
  | { readonly kind: 'pair'; readonly outputs: readonly [number, number] }
  | {
      readonly kind: 'only without';
      readonly closed: readonly Closed[];
      readonly present: readonly ChannelLabel[];
    }
  | {
      readonly kind: 'channel order';
      readonly closed: readonly Closed[];
      readonly missing: readonly ChannelLabel[];
    }
  | { readonly kind: 'output order'; readonly stages: readonly (readonly number[])[] }
  | {
      readonly kind: 'exclusive';
      readonly name: string;
      readonly choices: readonly ChoicePlaces[];
    };

/** A layout and a sheet as a search sees them. */
export interface WiringProblem {
  readonly roles: readonly ChannelLabel[];
  readonly outputCount: number;
  /** Place of the channel's role among the output's roles, -1 when it cannot carry it. */
  readonly ranks: readonly (readonly number[])[];
  /** Index of the channel's partner, -1 without one. */
  readonly partners: readonly number[];
  readonly rules: readonly WiringRule[];
}

/** Index of the output with an id; throws RangeError when there is none. */
export function outputIndex(sheet: ProcessorSheet, id: string): number {
  const index = sheet.outputs.findIndex((output) => output.id === id);
  if (index < 0) throw new RangeError(`a rule names an output of the sheet, got "${id}"`);
  return index;
}
