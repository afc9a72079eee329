import { shortLengthText } from '../../src/locale/length-text';
import { stateWord } from '../../src/locale/state-words';
import { msg, str } from '@lit/localize';
import type { ChannelReading } from '../../src/reading/reading';
import type { ChannelLabel } from '../../src/system/channel';
import { isNumber, millisecondsText } from '../../src/locale/number-text';

/** What a lane waits for, or that its reading is there. */
export type LaneStage = 'idle' | 'waiting' | 'sweeping' | 'heard' | 'reading' | 'read';

/** One speaker's lane in the chart of arrivals. */
export interface Lane {
  readonly channel: ChannelLabel;
  /** Plain name, such as "side left". */
  readonly name: string;
  /** CSS colour. */
  readonly colour: string;
  readonly stage: LaneStage;
  readonly reading: ChannelReading | null;
  /** The reading is of an earlier take and may be replaced by the one that runs. */
  readonly earlier?: boolean;
}

const stageWords: Readonly<Record<Exclude<LaneStage, 'read'>, string>> = {
  idle: '',
  waiting: '',
  get sweeping() {
    return msg('sweeping now');
  },
  get heard() {
    return msg('heard, not read yet');
  },
  get reading() {
    return msg('reading now');
  },
};

/** What a lane says along its line when it has no arrival to show. */
export function laneWords({ stage, reading }: Lane): string {
  if (stage !== 'read') return stageWords[stage];
  if (!reading || reading.faults.some(({ kind }) => kind === 'silent')) return msg('nothing heard');
  return reading.distanceMetres === null ? msg('no arrival to be told') : '';
}

const faultWords = {
  get lost() {
    return msg('lost audio');
  },
  get repeated() {
    return msg('repeated audio');
  },
  get clipped() {
    return msg('clipped');
  },
  get silent() {
    return msg('silent');
  },
  get gain() {
    return msg('gain changed');
  },
  get bang() {
    return msg('a bang');
  },
  get rumble() {
    return msg('rumble');
  },
  get hum() {
    return msg('hum');
  },
  get voice() {
    return msg('a voice');
  },
  get noisy() {
    return msg('noisy');
  },
} as const;

/** What is wrong with a reading, in a word or two each. */
export function laneFaults(reading: ChannelReading | null): string[] {
  if (!reading) return [];
  const kinds = [...new Set(reading.faults.map(({ kind }) => kind))];
  return [
    ...(reading.polarity === 'inverted' ? [stateWord('inverted')] : []),
    ...kinds.filter((kind) => kind !== 'silent').map((kind) => faultWords[kind]),
  ];
}

/**
 * A lane as a screen reader says it. It begins with what stands on the lane, `marks` included, so
 * that who speaks to the page can say what they see.
 */
export function laneSentence(lane: Lane, marks: readonly string[] = []): string {
  const { channel, name, stage, reading } = lane;
  const words = laneWords(lane);
  const faults = laneFaults(reading);
  const end = [words, ...(stage === 'read' ? faults : [])].filter((text) => text !== '');
  const parts = [[channel, ...marks, end.join(', ')].join(' ').trim(), name];
  if (stage === 'read' && isNumber(reading?.distanceMetres)) {
    parts.push(msg(str`arrival ${millisecondsText(reading.arrivalSeconds)}`));
    if (marks.length === 0) parts.push(shortLengthText(reading.distanceMetres));
  } else if (words === '') {
    parts.push(stage === 'waiting' ? 'waiting' : msg('not measured'));
  }
  if (lane.earlier) parts.push(msg('from an earlier take'));
  return [...parts, ...(stage === 'read' ? [] : faults)].join(', ');
}
