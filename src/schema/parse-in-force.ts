import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import type { Layout } from '../system/channel';
import { usualFilters, type SettingsInForce } from '../system/declared-settings';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { parseJson, type FileKind } from './parse-json';
import { channelLabel, finite, groupId } from './schema-parts';
import { filters } from './settings-schema';

const file: FileKind = {
  get name() {
    return msg('list of settings in force');
  },
  format: 'leadline-in-force',
  versions: [1],
  get advice() {
    return msg(
      'It reads {"format": "leadline-in-force", "version": 1, "distanceMetres": {"FL": 2.4}, "trimDb": {"FL": -1.5}, "crossoverHz": {"fronts": 80, "sides": null}, "equaliser": "off"}; what is left out is not known.',
    );
  },
};

const within = (low: number, high: number) => v.pipe(finite, v.minValue(low), v.maxValue(high));

const schema = v.strictObject({
  format: v.literal('leadline-in-force'),
  version: v.literal(1),
  distanceMetres: v.optional(v.record(channelLabel, within(0, 100)), {}),
  trimDb: v.optional(v.record(channelLabel, within(-60, 60)), {}),
  crossoverHz: v.optional(v.record(groupId, v.nullable(within(10, 1000))), {}),
  equaliser: v.optional(v.picklist(['on', 'off', 'not known']), 'not known'),
  filters: v.optional(filters, usualFilters),
});

/**
 * Reads the text of a file of settings in force, metres, dB and Hz; null for full range. Refuses, as
 * a Trouble that says where and why, what does not fit, and channels the layout does not have.
 */
export function parseInForce(text: string, layout: Layout): SettingsInForce | Trouble {
  const parsed = parseJson(text, file, schema);
  if (isTrouble(parsed)) return parsed;
  const { distanceMetres, trimDb, crossoverHz, equaliser } = parsed;
  const has = new Set<string>(layout.channels.map(({ label }) => label));
  const stranger = [...Object.keys(distanceMetres), ...Object.keys(trimDb)].find(
    (label) => !has.has(label),
  );
  if (stranger === undefined) {
    return { distanceMetres, trimDb, crossoverHz, equaliser, filters: parsed.filters };
  }
  return trouble(
    'bad-file',
    msg(
      str`These settings name ${stranger}, which layout ${layout.name} does not have. Give those of the layout that was played.`,
    ),
  );
}
