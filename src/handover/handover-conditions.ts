import { msg, str } from '@lit/localize';
import { sayMetres, sayNumber } from '../proposal/phrases';
import type { SessionDocument, TakePurpose } from '../session/document';
import { microphoneName, soundLevelHere } from '../session/run/sound-level-here';
import { takesHere } from '../session/take-record';
import type { HandedOver } from './handed-over';
import type { HandoverFact } from './handover';

const rigs = {
  get practice() {
    return msg('practice room, simulated');
  },
  get recording() {
    return msg('a recording of the take');
  },
  get live() {
    return msg('this computer’s output and microphone');
  },
} as const;

/** How it was measured: by what, when, where and how quiet it was. */
export function handoverConditions({ document, readings, proof }: HandedOver): HandoverFact[] {
  const { calibration, orientation } = document.microphone;
  const read = proof?.readings ?? readings;
  const celsius = read?.temperatureCelsius ?? document.conditions.temperatureCelsius;
  return [
    { name: msg('Measured by'), value: rigs[document.rig] },
    { name: msg('Measured on'), value: lastTaken(document, 'probe') },
    { name: msg('Proved on'), value: lastTaken(document, 'prove') },
    { name: msg('Position'), value: document.position.name },
    {
      name: msg('Microphone'),
      value: document.rig === 'recording' ? msg('that of the recording') : microphoneName(document),
    },
    { name: msg('Orientation'), value: orientation },
    { name: msg('Calibration file'), value: calibration?.name ?? 'none' },
    { name: msg('Temperature'), value: `${sayNumber(celsius, 1)} °C` },
    { name: msg('Room noise'), value: noiseText(document, read?.capture.noiseFloorDb ?? null) },
    ...(readings
      ? [
          {
            name: msg('Times refer to'),
            value: msg(
              str`${readings.reference} at ${sayMetres(readings.referenceDistanceMetres)}`,
            ),
          },
        ]
      : []),
  ];
}

function noiseText(document: SessionDocument, db: number | null): string {
  if (db === null || !Number.isFinite(db)) return msg('not known');
  const calibration = soundLevelHere(document);
  const unweighted = `${sayNumber(db, 1)} dBFS`;
  return calibration
    ? msg(str`${unweighted}, ${sayNumber(db + calibration.offsetDb, 0)} dB SPL, unweighted`)
    : msg(str`${unweighted}, no level calibration`);
}

/** Day and minute of the newest take that is read, in UTC. */
function lastTaken(document: SessionDocument, purpose: TakePurpose): string {
  const newest = takesHere(document, purpose).findLast(({ readings }) => readings !== null);
  return newest ? sayTime(newest.startedAt) : msg('not yet');
}

/** An ISO 8601 time to the minute: "2025-01-01 00:01 UTC". */
export function sayTime(iso: string): string {
  return iso.endsWith('Z') ? msg(str`${iso.slice(0, 16).replace('T', ' ')} UTC`) : iso;
}
