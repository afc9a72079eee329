import { msg, str } from '@lit/localize';
import { stateWord } from '../locale/state-words';
import { utcText } from '../locale/date-text';
import { temperatureText } from '../locale/temperature-text';
import { dbText, numberText, withUnit } from '../locale/number-text';
import { sayMetres } from '../proposal/phrases';
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
    { name: msg('Orientation'), value: stateWord(orientation) },
    { name: msg('Calibration file'), value: calibration?.name ?? msg('none') },
    { name: msg('Temperature'), value: temperatureText(celsius) },
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
  const unweighted = withUnit(numberText(db, 1), 'dBFS');
  return calibration
    ? msg(str`${unweighted}, ${dbText(db + calibration.offsetDb, 0)} SPL, unweighted`)
    : msg(str`${unweighted}, no level calibration`);
}

/** Day and minute of the newest take that is read, in UTC. */
function lastTaken(document: SessionDocument, purpose: TakePurpose): string {
  const newest = takesHere(document, purpose).findLast(({ readings }) => readings !== null);
  return newest ? utcText(newest.startedAt) : msg('not yet');
}
