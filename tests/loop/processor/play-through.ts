import { slipInTyping, type PracticeSlip } from '../../../src/rig/practice-slips';
import type { Channel, ChannelLabel, Layout } from '../../../src/system/channel';
import type { ProcessorSettings } from '../../../src/system/processor-settings';
import {
  butterworth,
  equaliserBand,
  filtered,
  linkwitzRiley,
  type Section,
} from './digital-filter';

/** A processor before the speakers of the loop's room, sample by sample as such a box works. */
export interface LoopProcessor {
  readonly typed: ProcessorSettings;
  readonly slips: readonly PracticeSlip[];
}

/** A room's speakers, each by its impulse response to the microphone, wires as they are now. */
export interface Speakers {
  readonly layout: Layout;
  readonly sampleRate: number;
  response(speaker: ChannelLabel): Float64Array;
  /** Whether its switch is on. */
  isOn(speaker: ChannelLabel): boolean;
}

/** Filters of a processor ring on for a while, in samples beside the room. */
const ringing = 8192;
/** What the processor counts with, m/s. */
const metresPerSecond = 343;

/**
 * What the microphone hears of an input of the processor: of a main its own speaker through a
 * high-pass and the subs through a low-pass, of 'LFE' the subs alone.
 */
export function playThrough(
  processor: LoopProcessor,
  speakers: Speakers,
  input: ChannelLabel | 'LFE',
): Float64Array {
  const { layout, sampleRate } = speakers;
  const settings = slipInTyping(processor.typed, processor.slips);
  const subs = layout.channels.filter(({ kind }) => kind === 'sub');
  const farthest = Math.max(
    0,
    ...layout.channels.flatMap(({ label }) => settings.distanceMetres[label] ?? []),
  );
  let sum: Float64Array | null = null;
  const add = (speaker: ChannelLabel, sections: readonly Section[], gainDb: number): void => {
    if (!speakers.isOn(speaker)) return;
    const room = speakers.response(speaker);
    const metres = settings.distanceMetres[speaker] ?? farthest;
    const late = Math.round(((farthest - metres) / metresPerSecond) * sampleRate);
    const turned = settings.inverted.includes(speaker) ? -1 : 1;
    const gain = turned * 10 ** ((gainDb + (settings.trimDb[speaker] ?? 0)) / 20);
    const own = new Float64Array(room.length + ringing);
    own.set(room.map((value) => gain * value).subarray(0, own.length - late), late);
    const heard = filtered(own, [
      ...sections,
      ...equaliserOf(processor, speaker, sampleRate),
      ...ownFiltersOf(processor, speaker, sampleRate),
    ]);
    sum = sum ? sum.map((value, n) => value + (heard[n] ?? 0)) : heard;
  };
  const toSubs = (lowPassHz: number, gainDb: number): void => {
    for (const { label } of subs) {
      add(
        label,
        [...lowPass(settings, lowPassHz, sampleRate), ...bassFilters(settings, sampleRate)],
        gainDb,
      );
    }
  };
  if (input === 'LFE') {
    toSubs(settings.lfe.lowPassHz, settings.lfe.gainDb);
  } else {
    const channel = layout.channels.find(({ label }) => label === input);
    if (!channel) throw new RangeError(`the layout has no ${input}`);
    playMain(channel);
  }
  for (const slip of processor.slips) {
    if (slip.kind === 'upmixing' && slip.to !== input && input !== 'LFE') {
      add(slip.to, [], slip.gainDb);
    }
  }
  return sum ?? new Float64Array(1);

  function playMain({ label, group }: Channel): void {
    const hz = settings.crossoverHz[group] ?? null;
    if (hz === null) return add(label, [], 0);
    const { family, order } = settings.filters.highPass;
    const make = family === 'Linkwitz-Riley' ? linkwitzRiley : butterworth;
    add(label, make('high-pass', order, hz, sampleRate), 0);
    toSubs(hz, 0);
  }
}

function lowPass({ filters }: ProcessorSettings, hz: number, sampleRate: number): Section[] {
  const { family, order } = filters.subLowPass;
  const make = family === 'Linkwitz-Riley' ? linkwitzRiley : butterworth;
  return make('low-pass', order, hz, sampleRate);
}

/** What all bass on its way to the subs passes. */
function bassFilters(settings: ProcessorSettings, sampleRate: number): Section[] {
  const { subLowPassHz, lowCutHz } = settings;
  return [
    ...(subLowPassHz === null ? [] : lowPass(settings, subLowPassHz, sampleRate)),
    ...(lowCutHz === null ? [] : butterworth('high-pass', 2, lowCutHz, sampleRate)),
  ];
}

function equaliserOf(
  { slips }: LoopProcessor,
  speaker: ChannelLabel,
  sampleRate: number,
): Section[] {
  return slips.flatMap((slip) =>
    slip.kind === 'equaliser' && slip.channels.includes(speaker)
      ? [
          equaliserBand(160, slip.gainDb, 0.8, sampleRate),
          equaliserBand(4000, -slip.gainDb, 0.8, sampleRate),
        ]
      : [],
  );
}

/** A low-pass at the back of a sub that was left on. */
function ownFiltersOf(
  { slips }: LoopProcessor,
  speaker: ChannelLabel,
  sampleRate: number,
): Section[] {
  return slips.flatMap((slip) =>
    slip.kind === 'own low-pass' && slip.channels.includes(speaker)
      ? butterworth('low-pass', slip.order, slip.hz, sampleRate)
      : [],
  );
}
