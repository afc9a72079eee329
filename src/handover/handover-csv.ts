import { csvTable } from '../inspect/csv-text';
import type { Handover } from './handover';

const heading = ['section', 'item', 'speaker', 'value', 'unit', 'text'];
const minus = '−';
const quantity = /^([+−-]?\d+(?:\.\d+)?)\s(\S+)$/;

/**
 * The record as comma-separated values, one fact a row: numbers plain, their unit beside them, with
 * a decimal point. The record is to be gathered in the plain locale; sentences are as they were said.
 */
export function handoverCsv(handover: Handover): string {
  const { session, layout, madeAt, simulated, processor, outputs, proof } = handover;
  const settings = outputs.flatMap(({ output, channel, distance, level, crossover }) => {
    const of = (name: string, text: string | null): string[][] =>
      channel === null || text === null ? [] : [row('settings', name, channel, text)];
    return [
      row('wiring', output, channel ?? '', channel === null ? 'open' : 'wired'),
      ...of('distance', distance),
      ...of('level trim', level),
      ...of('crossover', crossover),
    ];
  });
  return csvTable(heading, [
    row('session', 'name', '', session),
    row('session', 'layout', '', layout),
    row('session', 'made', '', madeAt),
    row('session', 'simulated', '', simulated ? 'yes' : 'no'),
    row('session', 'processor', '', processor ?? 'no sheet'),
    ...settings,
    ...handover.subs.map(({ name, value }) => row('subs', name, '', value)),
    ...(proof?.lines ?? []).map(({ claim, channels, verdict, sentence }) => [
      'proof',
      claim,
      channels.join(' '),
      verdict,
      '',
      sentence,
    ]),
    ...handover.conditions.map(({ name, value }) => row('conditions', name, '', value)),
    ...handover.cautions.map((text) => row('cautions', '', '', text)),
    ...(handover.notes === '' ? [] : [row('notes', '', '', handover.notes)]),
  ]);
}

function row(section: string, item: string, speaker: string, text: string): string[] {
  const [, value, unit] = quantity.exec(text) ?? [];
  return value === undefined || unit === undefined
    ? [section, item, speaker, '', '', text]
    : [section, item, speaker, value.replace(minus, '-').replace('+', ''), unit, ''];
}
