import { lengthUnit, lengthNumber, lengthIntervalText } from '../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { intervalText, isNumber, numberText } from '../../src/locale/number-text';
import type { Lane } from './lane';

const head = () => [
  msg('Speaker'),
  msg('arrival, ms'),
  msg(str`distance, ${lengthUnit()}`),
  `90\u202f%, ${lengthUnit()}`,
  msg(str`over the ceiling, ${lengthUnit()}`),
  msg('level, dB'),
  '90\u202f%, dB',
  'polarity',
  msg('−3\u202fdB at, Hz'),
  '90\u202f%, Hz',
];

/** The table behind the chart of arrivals: every number of every reading. */
export function laneTable(lanes: readonly Lane[]): { head: string[]; rows: string[][] } {
  return {
    head: head(),
    rows: lanes.map(({ channel, reading }) => [
      channel,
      numberText(inMilliseconds(reading?.arrivalSeconds), 3),
      lengthNumber(reading?.distanceMetres, 3),
      lengthIntervalText(reading?.distanceInterval, 3),
      lengthNumber(reading?.ceilingPathMetres, 2),
      numberText(reading?.levelDb, 1),
      intervalText(reading?.levelInterval, 2),
      reading ? reading.polarity : '–',
      numberText(reading?.rolloff?.f3Hz.median, 0),
      intervalText(reading?.rolloff?.f3Hz.interval, 0),
    ]),
  };
}

/** The same numbers as tab-separated text with plain signs, for a spreadsheet. */
export function laneCopy(lanes: readonly Lane[]): string {
  const cell = (value: number | null | undefined, digits: number) =>
    isNumber(value) ? String(Number(value.toFixed(digits))) : '';
  const lines = lanes.map(({ channel, reading }) =>
    [
      channel,
      cell(inMilliseconds(reading?.arrivalSeconds), 4),
      cell(reading?.distanceMetres, 4),
      cell(reading?.distanceInterval?.[0], 4),
      cell(reading?.distanceInterval?.[1], 4),
      cell(reading?.ceilingPathMetres, 4),
      cell(reading?.levelDb, 2),
      cell(reading?.levelInterval?.[0], 4),
      cell(reading?.levelInterval?.[1], 4),
      reading?.polarity ?? '',
      cell(reading?.rolloff?.f3Hz.median, 2),
      cell(reading?.rolloff?.f3Hz.interval[0], 2),
      cell(reading?.rolloff?.f3Hz.interval[1], 2),
    ].join('\t'),
  );
  const names = [
    'speaker',
    msg('arrival ms'),
    msg('distance m'),
    msg('distance low m'),
    msg('distance high m'),
    msg('ceiling path m'),
    msg('level dB'),
    msg('level low dB'),
    msg('level high dB'),
    'polarity',
    'f3 Hz',
    msg('f3 low Hz'),
    msg('f3 high Hz'),
  ].join('\t');
  return `${names}\n${lines.join('\n')}\n`;
}

function inMilliseconds(seconds: number | null | undefined): number | null {
  return isNumber(seconds) ? seconds * 1000 : null;
}
