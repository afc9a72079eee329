import { dbText, numberText, trimmedText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { compareDrive, type DriveChange } from '../../dsp/distortion/compare-drive';
import { lowestAtLevel, type LowestFrequency } from '../../dsp/distortion/lowest-at-level';
import type { Channel } from '../system/channel';
import type { DistortionReading } from './reading';

/** What was read of one speaker at one level of drive; only differences of drive count. */
export interface DrivenDistortion {
  readonly driveDb: number;
  readonly distortion: DistortionReading;
}

/** How low a speaker may be asked to play at a level, for one limit of distortion. */
export interface LowestReading {
  readonly driveDb: number;
  /** Total harmonic distortion, percent. */
  readonly percent: number;
  readonly found: LowestFrequency;
  /** The finding with its grounds, and where it cannot be told what would settle it. */
  readonly sentence: string;
}

export interface DriveReading {
  /** One per level that could be read, rising; empty when none could. */
  readonly levels: readonly DriveChange[];
  readonly lowest: readonly LowestReading[];
  /** Levels that could not be read, and what a comparison lacks. */
  readonly notes: readonly string[];
}

export const percents = [3, 5, 10] as const;
const compressionDb = 1;
/** The walk down begins here, Hz. */
const fromHz = { main: 300, sub: 120 } as const;

/**
 * Takes of one speaker at one position: gain and distortion at each level of drive, and the lowest
 * frequency it can be asked for at each, under 3, 5 and 10 % and with less than 1 dB lost. With one
 * level compression is not known. Throws RangeError when two levels are the same.
 */
export function readDrives(channel: Channel, takes: readonly DrivenDistortion[]): DriveReading {
  const curves = takes.flatMap(({ driveDb, distortion }) =>
    distortion.kind === 'curves' ? [{ driveDb, reading: distortion }] : [],
  );
  const notes = takes.flatMap(({ driveDb, distortion }) =>
    distortion.kind === 'curves'
      ? []
      : [msg(str`At ${dbText(driveDb, 0)}: ${distortion.sentence}`)],
  );
  const [only] = curves;
  const levels: readonly DriveChange[] =
    curves.length > 1
      ? compareDrive(curves)
      : only
        ? [{ ...only, gainChangeDb: [], spreadDb: [], medianChangeDb: null }]
        : [];
  const lone = msg(
    'Compression cannot be told from one level. Take the same position 6 dB louder.',
  );
  return {
    levels,
    lowest: levels.flatMap((level) => percents.map((percent) => lowestOf(channel, level, percent))),
    notes: levels.length === 1 ? [...notes, lone] : notes,
  };
}

function lowestOf(channel: Channel, level: DriveChange, percent: number): LowestReading {
  const found = lowestAtLevel(level, {
    distortion: percent / 100,
    compressionDb,
    fromHz: channel.kind === 'sub' ? fromHz.sub : fromHz.main,
  });
  const { driveDb } = level;
  const name = channel.name.charAt(0).toUpperCase() + channel.name.slice(1);
  const sentence = msg(str`${name} at ${dbText(driveDb, 0)}: ${sentenceOf(found, percent)}`);
  return { driveDb, percent, found, sentence };
}

function sentenceOf(found: LowestFrequency, percent: number): string {
  if (found.kind === 'told') {
    const [low, high] = found.interval.map((hz) => numberText(hz, 0));
    const why =
      found.decidedBy === 'distortion'
        ? msg(str`distortion passes ${withUnit(trimmedText(percent, 1), '%')}`)
        : msg(str`more than ${dbText(compressionDb, 0)} is lost`);
    return msg(
      str`down to ${withUnit(numberText(found.hz, 0), 'Hz')} (${low} to ${high}); below, ${why}.`,
    );
  }
  if (found.kind === 'not reached') {
    return msg(
      str`stays under ${withUnit(trimmedText(percent, 1), '%')} down to ${withUnit(numberText(found.hz, 0), 'Hz')}, the lowest that was read.`,
    );
  }
  const to = found.passesTo;
  const kept =
    to === null ? '' : msg(str` It stays under down to ${withUnit(numberText(to, 0), 'Hz')}.`);
  return msg(
    str`cannot tell where distortion passes ${withUnit(trimmedText(percent, 1), '%')}: ${hiders[found.hiddenBy]}.${kept} ${actions[found.hiddenBy]}.`,
  );
}

const hiders = {
  get noise() {
    return msg('the noise hides it');
  },
  get decay() {
    return msg("the room's decay covers it");
  },
  get band() {
    return msg('the sweep ends below its harmonics');
  },
} as const;

const actions = {
  get noise() {
    return msg('Average four sweeps');
  },
  get decay() {
    return msg('Use a sweep of twice the length');
  },
  get band() {
    return msg('Use a sweep that goes higher');
  },
} as const;
