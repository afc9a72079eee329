import { msg } from '@lit/localize';
import { contradictSheet, contradictTogether } from '../../../src/reading/contradict-together';
import type { ChannelReading, Estimate } from '../../../src/reading/reading';
import {
  heardInWords,
  togetherOf,
  type RolloffTogether,
} from '../../../src/reading/rolloff-together';
import { listInWords } from '../../../src/system/list-in-words';
import type { SpeakerModel } from '../../../src/system/speaker-models';
import { hzText, intervalText } from '../../../src/locale/number-text';

/** One model with what its speakers give together and each alone at this position. */
export interface ModelRow {
  readonly speakers: string;
  readonly joint: RolloffTogether['finding']['rolloff'];
  /** "3 seats and 2 speakers", or that there is no more than one reading. */
  readonly from: string;
  readonly alone: readonly string[];
}

/** What is shown of every model, in the order of the layout. */
export function modelRows(
  models: readonly SpeakerModel[],
  channels: readonly ChannelReading[],
  together: readonly RolloffTogether[],
): ModelRow[] {
  return models.map((model) => {
    const labels = model.channels.map(({ label }) => label);
    const found = labels[0] ? togetherOf(together, labels[0]) : null;
    return {
      speakers: labels.join(' '),
      joint: found?.finding.rolloff ?? null,
      from: found ? heardInWords(found.order) : msg('one reading alone'),
      alone: channels
        .filter(({ channel }) => labels.includes(channel))
        .map(({ channel, rolloff }) => `${channel} ${estimateText(rolloff?.f3Hz)}`),
    };
  });
}

/** "62 Hz, 55–70". */
export function estimateText(estimate: Estimate | undefined): string {
  return estimate
    ? `${hzText(estimate.median)}, ${intervalText(estimate.interval)}`
    : msg('cannot tell');
}

/** What cannot be of the roll-offs, each as a sentence. */
export function contradictions(
  channels: readonly ChannelReading[],
  together: readonly RolloffTogether[],
): string[] {
  const sheets = together.map(contradictSheet);
  const alone = channels.map((reading) => {
    const one = togetherOf(together, reading.channel);
    return one && contradictTogether(reading, one);
  });
  return [...sheets, ...alone].filter((one) => one !== null);
}

/** Doubts about what was read together, each with the speakers it is about. */
export function doubts(together: readonly RolloffTogether[]): string[] {
  return together.flatMap(({ order, finding }) =>
    finding.notes.map((note) => `${listInWords(order.channels)}: ${note}`),
  );
}
