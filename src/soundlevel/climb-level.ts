import type { OutputRoutes, Rig } from '../rig/port';
import type { SoundLevelCalibration } from '../microphone/calibration';
import type { ChannelLabel } from '../system/channel';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkLinearity } from './check-linearity';
import { createClimbEar, type ClimbEar, type Hearing } from './climb-ear';
import { climbNoise, type ClimbNoise } from './climb-noise';
import { mostPeakDb, mostStepDb, nearDb, nextStep, whyEnd, type Limits } from './climb-limits';
import { sayClimb } from './climb-words';
import { openEar, type Ear } from './hear-line';
import { judgeHearing, type Judged } from './judge-hearing';
import { hearNoiseFloor, type NoiseFloor } from './noise-floor';
import { settleLevel, type Settled } from './settle-level';
import type { ClimbEnd, ClimbRequest, ClimbResult, ClimbState } from './sound-level';

export interface ClimbOptions {
  readonly signal: AbortSignal;
  /** The speaker that climbs. */
  readonly channel: ChannelLabel;
  readonly isSub: boolean;
  readonly routes: OutputRoutes;
  readonly soundLevel: SoundLevelCalibration | null;
  /** Gain it begins at; default −60 dB. */
  readonly startDb?: number;
  readonly onState: (state: ClimbState) => void;
  /** A-weighted level heard, dB re full scale, and for how long. */
  readonly onLevel?: (aWeightedDb: number, seconds: number) => void;
}

/** Bands that decide: where the trade sets levels (common practice). */
const bands = { main: [500, 2000], sub: [30, 80] } as const;
const defaultStartDb = -60;
const lowestDb = -100;
/** Sound level that is not passed, dB(C). */
const mostSoundDb = 95;
/** Receivers mute the beginning of a new stream; subs must wake. */
const wakeSeconds = 3;
const stepSeconds = 1.5;
const holdSeconds = 2.5;
const checkStepDb = 6;
/** What the check takes, about. */
const checkSeconds = 8;
/** Drop after clipping, dB; clipping so often is no door that slammed. */
const clipDropDb = 12;
const mostClips = 3;
/** A level that comes back so far from what the gain foretells, so often in a row, dB. */
const mostOffDb = 1.5;
const mostOffs = 2;

/**
 * Climbs on one speaker from quiet until the noise margin or the sound level asked for is met,
 * whichever comes first, and says which; or stops at capDb, before the microphone clips, at
 * 95 dB(C) when calibrated, or unheard at the cap. Noise floor first, then pink noise in steps of
 * 6 dB or less. Then checks that 6 dB less out are 6 dB less in. The gain found is for takes: their
 * sweeps have the noise's rms (see climbNoise), so they are no louder on average; their peaks at
 * the microphone are foretold from the response heard and kept below −12 dB re full scale too.
 * Never throws; an abort or the line's end gives its Trouble, and silence.
 */
export async function climbLevel(
  rig: Rig,
  request: ClimbRequest,
  options: ClimbOptions,
): Promise<ClimbResult | Trouble> {
  const { marginDb, targetDb, capDb } = request;
  const numbers = [marginDb, capDb, targetDb ?? 0, options.startDb ?? 0];
  if (!(numbers.every(Number.isFinite) && capDb >= lowestDb && capDb <= 0)) {
    return trouble('bad-number', `The highest gain must lie between −100 and 0 dB.`);
  }
  const ear = await openEar(rig, options);
  if (isTrouble(ear)) return ear;
  try {
    return await createClimb(ear, request, options).run();
  } finally {
    ear.close();
  }
}

