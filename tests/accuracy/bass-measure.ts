import { alignSub, scanAlignment, type AlignmentOptions } from '../../dsp/bass/align-sub';
import { alignSeveralSubs, judgeSubs } from '../../dsp/bass/align-several-subs';
import { crossoverF6Hz, firstStepFrom, measuredFactor } from '../../dsp/bass/crossover-rules';
import type { DelayAndPolarity } from '../../dsp/bass/delay-scan';
import { throughPath } from '../../dsp/bass/electrical-path';
import { predictSum } from '../../dsp/bass/predict-sum';
import type { SubSetting } from '../../dsp/bass/seat-spread';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { drawSpeaker } from '../../dsp/room/draw-speaker';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { truthOf } from '../../dsp/room/truth';
import { fitRolloff, fitRolloffTogether, isRefusal } from '../../dsp/rolloff/fit-rolloff';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import {
  arrivalDelay,
  difference,
  directDelayAt,
  far,
  filtersAt,
  near,
  stepsHz,
} from './bass-ground';
import { measureProposed, type ProposedSum } from './bass-proposed';
import { drawBassScene, hz, measuredSeats, type BassScene } from './bass-scene';
import { responseThrough } from './rolloff-transfers';

/** Ways to find a sub's delay; the first ones are naive. */
export const alignmentWays = [
  'as wired',
  'tape distance',
  'onset',
  'envelope peak',
  'most power',
  'here',
] as const;
export type AlignmentWay = (typeof alignmentWays)[number];

export const subsWays = ['one sub', 'as wired', 'by arrival', 'here'] as const;
export type SubsWay = (typeof subsWays)[number];

/** What one room gave; plain data. */
export interface BassFigures {
  readonly seed: number;
  readonly crossovers: readonly {
    readonly seats: 'one seat' | 'six seats';
    readonly chosenHz: number;
    /** From the fit's 80 % quantile of f6, not the 85 % one. */
    readonly chosen80Hz: number;
    /** By the same rule on the true f6. */
    readonly ruleHz: number;
    readonly f6Hz: number;
  }[];
  readonly crossoverHz: number;
  readonly alignments: readonly {
    readonly way: AlignmentWay;
    /** Mean over the measured seats, and over the others, dB. */
    readonly lossDb: number;
    readonly elsewhereDb: number;
    readonly dipDb: number;
    readonly dipElsewhereDb: number;
    /** From the delay that lines the direct sounds up. */
    readonly offPeriods: number;
  }[];
  /** With the crossover that is proposed, from the roll-off as read, in place of the rule's. */
  readonly proposed: ProposedSum;
  /** Least loss of any delay within 20 ms, both polarities. */
  readonly leastLossDb: number;
  /** Whether the best delay nearby for all seats lies in the interval; null where there is none. */
  readonly inInterval: boolean | null;
  readonly subs: readonly {
    readonly way: SubsWay;
    readonly deviationDb: number;
    readonly elsewhereDb: number;
    readonly levelDb: number;
  }[];
}

/** Crossovers at which subs are aligned: as the rule says, within what a bed is given. */
const alignedHz = [50, 120] as const;

/** Crossovers, alignment and two subs in one room. */
export function measureBass(preset: RoomPreset, seed: number): BassFigures {
  const scene = drawBassScene(preset, seed);
  const rule = firstStepFrom(measuredFactor * truthOf(scene.main.model).f6Hz, stepsHz) ?? 200;
  const crossoverHz = Math.min(alignedHz[1], Math.max(alignedHz[0], rule));
  return {
    seed,
    crossovers: measureCrossovers(scene, seed),
    crossoverHz,
    ...measureAlignment(scene, crossoverHz),
    proposed: measureProposed(scene),
    subs: measureSubs(scene),
  };
}

/** Four speakers in the main's place, from one seat and from all measured ones. */
export function measureCrossovers(
  { mainRooms, main }: BassScene,
  seed: number,
): BassFigures['crossovers'] {
  const models = [main.model, ...[1, 2, 3].map((n) => drawSpeaker(10 * seed + n))];
  return models.flatMap((model) => {
    const f6Hz = truthOf(model).f6Hz;
    const bands = mainRooms.map((room) => rolloffBands(responseThrough(room, model), null));
    const [first] = bands;
    if (!first) return [];
    const fits = [
      ['one seat', fitRolloff(first, { place: 'room' })],
      [
        'six seats',
        fitRolloffTogether(
          bands.map((one) => ({ bands: one, speaker: '' })),
          {},
        ),
      ],
    ] as const;
    const step = (f6: number): number => firstStepFrom(measuredFactor * f6, stepsHz) ?? Infinity;
    return fits.flatMap(([seats, fit]) =>
      isRefusal(fit)
        ? []
        : [
            {
              seats,
              chosenHz: step(crossoverF6Hz(fit.f6Upper80Hz, fit.f6Hz.high)),
              chosen80Hz: step(fit.f6Upper80Hz),
              ruleHz: step(f6Hz),
              f6Hz,
            },
          ],
    );
  });
}

type Alignments = Pick<BassFigures, 'alignments' | 'leastLossDb' | 'inInterval'>;

