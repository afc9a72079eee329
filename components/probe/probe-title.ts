import { msg, str } from '@lit/localize';
import { mostInverted } from '../../src/proposal/most-inverted';
import type { ChannelReading, Readings } from '../../src/reading/reading';
import type { BenchState } from '../../src/session/bench';
import type { Layout } from '../../src/system/channel';
import { partInWords } from '../strip/strip-words';
import { lengthText } from '../../src/locale/length-text';
import { durationText, isNumber } from '../../src/locale/number-text';
import { sayList } from '../../src/proposal/phrases';
import { currentReadings } from './take/take-lanes';

export interface TitleAndLede {
  readonly title: string;
  readonly lede: string;
}

/** What is going on, or what the newest take found, as a sentence. */
export function probeTitle(state: BenchState): TitleAndLede {
  const { activity, layout } = state;
  const count = layout.channels.length;
  switch (activity.kind) {
    case 'playing':
      return playingTitle(state);
    case 'waiting':
      return {
        title: msg('The next take waits for you'),
        lede: msg('Nothing sounds until you say so.'),
      };
    case 'reading': {
      const left = isNumber(activity.secondsLeft)
        ? msg(str`${durationText(activity.secondsLeft)} left. `)
        : '';
      return {
        title: msg(str`Reading the take: ${activity.channels.length} of ${count} speakers`),
        lede: msg(str`${left}The capture is kept, so nothing is lost if this is stopped.`),
      };
    }
    case 'idle':
    case 'walking':
    case 'noise':
    case 'climbing':
      return standingTitle(state);
  }
}

function standingTitle(state: BenchState): TitleAndLede {
  const { layout } = state;
  const count = layout.channels.length;
  const readings = currentReadings(state);
  if (readings) return findingTitle(readings, layout);
  if (state.readings) {
    return {
      title: msg(str`The last take was of ${state.readings.layout}`),
      lede: msg(str`The plan now says ${layout.title}: run a new take.`),
    };
  }
  return {
    title: nothingMeasured(state),
    lede: msg(
      str`One unbroken take plays all ${count} speakers in turn, so that their arrivals share one clock.`,
    ),
  };
}

function nothingMeasured({ layout, document: { takes, position } }: BenchState): string {
  const taken = takes.filter(({ purpose }) => purpose !== 'prove');
  if (taken.length === 0) return msg('Nothing measured yet');
  const here = taken.filter((take) => take.position.id === position.id);
  if (here.length === 0) return msg(str`Nothing measured at ${position.name} yet`);
  return here.every(({ schedule }) => schedule.layout !== layout.name)
    ? msg(str`Nothing measured of ${layout.title} yet`)
    : msg('Nothing measured yet');
}

function playingTitle(state: BenchState): TitleAndLede {
  const { activity } = state;
  if (activity.kind !== 'playing') return { title: '', lede: '' };
  const { phase, secondsLeft } = activity.play;
  const part = partInWords(state);
  const titles = {
    starting: msg('Starting the take'),
    settling: msg('Waking the outputs'),
    playing: activity.channel
      ? msg(str`Sweeping ${activity.channel}`)
      : msg('Listening to the quiet room'),
    finishing: msg('Ending the take'),
  };
  const still = state.document.rig === 'practice' ? '' : msg(' Please keep still and quiet.');
  const left = msg(str`${durationText(secondsLeft)} left${part ? msg(str` of ${part}`) : ''}.`);
  return { title: titles[phase], lede: `${left}${still}` };
}

function findingTitle(readings: Readings, layout: Layout): TitleAndLede {
  const count = layout.channels.length;
  const read = new Set(readings.channels.map(({ channel }) => channel));
  const missing = layout.channels.map(({ label }) => label).filter((label) => !read.has(label));
  const channelsWith = (test: (reading: ChannelReading) => boolean): string[] =>
    readings.channels.filter(test).map(({ channel }) => channel);
  const silent = channelsWith(({ faults }) => faults.some(({ kind }) => kind === 'silent'));
  const faulty = channelsWith(
    ({ faults, channel }) => faults.length > 0 && !silent.includes(channel),
  );
  const inverted = channelsWith(({ polarity }) => polarity === 'inverted');
  if (silent.length === readings.channels.length) {
    return {
      title: msg('Nothing was heard from any speaker'),
      lede: msg(
        'Check the microphone, the volume and the mute before the wires, then run the take again.',
      ),
    };
  }
  if (silent.length > 0) {
    return {
      title: msg(str`Nothing was heard from ${sayList(silent)}`),
      lede: msg(
        str`Check the wire, the amplifier and its standby, then run the take again.${
          faulty.length > 0 ? msg(' What else is wrong stands below.') : ''
        }`,
      ),
    };
  }
  if (faulty.length > 0) {
    return {
      title: msg(str`${sayList(faulty)} must be taken again`),
      lede: msg(
        str`What went wrong stands below. The other ${read.size - faulty.length} can be trusted.`,
      ),
    };
  }
  if (missing.length > 0) {
    return {
      title: msg(str`${read.size} of ${count} speakers are read`),
      lede: msg(str`No take has come to ${sayList(missing)} yet.`),
    };
  }
  if (mostInverted(readings.channels)) {
    return {
      title: msg('Most speakers read inverted'),
      lede: msg(
        'The microphone or its input may turn the polarity over: settle that before swapping any wires. Distances and crossovers stand as they are.',
      ),
    };
  }
  if (inverted.length > 0) {
    return {
      title: msg(
        str`${sayList(inverted)} ${inverted.length === 1 ? msg('plays') : msg('play')} inverted`,
      ),
      lede: msg(
        'Switch the amplifier off, swap plus and minus at one end of the cable, and run the take again.',
      ),
    };
  }
  return goodTitle(readings);
}

function goodTitle({ channels }: Readings): TitleAndLede {
  const placed = channels
    .filter(({ distanceMetres }) => isNumber(distanceMetres))
    .sort((a, b) => (a.distanceMetres ?? 0) - (b.distanceMetres ?? 0));
  const [near, far] = [placed[0], placed.at(-1)];
  const title = msg(str`All ${channels.length} speakers are read`);
  if (!near || !far || near === far)
    return { title, lede: msg('The settings stand under Propose.') };
  return {
    title,
    lede: msg(
      str`${near.channel} is nearest at ${lengthText(near.distanceMetres)}, ${far.channel} farthest at ${lengthText(far.distanceMetres)}. The settings stand under Propose.`,
    ),
  };
}
