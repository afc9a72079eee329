import type { DriveChange } from './compare-drive';
import type { HarmonicLimit, HarmonicReading } from './harmonic-reading';

export interface LowestLimits {
  /** Total harmonic distortion, a share of the fundamental: 0.03, 0.05, 0.1. */
  readonly distortion: number;
  /** Loss of gain, dB, e.g. 1; counts where drive levels were compared. */
  readonly compressionDb: number;
  /** Where the walk down begins, Hz. */
  readonly fromHz: number;
}

/** How low a speaker may be asked to play at a drive level. */
export type LowestFrequency =
  /** It passes down to `hz` and fails below. */
  | {
      readonly kind: 'told';
      readonly hz: number;
      /** From where it surely fails to where it surely passes. */
      readonly interval: readonly [number, number];
      readonly decidedBy: 'distortion' | 'compression';
    }
  /** It passes at every frequency that was read, down to `hz`. */
  | { readonly kind: 'not reached'; readonly hz: number }
  /** It passes down to `passesTo` (null: not even there); below, something hides what it does. */
  | {
      readonly kind: 'cannot tell';
      readonly passesTo: number | null;
      readonly hiddenBy: HarmonicLimit;
    };

/** What a room and its decay add to a level's uncertainty, dB. */
const roomSpreadDb = 1;

interface Verdict {
  readonly kind: 'passes' | 'fails' | 'unsure' | HarmonicLimit;
  readonly by: 'distortion' | 'compression';
}

/** Hidden frequencies may lie between passing and failing within this ratio. */
const widestGap = 1.5;

/**
 * The lowest frequency at which distortion and compression keep within limits at one drive level,
 * and at all above it up to `fromHz`. One frequency over the limit alone is taken for a dip of the
 * room at its fundamental; two in a row decide. Throws RangeError for limits that are not positive.
 */
export function lowestAtLevel(
  change: Pick<DriveChange, 'reading' | 'gainChangeDb' | 'spreadDb'>,
  { distortion, compressionDb, fromHz }: LowestLimits,
): LowestFrequency {
  if (!(distortion > 0 && compressionDb > 0 && fromHz > 0)) {
    throw new RangeError(`limits must be positive, got ${distortion}, ${compressionDb}, ${fromHz}`);
  }
  const { hz, total } = change.reading;
  const start = hz.findLastIndex((f, i) => f <= fromHz && total.limitedBy[i] !== 'band');
  const verdicts = hz.map((_, i) =>
    verdictAt(change, i, 20 * Math.log10(distortion), compressionDb),
  );
  const fails = (i: number): boolean => verdicts[i]?.kind === 'fails';
  let lowest = start;
  while (lowest >= 0 && !(fails(lowest) && !(verdicts[lowest - 1]?.kind === 'passes'))) lowest--;
  const passing = verdicts.findIndex(
    ({ kind }, i) => i > lowest && i <= start && kind === 'passes',
  );
  const hidden = verdicts.slice(lowest + 1, passing < 0 ? start + 1 : passing).find(isHidden);
  const passesTo = passing < 0 ? null : (hz[passing] ?? null);
  const failing = hz[lowest] ?? null;
  if (failing === null) {
    if (passesTo !== null && !hidden) return { kind: 'not reached', hz: passesTo };
    return { kind: 'cannot tell', passesTo, hiddenBy: limitOf(hidden) };
  }
  if (hidden && !(passesTo !== null && passesTo / failing <= widestGap)) {
    return { kind: 'cannot tell', passesTo, hiddenBy: limitOf(hidden) };
  }
  const upper = passesTo ?? hz[start] ?? failing;
  const by = verdicts[lowest]?.by ?? 'distortion';
  return {
    kind: 'told',
    hz: Math.sqrt(failing * upper),
    interval: [failing, upper],
    decidedBy: by,
  };
}

function isHidden({ kind }: Verdict): boolean {
  return kind === 'noise' || kind === 'decay' || kind === 'band';
}

function limitOf(verdict: Verdict | undefined): HarmonicLimit {
  const kind = verdict?.kind;
  return kind === 'decay' || kind === 'band' ? kind : 'noise';
}

function verdictAt(
  { reading, gainChangeDb, spreadDb }: Pick<DriveChange, 'reading' | 'gainChangeDb' | 'spreadDb'>,
  i: number,
  limitDb: number,
  compressionDb: number,
): Verdict {
  const change = gainChangeDb[i] ?? null;
  const loss = change === null ? 'passes' : judge(-change - compressionDb, spreadDb[i] ?? 0);
  const own = judgeTotal(reading, i, limitDb);
  if (own === 'fails' || (own !== 'passes' && loss !== 'fails')) {
    return { kind: own, by: 'distortion' };
  }
  return { kind: loss, by: 'compression' };
}

function judgeTotal({ total }: HarmonicReading, i: number, limitDb: number): Verdict['kind'] {
  const db = total.db[i] ?? null;
  const floorDb = total.floorDb[i] ?? null;
  if (db === null) {
    const below = floorDb !== null && floorDb < limitDb - roomSpreadDb;
    return below ? 'passes' : (total.limitedBy[i] ?? 'noise');
  }
  const hidden = floorDb === null ? 0 : 20 * Math.log10(1 + 10 ** ((floorDb - db) / 20));
  return judge(db - limitDb, hidden + roomSpreadDb);
}

function judge(over: number, spread: number): 'passes' | 'fails' | 'unsure' {
  return over > spread ? 'fails' : over < -spread ? 'passes' : 'unsure';
}
