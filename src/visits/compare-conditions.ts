import { temperatureText } from '../locale/temperature-text';
import { msg, str } from '@lit/localize';
import { microphoneName, soundLevelHere } from '../session/run/sound-level-here';
import type { SessionDocument } from '../session/document';
import { sameValue } from '../session/file/same-value';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { makeFinding } from './make-finding';
import type { VisitFinding } from './visits';

/** 2 °C change a distance of 3 m by 1 cm. */
const warmth: ChangeLimits = { allowed: 2, coarsest: 2 };
/** A thermometer read by eye. */
const halfCelsius = 0.5;

const rigs = {
  get practice() {
    return msg('the practice room');
  },
  get recording() {
    return msg('a recording of the take');
  },
  get live() {
    return msg('this computer’s output and microphone');
  },
} as const;

/** How the two sessions were measured: rig, temperature, microphone, its files and its setting. */
export function compareConditions(now: SessionDocument, before: SessionDocument): VisitFinding[] {
  const [is, was] = [now.microphone, before.microphone];
  return [
    told('rig', msg('Measured by'), rigs[before.rig], rigs[now.rig]),
    ...(now.rig === 'practice' && before.rig === 'practice'
      ? [told('room', msg('Practice room'), room(before), room(now))]
      : []),
    temperature(now, before),
    ...(now.rig === 'recording' || before.rig === 'recording'
      ? []
      : [told('microphone', msg('Microphone'), microphoneName(before), microphoneName(now))]),
    calibrationFile(now, before),
    told('orientation', msg('Orientation of the microphone'), was.orientation, is.orientation),
    told('sound level', msg('Sound level'), calibrated(before), calibrated(now)),
  ];
}

function told(about: string, what: string, was: string, is: string): VisitFinding {
  return makeFinding('conditions', about, {
    verdict: was === is ? 'as it was' : 'changed',
    sentence:
      was === is ? msg(str`${what}: ${is}, as then.`) : msg(str`${what}: ${is}; then: ${was}.`),
  });
}

function room({ practice: { seed } }: SessionDocument): string {
  return msg(str`number ${seed}`);
}

function calibrated(document: SessionDocument): string {
  return soundLevelHere(document) ? 'calibrated' : msg('not calibrated');
}

function temperature(now: SessionDocument, before: SessionDocument): VisitFinding {
  const [is, was] = [now.conditions.temperatureCelsius, before.conditions.temperatureCelsius];
  const verdict = judgeChange(is - was, halfCelsius, warmth);
  const [to, from] = [temperatureText(is), temperatureText(was)];
  return makeFinding('conditions', 'temperature', {
    verdict,
    sentence:
      is === was
        ? msg(str`Temperature: ${to}, as then.`)
        : msg(str`Temperature: ${to}; then: ${from}.`),
    figure: changeFigure(is - was, halfCelsius, warmth, '°C'),
    action: msg('Read the temperature in the room at every visit.'),
  });
}

function calibrationFile(now: SessionDocument, before: SessionDocument): VisitFinding {
  const [is, was] = [now.microphone.calibration, before.microphone.calibration];
  const [to, from] = [is?.name ?? msg('none'), was?.name ?? msg('none')];
  const isOther = is && was && to === from && !sameValue(is, was);
  if (!isOther) return told('calibration file', msg('Calibration file'), from, to);
  return makeFinding('conditions', 'calibration file', {
    verdict: 'changed',
    sentence: msg(str`Calibration file: ${to}, whose numbers are others than then.`),
  });
}