function createClimb(
  ear: Ear,
  request: ClimbRequest,
  options: ClimbOptions,
): { run: () => Promise<ClimbResult | Trouble> } {
  const { line } = ear;
  const { sampleRate } = line;
  const { channel, soundLevel } = options;
  const { capDb } = request;
  const targetDb = soundLevel ? request.targetDb : null;
  const noise: ClimbNoise = climbNoise(options.isSub, sampleRate);
  const bandHz = bands[options.isSub ? 'sub' : 'main'];
  const hears: ClimbEar = createClimbEar(ear, {
    periodSamples: noise.period.length,
    bandHz,
    soundLevel,
    onLevel: options.onLevel,
  });
  const startDb = Math.min(Math.max(options.startDb ?? defaultStartDb, lowestDb), capDb);
  const mostDb = soundLevel ? mostSoundDb - soundLevel.offsetDb : Infinity;
  const limits: Limits = {
    ...request,
    targetDb,
    capDb,
    mostDb,
    offsetDb: soundLevel?.offsetDb ?? 0,
  };
  let gainDb = startDb;
  let clips = 0;
  /** Seconds since the check of linearity began; null before. */
  let checkedSeconds: number | null = null;

  const run = async (): Promise<ClimbResult | Trouble> => {
    const floor = await hearNoiseFloor(hears, (seconds, hearing) => {
      options.onState({
        gainDb,
        marginDb: null,
        soundLevel: hearing.soundLevel,
        progress: Math.min(0.02 * seconds, 0.1),
        secondsLeft: Math.max(secondsToGo(gainDb, capDb) + 4 - seconds, 1),
      });
    });
    if (isTrouble(floor)) return floor;
    if (floor.clipped) {
      return trouble(
        'too-loud',
        'The microphone clips while nothing plays. Turn its gain down and climb again.',
      );
    }
    line.play({ channel, period: noise.period, gainDb });
    const found = await climb(floor);
    if (isTrouble(found)) return found;
    const { end, judged } = found;
    if (end === 'unheard') {
      gainDb = startDb;
      return result(end, judged, null);
    }
    const linearity = await compareLevels(floor, judged);
    return isTrouble(linearity) ? linearity : result(end, judged, linearity.checked);
  };

  const settle = (
    floor: NoiseFloor,
    leastSeconds: number,
    expectedPower: number | null,
    deafSeconds = 0,
  ): Promise<Settled | Trouble> =>
    settleLevel(hears, {
      leastSeconds,
      expectedPower,
      deafSeconds,
      mostDb,
      onHop: (hearing) => tell(hearing, floor),
    });

  const tell = (hearing: Hearing, floor: NoiseFloor): void => {
    const { marginDb } = judgeHearing(hearing, floor, noise, sampleRate);
    const { soundLevel } = hearing;
    if (checkedSeconds !== null) {
      checkedSeconds += hears.hopSeconds;
      const part = Math.min(checkedSeconds / checkSeconds, 1);
      const secondsLeft = Math.max(checkSeconds - checkedSeconds, 0.5);
      options.onState({ gainDb, marginDb, soundLevel, progress: 0.8 + 0.2 * part, secondsLeft });
      return;
    }
    const goal = marginDb === null ? capDb : gainDb + Math.max(request.marginDb - marginDb, 0);
    const aim = Math.min(Math.max(goal, startDb + 1), Math.max(capDb, startDb + 1));
    options.onState({
      gainDb,
      marginDb,
      soundLevel,
      progress: Math.min(Math.max(0.1 + (0.7 * (gainDb - startDb)) / (aim - startDb), 0), 0.8),
      secondsLeft: secondsToGo(gainDb, aim),
    });
  };

  const move = (toDb: number): number => {
    const moved = Math.min(Math.max(toDb, lowestDb), capDb) - gainDb;
    gainDb += moved;
    line.setGain(gainDb);
    return moved;
  };

  const climb = async (floor: NoiseFloor): Promise<{ end: ClimbEnd; judged: Judged } | Trouble> => {
    let least = wakeSeconds;
    let expected: number | null = null;
    /** Set once the gain had to come down: what is measured next is the last. */
    let forced: 'clipping' | 'too loud' | null = null;
    let deaf = 0;
    let offs = 0;
    for (;;) {
      const settled: Settled | Trouble = await settle(floor, least, expected, deaf);
      if (isTrouble(settled)) return settled;
      const judged = judgeHearing(settled.hearing, floor, noise, sampleRate);
      const isOff = judged.isHeld || (settled.offDb > mostOffDb && judged.power > 0);
      offs = isOff ? offs + 1 : 0;
      if (offs >= mostOffs) return notLinear;
      least = stepSeconds;
      expected = null;
      deaf = 0;
      if (settled.alarm !== null) {
        const over = settled.hearing.cWeightedDb - mostDb;
        if (settled.alarm === 'clipping') clips++;
        if (settled.alarm === 'too loud' || clips >= mostClips) forced = settled.alarm;
        if (gainDb <= lowestDb) return { end: settled.alarm, judged };
        deaf = stepSeconds;
        move(gainDb - (settled.alarm === 'clipping' ? clipDropDb : Math.max(over, 0) + 1));
        continue;
      }
      const why = whyEnd(judged, gainDb, limits);
      const isMet = why === 'margin' || why === 'target';
      const end: ClimbEnd | null = forced === 'too loud' || !isMet ? (forced ?? why) : why;
      const excessDb = judged.peakDb - mostPeakDb;
      if (end === 'clipping' && excessDb > nearDb && gainDb > lowestDb && judged.power > 0) {
        forced = 'clipping';
        const moved = move(gainDb - excessDb);
        expected = floor.bandPower + judged.power * 10 ** (moved / 10);
        continue;
      }
      if (end !== null) return { end, judged };
      const moved = move(gainDb + nextStep(judged, gainDb, limits));
      if (judged.power > 0) expected = floor.bandPower + judged.power * 10 ** (moved / 10);
    }
  };

  const compareLevels = async (
    floor: NoiseFloor,
    judged: Judged,
  ): Promise<{ checked: ClimbResult['linearity'] } | Trouble> => {
    if (judged.power === 0) return { checked: null };
    const periods = options.isSub ? 4 : 2;
    checkedSeconds = 0;
    const louder = await meanPower(periods, floor);
    if (isTrouble(louder)) return louder;
    line.setGain(gainDb - checkStepDb);
    const expected = floor.bandPower + judged.power * 10 ** (-checkStepDb / 10);
    const settled = await settle(floor, holdSeconds, expected);
    if (isTrouble(settled)) return settled;
    const quieter = await meanPower(periods, floor);
    if (isTrouble(quieter)) return quieter;
    const bins = ((bandHz[1] - bandHz[0]) * noise.period.length) / sampleRate;
    const count = bins * periods;
    return { checked: checkLinearity({ louder, quieter, floor: floor.bandPower, count }) };
  };

  /** Mean power in the band over so many periods from now on. */
  const meanPower = async (periods: number, floor: NoiseFloor): Promise<number | Trouble> => {
    let sum = 0;
    for (let hop = 1; hop <= 4 * periods; hop++) {
      const hearing = await hears.listen();
      if (isTrouble(hearing)) return hearing;
      tell(hearing, floor);
      if (hop % 4 === 0) sum += hearing.bandPower;
    }
    return sum / periods;
  };

  const result = (
    end: ClimbEnd,
    judged: Judged,
    linearity: ClimbResult['linearity'],
  ): ClimbResult => {
    const { marginDb } = judged;
    const sentence = sayClimb({
      end,
      channel,
      gainDb,
      capDb,
      marginDb,
      wantedMarginDb: request.marginDb,
      bandHz,
      peakDb: judged.peakDb,
      soundLevelDb: soundLevel ? judged.cWeightedDb + soundLevel.offsetDb : null,
      targetDb,
      linearity,
    });
    return { end, gainDb, marginDb, sentence, linearity };
  };
  return { run };
}

const notLinear = trouble(
  'not-linear',
  'The level at the microphone does not follow the test signal: something changes it on the way. Switch off gain control, noise suppression and loudness or night modes, then climb again.',
);

/** Rough seconds a climb from one gain to another takes, its check included. */
function secondsToGo(fromDb: number, toDb: number): number {
  return 2 * Math.ceil(Math.max(toDb - fromDb, 0) / mostStepDb) + checkSeconds;
}
