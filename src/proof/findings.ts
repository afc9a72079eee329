import { fitPath, type PathFit } from '../../dsp/comparison/fit-path';
import type { Transfer } from '../../dsp/bass/transfer';
import { median } from '../../dsp/signal/median';
import type { ChannelLabel } from '../system/channel';
import { fitSign } from './as-heard';
import { arrivalOf, type ProvedArrival } from './arrival-of';
import { crossoverOf, expectLfe, expectThrough } from './expect-bass';
import type { ProofCase, ProvedChannel } from './proof-case';
import { readRedirected, type Redirected } from './read-redirected';

/** All that was found of every channel, before anything is judged. */
export interface Findings {
  readonly arrivals: ReadonlyMap<ChannelLabel, ProvedArrival>;
  /** How much later than their settings say channels come beside the reference, seconds. */
  readonly lates: ReadonlyMap<ChannelLabel, number>;
  /** What they have in common of it. */
  readonly middleLate: number;
  /** Arrival the mains are held against, seconds. */
  readonly middleSeconds: number;
  /** Subs beside what LFE should sound like on them. */
  readonly subFits: ReadonlyMap<ChannelLabel, PathFit>;
  /** Mains beside their own sound before, above the crossover. */
  readonly mainFits: ReadonlyMap<ChannelLabel, PathFit>;
  /** The same at the time of their arrivals, for their sign. */
  readonly signs: ReadonlyMap<ChannelLabel, PathFit>;
  /** How far the microphone seems to stand from where it stood before, m. */
  readonly movedMetres: number;
  readonly redirected: ReadonlyMap<ChannelLabel, Redirected>;
  /** How much louder LFE is than redirected bass says, dB; null where no bass is redirected. */
  readonly lfe: { readonly db: number; readonly half: number } | null;
}

/** Bands that subs and mains are compared in, Hz. */
export const subBand = [25, 100] as const;
const mainTopHz = 480;

/** Measures every channel against what it should be. */
export function findAll(proof: ProofCase): Findings {
  const { mains, subs, hz, metresPerSecond } = proof;
  const arrivals = mapOf(mains, (main) => arrivalOf(main, proof, metresPerSecond));
  const redirected = mapOf(mains, (main) => redirectedOf(proof, main));
  const ratios = [...redirected.values()].flatMap(({ lfe }) => (lfe ? [lfe] : []));
  const subFits = mapOf(subs, (sub) => compare(sub.bassAfter, expectLfe(proof, sub), hz, subBand));
  const lates = new Map([
    ...mapOf(mains, ({ channel }) => arrivals.get(channel.label)?.late ?? null),
    ...mapOf(subs, ({ channel }) => lateOf(subFits.get(channel.label), proof)),
  ]);
  const middleLate = median([...lates.values()]);
  const mainFits = mapOf(mains, (main) =>
    compare(main.bassAfter, expectThrough(proof, main, []), hz, mainBand(proof, main)),
  );
  const signs = mapOf(mains, (main) => fitSign(proof, main));
  return {
    arrivals,
    lates,
    middleLate,
    middleSeconds: median(
      [...arrivals.values()].map(
        ({ seconds, late }) => seconds - (late ?? middleLate) + middleLate,
      ),
    ),
    subFits,
    mainFits,
    signs,
    movedMetres: movedBy(mainFits, signs),
    redirected,
    lfe:
      ratios.length === 0
        ? null
        : {
            db: median(ratios.map(({ db }) => db)),
            half: median(ratios.map(({ half }) => half)) / Math.sqrt(ratios.length),
          },
  };
}

/** A sub that sounds less alike than this has no one delay. */
const alike = 0.8;

function lateOf(fit: PathFit | undefined, { referenceLateSeconds }: ProofCase): number | null {
  return fit && fit.agreement >= alike ? fit.delaySeconds - referenceLateSeconds : null;
}

const farthestMetres = 0.3;

/**
 * Responses at two places so far apart differ by about the root of the metres between them, from
 * 200 to 480 Hz in small rooms: 0.17 of the amplitude at 2 cm, 0.25 at 6 cm, 0.33 at 11 cm. The
 * middle of all mains, so that one that is wrong itself does not count. Own method, from simulated
 * rooms.
 */
function movedBy(
  mainFits: ReadonlyMap<ChannelLabel, PathFit>,
  signs: ReadonlyMap<ChannelLabel, PathFit>,
): number {
  const differences = [...mainFits].map(([label, { agreement }]) => {
    const best = Math.max(agreement, signs.get(label)?.agreement ?? 0);
    return 1 - best ** 2;
  });
  return Math.min(farthestMetres, median(differences));
}

function redirectedOf(proof: ProofCase, main: ProvedChannel): Redirected | null {
  const crossoverHz = crossoverOf(proof, main);
  return crossoverHz === null ? null : readRedirected(proof, main, crossoverHz);
}

/** From well above the crossover, where the subs are silent, to the end of the bass. */
function mainBand(proof: ProofCase, main: ProvedChannel): readonly [number, number] {
  const crossoverHz = crossoverOf(proof, main) ?? 0;
  return [Math.min(240, Math.max(120, 2 * crossoverHz)), mainTopHz];
}

function compare(
  measured: Transfer | null,
  expected: Transfer | null,
  hz: Float64Array,
  band: readonly [number, number],
): PathFit | null {
  return measured && expected ? fitPath(measured, expected, hz, band) : null;
}

function mapOf<Value>(
  channels: readonly ProvedChannel[],
  find: (one: ProvedChannel) => Value | null,
): Map<ChannelLabel, Value> {
  return new Map(
    channels.flatMap((one): [ChannelLabel, Value][] => {
      const found = find(one);
      return found === null ? [] : [[one.channel.label, found]];
    }),
  );
}
