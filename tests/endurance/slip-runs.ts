import { slipsOf, type PlannedSlip } from '../accuracy/proof-slips';
import type { ProofLine } from '../../src/proof/proof';
import { withTypedHouse, type HouseOptions } from './prove-house';

/** One proof in the closed loop. */
export interface SlipRow {
  readonly house: string;
  /** What was typed wrong; null: nothing. */
  readonly slip: string | null;
  readonly counts: Readonly<Record<ProofLine['verdict'], number>>;
  /** Lines that are not as they must be, each as text; empty where all is as it must be. */
  readonly wrong: readonly string[];
}

export interface SlipRuns {
  /** Numbers of houses, from and up to. */
  readonly from: number;
  readonly to: number;
  /** Houses below this number are proved with every mistake as well. */
  readonly slipsBelow: number;
  /** Only mistakes whose name begins with this are made; left out: all. */
  readonly only?: string | undefined;
}

const ways = ['processor', 'wires', 'declared processor'] as const;

/** Sweeps half as long as the app proposes: the loop is quieter than most rooms. */
const sweepSeconds = 2 ** 16 / 48_000;

/**
 * Proves houses in the closed loop: everything typed right, then in the first houses every mistake,
 * one at a time. One sub and two by turns; read by wires, and through a processor as it
 * comes, of which nothing or everything is declared.
 */
export async function runSlips({ from, to, slipsBelow, only = '' }: SlipRuns): Promise<SlipRow[]> {
  const rows: SlipRow[] = [];
  for (let number = from; number < to; number++) {
    const options: HouseOptions = {
      layout: number % 2 === 0 ? '5.1' : '5.2',
      seed: number,
      readThrough: ways[Math.floor(number / 2) % ways.length] ?? 'wires',
      sweepSeconds,
    };
    const house = `${options.layout} ${number} by ${options.readThrough}`;
    await withTypedHouse(options, async (typed) => {
      const say = (row: SlipRow): void => {
        rows.push(row);
        console.log(slipText(row));
      };
      say(rightRow(house, await typed.prove([])));
      if (number >= slipsBelow) return;
      for (const planned of slipsOf(typed).filter(({ name }) => name.startsWith(only))) {
        say(slipRow(house, planned, await typed.prove([planned.slip])));
      }
    });
  }
  return rows;
}

/** Everything was typed right: every line must pass. */
export function rightRow(house: string, lines: readonly ProofLine[]): SlipRow {
  const wrong = lines.filter(({ verdict }) => verdict !== 'pass').map(lineText);
  return { house, slip: null, counts: countsOf(lines), wrong };
}

/** A mistake was made: a line must fail, name it, and tell to change a setting it concerns. */
export function slipRow(
  house: string,
  { name, called, concerns }: PlannedSlip,
  lines: readonly ProofLine[],
): SlipRow {
  const failed = lines.filter(({ verdict }) => verdict === 'fail');
  const isNamed = failed.some(
    ({ slip, changes }) =>
      slip === called &&
      changes.some(
        ({ channels, group }) =>
          channels.some((label) => concerns.includes(label)) ||
          (group !== null && concerns.includes(group)),
      ),
  );
  const wrong = isNamed ? [] : failed.length === 0 ? ['nothing fails'] : failed.map(lineText);
  return { house, slip: name, counts: countsOf(lines), wrong };
}

function countsOf(lines: readonly ProofLine[]): SlipRow['counts'] {
  const counts = { pass: 0, fail: 0, 'cannot tell': 0 };
  for (const { verdict } of lines) counts[verdict]++;
  return counts;
}

function lineText({ verdict, id, slip, sentence }: ProofLine): string {
  return `${verdict}: ${id}: ${slip ?? '-'}: ${sentence}`;
}

/** A row as text. */
export function slipText({ house, slip, counts, wrong }: SlipRow): string {
  const { pass, fail, 'cannot tell': untold } = counts;
  const said = wrong.length > 0 ? 'NOT SO' : slip === null ? 'all pass' : 'named';
  const of = `${String(pass).padStart(3)} pass ${String(fail).padStart(3)} fail ${String(untold).padStart(2)} ?`;
  const first = `${house.padEnd(22)} ${(slip ?? 'typed right').padEnd(34)} ${of}  ${said}`;
  return [first, ...wrong.map((line) => `    ${line}`)].join('\n');
}