function measureAlignment(scene: BassScene, crossoverHz: number): Alignments {
  const {
    main,
    subs: [sub],
  } = scene;
  const options: AlignmentOptions = { hz, crossoverHz, ...filtersAt(crossoverHz) };
  const directDelay = directDelayAt(scene, crossoverHz);
  const [high, low] = [
    throughPath(near(main.seats), { filters: options.highPass }, hz),
    throughPath(near(sub.seats), { filters: options.lowPass }, hz),
  ];
  const scan = scanAlignment([{ seats: near(main.seats) }], near(sub.seats), options);
  const either = (delaySeconds: number): DelayAndPolarity =>
    [false, true]
      .map((inverted) => ({ delaySeconds, inverted }))
      .reduce((a, b) => (scan.lossDb(b) < scan.lossDb(a) ? b : a));
  const found = alignSub([{ seats: near(main.seats) }], near(sub.seats), {
    ...options,
    ...arrivalDelay(scene),
  });
  const asWired = { delaySeconds: 0, inverted: false };
  const most = mostPower(high, low, crossoverHz);
  const answers: Record<AlignmentWay, DelayAndPolarity> = {
    'as wired': asWired,
    'tape distance': { ...asWired, delaySeconds: main.pathSeconds - sub.pathSeconds },
    onset: { ...asWired, delaySeconds: difference(high, low, crossoverHz, 0.3) },
    'envelope peak': either(difference(high, low, crossoverHz, 1)),
    'most power': most,
    here: found.kind === 'told' ? found : asWired,
  };
  const predicted = (all: typeof near, at: DelayAndPolarity): ReturnType<typeof predictSum> =>
    predictSum(all(main.seats), all(sub.seats), {
      hz,
      crossoverHz,
      main: { filters: options.highPass },
      sub: { filters: options.lowPass, delaySeconds: at.delaySeconds, inverted: at.inverted },
    });
  return {
    alignments: alignmentWays.map((way) => {
      const at = answers[way];
      const [here, elsewhere] = [predicted(near, at), predicted(far, at)];
      return {
        way,
        lossDb: here.lostDb,
        elsewhereDb: elsewhere.lostDb,
        dipDb: here.dip.db,
        dipElsewhereDb: elsewhere.dip.db,
        offPeriods: Math.abs(at.delaySeconds - directDelay) * crossoverHz,
      };
    }),
    leastLossDb: leastLoss((at) => scan.lossDb(at)),
    inInterval: found.kind === 'told' ? holdsBest(found, main.seats, sub.seats, options) : null,
  };
}

const everyDelay = Array.from({ length: 161 }, (_, n) => (n - 80) * 0.00025);

/** Delay within 20 ms and polarity of most power summed over seats, pink from fx/1.4 to 1.4 fx. */
function mostPower(main: SeatTransfers, sub: SeatTransfers, crossoverHz: number): DelayAndPolarity {
  let best = { delaySeconds: 0, inverted: false };
  let most = -1;
  for (const delaySeconds of everyDelay) {
    for (const inverted of [false, true]) {
      const moved = throughPath(sub, { filters: [], delaySeconds, inverted }, hz);
      let power = 0;
      for (const [seat, one] of main.entries()) {
        for (const [k, f] of hz.entries()) {
          if (f < crossoverHz / 1.4 || f > crossoverHz * 1.4) continue;
          power += ((one.re[k] ?? 0) + (moved[seat]?.re[k] ?? 0)) ** 2;
          power += ((one.im[k] ?? 0) + (moved[seat]?.im[k] ?? 0)) ** 2;
        }
      }
      if (power > most) [best, most] = [{ delaySeconds, inverted }, power];
    }
  }
  return best;
}

function leastLoss(loss: (at: DelayAndPolarity) => number): number {
  return Math.min(
    ...everyDelay.flatMap((delaySeconds) =>
      [false, true].map((inverted) => loss({ delaySeconds, inverted })),
    ),
  );
}

/** Whether the delay within a quarter period that is best at all seats lies in the interval. */
function holdsBest(
  found: DelayAndPolarity & { readonly interval: readonly [number, number] | null },
  main: SeatTransfers,
  sub: SeatTransfers,
  options: AlignmentOptions,
): boolean | null {
  if (!found.interval) return null;
  const scan = scanAlignment([{ seats: main }], sub, options);
  let [best, least] = [found.delaySeconds, Infinity];
  for (let n = -50; n <= 50; n++) {
    const delaySeconds = found.delaySeconds + n / (200 * options.crossoverHz);
    const loss = scan.lossDb({ delaySeconds, inverted: found.inverted });
    if (loss < least) [best, least] = [delaySeconds, loss];
  }
  return best >= found.interval[0] && best <= found.interval[1];
}

function measureSubs({ subs }: BassScene): BassFigures['subs'] {
  const plain = { delaySeconds: 0, gainDb: 0, inverted: false };
  const near = subs.map(({ seats }) => seats.slice(0, measuredSeats));
  const far = subs.map(({ seats }) => seats.slice(measuredSeats));
  const found = alignSeveralSubs(near, { hz });
  const farFound = alignSeveralSubs(far, { hz });
  const arrival = subs.map(({ model, pathSeconds }) => model.delaySeconds + pathSeconds);
  const [first = 0, second = 0] = arrival;
  const settings: Record<Exclude<SubsWay, 'one sub'>, readonly SubSetting[]> = {
    'as wired': [plain, plain],
    'by arrival': [plain, { ...plain, delaySeconds: first - second }],
    here: found.settings,
  };
  return subsWays.map((way) => {
    if (way === 'one sub') {
      const { deviationDb, levelDb } = found.alone;
      return { way, deviationDb, levelDb, elsewhereDb: farFound.alone.deviationDb };
    }
    const { deviationDb, levelDb } = judgeSubs(near, settings[way], { hz });
    const elsewhereDb = judgeSubs(far, settings[way], { hz }).deviationDb;
    return { way, deviationDb, levelDb, elsewhereDb };
  });
}
