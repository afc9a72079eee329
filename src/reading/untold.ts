import { msg } from '@lit/localize';
import { channelKind } from '../system/channel-names';
import type { ChannelReading } from './reading';

/** What of a speaker's reading may be missing. */
export type UntoldNumber =
  | 'arrival'
  | 'distance'
  | 'ceiling path'
  | 'level'
  | 'polarity'
  | 'roll-off'
  | 'box'
  | 'bass margin'
  | 'peak to noise'
  | 'decay'
  | 'distortion';

/** A number that could not be told, and the sentence that says why and which one action settles it. */
export interface Untold {
  readonly what: UntoldNumber;
  readonly sentence: string;
}

/**
 * Every number of a reading that could not be told, each with its reason. The path over the ceiling
 * is missing only where a height was not timed at all; others are heard directly.
 */
export function untoldOf(reading: ChannelReading): Untold[] {
  const { rolloff, distortion } = reading;
  const isHeight = channelKind(reading.channel) === 'height';
  const missing: readonly (readonly [UntoldNumber, boolean])[] = [
    ['arrival', reading.arrivalSeconds === null || reading.arrivalInterval === null],
    ['distance', reading.distanceMetres === null || reading.distanceInterval === null],
    ['ceiling path', isHeight && reading.distanceMetres === null],
    ['level', reading.levelDb === null || reading.levelInterval === null],
    ['polarity', reading.polarity === 'cannot tell'],
    ['roll-off', rolloff === null],
    ['box', rolloff?.box.kind === 'cannot tell'],
    ['bass margin', reading.bassMarginDb === null],
    ['peak to noise', reading.peakToNoiseDb === null],
    ['decay', reading.decaySeconds === null],
    ['distortion', distortion?.kind !== 'curves'],
  ];
  return missing.flatMap(([what, isMissing]) =>
    isMissing ? [{ what, sentence: whyMissing(reading, what) }] : [],
  );
}

/** Words of the notes in which a number's absence is told. */
const tells: Readonly<Record<UntoldNumber, RegExp | null>> = {
  arrival: /\bno (arrival|distance)\b/i,
  distance: /\bno (arrival|distance)\b/i,
  'ceiling path': /\bno (arrival|distance)\b/i,
  level: /\bno level\b/i,
  polarity: /\bpolarity\b/i,
  'roll-off': /\bno roll-off\b|\blower end cannot be told\b/i,
  box: null,
  'bass margin': null,
  'peak to noise': /\bno arrival\b/i,
  decay: null,
  distortion: null,
};

function whyMissing(reading: ChannelReading, what: UntoldNumber): string {
  const { notes, faults, distortion } = reading;
  if (what === 'distortion' && distortion?.kind === 'cannot tell') return distortion.sentence;
  const told = tells[what];
  const noted = told && notes.find((note) => told.test(note));
  if (noted) return noted;
  // Of a segment that could not be read at all one sentence holds for everything.
  if (isUnread(reading)) return faults[0]?.sentence ?? notes.at(-1) ?? reasons[what](reading);
  return reasons[what](reading);
}

/** Where no note says more. */
const reasons: Readonly<Record<UntoldNumber, (reading: ChannelReading) => string>> = {
  arrival: () => msg('No arrival: it could not be timed. Repeat this speaker.'),
  distance: () => msg('No distance: it could not be timed. Repeat this speaker.'),
  'ceiling path': () =>
    msg('No path over the ceiling: it could not be timed. Repeat this speaker.'),
  level: ({ levelDb, margins }) =>
    levelDb === null
      ? msg('No level: it could not be read. Repeat this speaker.')
      : margins
        ? msg(
            'How far the level may be off beside another take cannot be told. Repeat this speaker together with the reference.',
          )
        : msg(
            'How far the level may be off cannot be told: the capture holds too little silence. Start the recording before the take.',
          ),
  polarity: () => msg('Polarity cannot be told. A reading close to the speaker would settle it.'),
  'roll-off': () => msg('No roll-off: it could not be read. Repeat this speaker.'),
  box: () =>
    msg(
      'Closed or vented: at a seat the room hides which. A reading close to the driver would settle it.',
    ),
  'bass margin': ({ margins }) =>
    margins
      ? msg(
          'How far the bass stands over the noise cannot be told: nowhere does it. More level would settle it.',
        )
      : msg(
          'How far the bass stands over the noise cannot be told: the capture holds too little silence. Start the recording before the take.',
        ),
  'peak to noise': () =>
    msg(
      'How far the response stands over the noise cannot be told without its arrival. More level would settle it.',
    ),
  decay: () =>
    msg(
      'How long the sound takes to die away cannot be told: it was not heard to fall by 45 dB or into steady noise. More level would settle it.',
    ),
  distortion: () => msg('No distortion: this take was read without it. Repeat the take.'),
};

function isUnread({ levelDb, rolloff, bassMarginDb, peakToNoiseDb }: ChannelReading): boolean {
  return [levelDb, rolloff, bassMarginDb, peakToNoiseDb].every((number) => number === null);
}
