import { msg } from '@lit/localize';
import { powerToDb } from '../../dsp/level/decibels';
import type { OutputRoutes, Rig } from '../rig/port';
import type { SoundLevelCalibration } from '../microphone/calibration';
import type { ChannelLabel } from '../system/channel';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkLinearity, levelSpreadDb } from './check-linearity';
import { createClimbEar, type ClimbEar, type Hearing } from './climb-ear';
import { climbNoise, type ClimbNoise } from './climb-noise';
import { mostPeakDb, mostStepDb, nearDb, nextStep, whyEnd, type Limits } from './climb-limits';
import { climbProgress, secondsToGo } from './climb-progress';
import { sayClimb } from './climb-words';
import { openEar, type Ear } from './hear-line';
import { isRepeated, judgeHearing, type Judged } from './judge-hearing';
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
/** Drop after clipping, dB; clipping so often is no door that slammed. */
const clipDropDb = 12;
const mostClips = 3;
/** So often in a row the level may fail to follow the gain. */
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
    return trouble('bad-number', msg(`The highest gain must lie between −100 and 0 dB.`));
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
  const bins = ((bandHz[1] - bandHz[0]) * noise.period.length) / sampleRate;
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
        msg('The microphone clips while nothing plays. Turn its gain down and climb again.'),
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
      spreadDb: expectedPower === null ? 0 : spreadOf(floor, expectedPower),
      deafSeconds,
      mostDb,
      onHop: (hearing) => tell(hearing, floor),
    });

  const spreadOf = (floor: NoiseFloor, power: number): number =>
    levelSpreadDb(floor.bandPower / power, bins);

  const tell = (hearing: Hearing, floor: NoiseFloor): void => {
    const { marginDb } = judgeHearing(hearing, floor, noise, sampleRate);
    if (checkedSeconds !== null) checkedSeconds += hears.hopSeconds;
    const wantedMarginDb = request.marginDb;
    const how = { gainDb, startDb, capDb, marginDb, wantedMarginDb, checkedSeconds };
    const { soundLevel } = hearing;
    options.onState({ gainDb, marginDb, soundLevel, ...climbProgress(how) });
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
    let first: Level | null = null;
    for (;;) {
      const settled: Settled | Trouble = await settle(floor, least, expected, deaf);
      if (isTrouble(settled)) return settled;
      const judged = judgeHearing(settled.hearing, floor, noise, sampleRate);
      if (judged.power > 0) first ??= { gainDb, power: judged.power };
      const isLazy = first !== null && hasBarelyRisen(first, { gainDb, power: judged.power });
      const isOff = judged.isHeld || isLazy || (!settled.follows && judged.power > 0);
      offs = isOff ? offs + 1 : 0;
      if (offs >= mostOffs) return notLinear();
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
    const count = bins * periods;
    return { checked: checkLinearity({ louder, quieter, floor: floor.bandPower, count }) };
  };

  /** Mean power of the speaker over so many periods from now on: what repeats, without hum. */
  const meanPower = async (periods: number, floor: NoiseFloor): Promise<number | Trouble> => {
    const hum = isRepeated(floor) ? floor.repeatedPower : 0;
    let sum = 0;
    for (let hop = 1; hop <= 4 * periods; hop++) {
      const hearing = await hears.listen();
      if (isTrouble(hearing)) return hearing;
      tell(hearing, floor);
      if (hop % 4 === 0) sum += hearing.repeatedPower - hum;
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

interface Level {
  readonly gainDb: number;
  readonly power: number;
}

/** Whether a level rose by less than half of what the gain did, over 6 dB or more. */
function hasBarelyRisen(first: Level, now: Level): boolean {
  const askedDb = now.gainDb - first.gainDb;
  return askedDb >= mostStepDb && powerToDb(now.power / first.power) < askedDb / 2 - nearDb;
}

const notLinear = () =>
  trouble(
    'not-linear',
    msg(
      'The level at the microphone does not follow the test signal: something changes it on the way. Switch off gain control, noise suppression and loudness or night modes, then climb again.',
    ),
  );
