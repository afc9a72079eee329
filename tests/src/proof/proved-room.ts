import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { quantise } from '../../../src/proposal/quantise';
import { judgeProof } from '../../../src/proof/judge-proof';
import type { Proof } from '../../../src/proof/proof';
import { readTake } from '../../../src/reading/read-take';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import { renderCapture } from '../../../src/rig/practice-capture';
import type { PracticeProcessor } from '../../../src/rig/practice-processor';
import type { PracticeSlip } from '../../../src/rig/practice-slips';
import { practiceSystem, type PracticeSystem } from '../../../src/rig/practice-system';
import type { Channel, ChannelLabel, GroupId, Layout } from '../../../src/system/channel';
import { layoutFromName } from '../../../src/system/layout';
import { factorySettings, type ProcessorSettings } from '../../../src/system/processor-settings';
import { firstProvingAttempt, planTake } from '../../../src/take/plan-take';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';

/** A practice room that was read, with settings for it, to be proved as often as one likes. */
export interface ProvedRoom {
  readonly layout: Layout;
  readonly before: Readings;
  readonly typed: ProcessorSettings;
  readonly after: (slips: readonly PracticeSlip[]) => Promise<Readings>;
  readonly prove: (slips: readonly PracticeSlip[]) => Promise<Proof>;
}

const steps = defaultProcessorSteps;
const settings = { sweepSeconds: 1, averages: 1, pauseSeconds: 0, overlap: false, repeats: 0 };

/** Reads the room of a seed and finds settings for it by the plainest rules. */
export async function proveRoom(name: string, seed: number): Promise<ProvedRoom> {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const system = practiceSystem(layout, seed);
  const before = await hear(system, scheduleOf(layout, false), null);
  const typed = plainSettings(layout, before);
  const schedule = scheduleOf(layout, true);
  const after = (slips: readonly PracticeSlip[]): Promise<Readings> =>
    hear(system, schedule, { typed, slips });
  return {
    layout,
    before,
    typed,
    after,
    prove: async (slips) => judgeProof({ layout, typed, steps, before, after: await after(slips) }),
  };
}

function scheduleOf(layout: Layout, proves: boolean): Schedule {
  const options = proves ? { attempt: firstProvingAttempt, throughLfe: true } : {};
  const plan = planTake(layout, settings, null, options);
  if (isTrouble(plan)) throw new RangeError(plan.sentence);
  const [part] = plan.parts;
  if (!part) throw new RangeError(`${layout.name} has no speakers`);
  return part.schedule;
}

async function hear(
  system: PracticeSystem,
  schedule: Schedule,
  processor: PracticeProcessor | null,
): Promise<Readings> {
  const samples = await renderCapture(system, schedule, { processor });
  if (!samples) throw new RangeError('the rendering must run to its end');
  const readings = await readTake(
    schedule,
    { samples, sampleRate: 48000 },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true, inForce: null },
  );
  if (isTrouble(readings)) throw new RangeError(readings.sentence);
  return readings;
}

/**
 * Distances by arrival, trims by level, crossovers at 1.25 times the highest f6, all in the steps
 * of a usual processor.
 */
export function plainSettings(layout: Layout, readings: Readings): ProcessorSettings {
  const of = (label: ChannelLabel): ChannelReading | null =>
    readings.channels.find(({ channel }) => channel === label) ?? null;
  const each = (value: (reading: ChannelReading) => number | null) =>
    Object.fromEntries(
      layout.channels.flatMap(({ label }): [ChannelLabel, number][] => {
        const reading = of(label);
        const found = reading && value(reading);
        return found === null ? [] : [[label, found]];
      }),
    );
  const target = of(readings.reference)?.levelDb ?? 0;
  const groups = [...new Set(layout.channels.map(({ group }) => group))];
  return {
    ...factorySettings,
    distanceMetres: each(({ ceilingPathMetres, distanceMetres }) => {
      const metres = ceilingPathMetres ?? distanceMetres;
      return metres === null
        ? null
        : quantise(metres, steps.distanceStepMetres, steps.distanceRangeMetres);
    }),
    trimDb: each(({ levelDb }) =>
      levelDb === null ? null : quantise(target - levelDb, steps.levelStepDb, steps.levelRangeDb),
    ),
    inverted: readings.channels.flatMap(({ channel, polarity }) =>
      polarity === 'inverted' && !channel.startsWith('Sub') ? [channel] : [],
    ),
    crossoverHz: Object.fromEntries(
      groups.flatMap((group): [GroupId, number][] =>
        group === 'subs' ? [] : [[group, crossoverOf(layout.channels, group, of)]],
      ),
    ),
  };
}

function crossoverOf(
  channels: readonly Channel[],
  group: GroupId,
  of: (label: ChannelLabel) => ChannelReading | null,
): number {
  const f6 = channels.flatMap((one) =>
    one.group === group ? (of(one.label)?.rolloff?.f6UpperHz ?? []) : [],
  );
  const least = 1.25 * Math.max(0, ...f6);
  return steps.crossoverHz.find((hz) => hz >= least) ?? 200;
}
