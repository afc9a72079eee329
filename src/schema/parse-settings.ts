import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import type { Layout } from '../system/channel';
import { factorySettings, type ProcessorSettings } from '../system/processor-settings';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { parseJson, type FileKind } from './parse-json';
import { channelLabel, finite, groupId } from './schema-parts';
import { filters } from './settings-schema';

const file: FileKind = {
  get name() {
    return msg('list of typed settings');
  },
  format: 'leadline-settings',
  versions: [1],
  get advice() {
    return msg(
      'It reads {"format": "leadline-settings", "version": 1, "distanceMetres": {"FL": 2.4}, "trimDb": {"FL": -1.5}, "inverted": ["Sub 1"], "crossoverHz": {"fronts": 80, "sides": null}, "subLowPassHz": 150, "lowCutHz": null}; what is left out is at its factory value.',
    );
  },
};

const within = (low: number, high: number) => v.pipe(finite, v.minValue(low), v.maxValue(high));
const hz = v.nullable(within(5, 1000));

const schema = v.strictObject({
  format: v.literal('leadline-settings'),
  version: v.literal(1),
  distanceMetres: v.optional(v.record(channelLabel, within(-100, 100)), {}),
  trimDb: v.optional(v.record(channelLabel, within(-60, 60)), {}),
  inverted: v.optional(v.array(channelLabel), []),
  crossoverHz: v.optional(v.record(groupId, hz), {}),
  subLowPassHz: v.optional(hz, null),
  lowCutHz: v.optional(hz, null),
  lfe: v.optional(
    v.strictObject({ lowPassHz: within(20, 500), gainDb: within(-30, 30) }),
    factorySettings.lfe,
  ),
  filters: v.optional(filters, factorySettings.filters),
  equalised: v.optional(v.boolean(), false),
});

/**
 * Reads the text of a file of typed settings, metres, dB and Hz; null for full range or off. Refuses,
 * as a Trouble that says where and why, what does not fit, and channels the layout does not have.
 */
export function parseSettings(text: string, layout: Layout): ProcessorSettings | Trouble {
  const parsed = parseJson(text, file, schema);
  if (isTrouble(parsed)) return parsed;
  const { distanceMetres, trimDb, inverted, crossoverHz, subLowPassHz, lowCutHz } = parsed;
  const has = new Set<string>(layout.channels.map(({ label }) => label));
  const named = [...Object.keys(distanceMetres), ...Object.keys(trimDb), ...inverted];
  const stranger = named.find((label) => !has.has(label));
  if (stranger !== undefined) {
    return trouble(
      'bad-file',
      msg(
        str`These settings name ${stranger}, which layout ${layout.name} does not have. Give those of the layout that was played.`,
      ),
    );
  }
  const { lfe, equalised } = parsed;
  const typed = { distanceMetres, trimDb, inverted, crossoverHz, subLowPassHz, lowCutHz };
  return { ...typed, lfe, equalised, filters: parsed.filters };
}
