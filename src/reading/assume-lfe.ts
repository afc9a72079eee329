import { msg, str } from '@lit/localize';
import { listInWords } from '../system/list-in-words';
import type { ChannelLabel, Layout } from '../system/channel';
import type { SettingsInForce } from '../system/declared-settings';
import { factorySettings } from '../system/processor-settings';
import type { Schedule } from '../take/schedule';

const { lowPassHz } = factorySettings.lfe;

/**
 * What was in force, with the low-pass that a processor puts on LFE where subs were played over it
 * and nothing was declared of theirs: bass that is redirected does not pass it, so it must not stay
 * in the readings of a sub. The very settings where nothing has to be assumed.
 */
export function assumeLfe(settings: SettingsInForce, { segments }: Schedule): SettingsInForce {
  const isOverLfe = segments.some(({ replayGainDb }) => replayGainDb !== 0);
  if (!isOverLfe || settings.crossoverHz.subs !== undefined) return settings;
  return { ...settings, crossoverHz: { ...settings.crossoverHz, subs: lowPassHz } };
}

/** What a take says of it, as sentences. */
export function assumedLfeNotes(
  { segments }: Schedule,
  { channels }: Layout,
  isAssumed: boolean,
): string[] {
  if (!isAssumed) return [];
  const over = segments.filter(({ replayGainDb }) => replayGainDb !== 0);
  const labels = channels.flatMap(({ label }): ChannelLabel[] =>
    over.some(({ channel }) => channel === label) ? [label] : [],
  );
  return [
    msg(
      str`${listInWords(labels)} ${labels.length === 1 ? msg('was') : msg('were')} played over LFE, and the low-pass of LFE is not declared: taken as ${lowPassHz} Hz, and divided out. Declare another, or none, as the low-pass of the subs under Patch, In force.`,
    ),
  ];
}
