import { msg, str } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import { dbText, durationText } from '../../src/locale/number-text';
import { soundInWords } from '../strip/strip-words';
import { probeTitle, type TitleAndLede } from './probe-title';
import type { SheetId } from './probe-sheets';
import { previewSentence } from './routing/route-preview';

/** What a sheet of Probe has to say, as a sentence. */
export function sheetTitle(state: BenchState, sheet: SheetId): TitleAndLede {
  switch (sheet) {
    case 'connect':
      return connectTitle(state);
    case 'microphone':
      return microphoneTitle(state);
    case 'level':
      return levelTitle(state);
    case 'take':
      return probeTitle(state);
    case 'noise':
      return noiseTitle(state);
    case 'inspect':
      return inspectTitle(state);
  }
}

function inspectTitle({ readings, document }: BenchState): TitleAndLede {
  return readings
    ? {
        title: msg('A look into the sound itself'),
        lede: msg(str`Of the takes at ${document.position.name}, speaker by speaker.`),
      }
    : {
        title: msg('There is nothing to inspect yet'),
        lede: msg('A take brings the sound to look into.'),
      };
}

function connectTitle(state: BenchState): TitleAndLede {
  switch (state.document.rig) {
    case 'practice':
      return {
        title: msg('The practice room needs no wires'),
        lede: msg('Everything of Probe runs in it, and all that comes out is marked as simulated.'),
      };
    case 'recording':
      return {
        title: msg('The take travels as a file'),
        lede: msg('For systems this computer cannot be wired to.'),
      };
    case 'live':
      return { title: msg('This computer plays and listens'), lede: previewSentence(state) };
  }
}

function microphoneTitle({ document }: BenchState): TitleAndLede {
  const { calibration, soundLevel } = document.microphone;
  if (calibration && soundLevel) {
    return {
      title: msg('The microphone is calibrated in response and in level'),
      lede: msg(str`Its own response by ${calibration.name} is taken out of every reading.`),
    };
  }
  if (calibration) {
    return {
      title: msg(str`Readings are corrected by ${calibration.name}`),
      lede: msg(
        'Sound levels are not calibrated; distances, crossovers and trims do not need that.',
      ),
    };
  }
  if (soundLevel) {
    return {
      title: msg('The microphone is calibrated in level only'),
      lede: msg('Without a calibration file its own response stays in the readings.'),
    };
  }
  return {
    title: msg('Nothing is known of the microphone yet'),
    lede: msg(
      'Distances, crossovers and trims do not need it; true responses and sound levels do.',
    ),
  };
}

function levelTitle(state: BenchState): TitleAndLede {
  const { activity, document, climbed } = state;
  if (activity.kind === 'climbing') {
    return {
      title: msg('Climbing to a test level'),
      lede: msg(
        str`${durationText(activity.climb.secondsLeft)} left at most. Please keep still and quiet.`,
      ),
    };
  }
  if (document.rig === 'recording') {
    return { title: msg('The level is set where the take is played'), lede: '' };
  }
  const level = dbText(
    document.rig === 'practice' && climbed ? climbed.gainDb : document.live.gainDb,
  );
  if (!climbed) {
    return {
      title: msg(str`Takes play at ${level}`),
      lede: msg('Start quiet: leave the room or wear hearing protection when it gets loud.'),
    };
  }
  const good = climbed.end === 'margin' || climbed.end === 'target';
  return {
    title: good ? msg(str`${level} is loud enough for takes`) : msg(str`Takes play at ${level}`),
    lede: msg('Start quiet: leave the room or wear hearing protection when it gets loud.'),
  };
}

function noiseTitle(state: BenchState): TitleAndLede {
  const { activity, document } = state;
  if (activity.kind === 'noise') {
    const { complete, secondsLeft } = activity.noise;
    return {
      title: soundInWords(state),
      lede: complete
        ? msg(
            'The average is complete and goes on moving; keep the reading, or change the speaker.',
          )
        : msg(str`${durationText(secondsLeft)} left of the average. Please keep still and quiet.`),
    };
  }
  if (document.rig === 'recording') {
    return {
      title: msg('Noise needs a microphone at this computer'),
      lede: msg('Choose Live or the practice room under Connect.'),
    };
  }
  return {
    title: msg('Pink noise shows a speaker while you work on it'),
    lede: msg('Its spectrum follows what you move within seconds; a take is more exact.'),
  };
}
