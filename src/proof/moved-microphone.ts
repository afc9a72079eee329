import { smallLengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import type { Findings } from './findings';

/** Nearer than this nobody need put a microphone back, m. */
const harmlessMetres = 0.03;
/** By how much a level from 500 to 2000 Hz, and a third octave, differ per metre, dB; simulated rooms. */
const levelPerMetre = 12;
const thirdOctavePerMetre = 27;

type Moved = Pick<Findings, 'movedMetres'>;

/** How much a microphone that moved makes levels unsure, dB. */
export function unsureLevelDb({ movedMetres }: Moved): number {
  return levelPerMetre * movedMetres;
}

/** How much it makes third octaves unsure, dB. */
export function unsureShapeDb({ movedMetres }: Moved): number {
  return thirdOctavePerMetre * movedMetres;
}

/** What the proof has to say of the microphone's place; null where it stands as before. */
export function sayMoved({ movedMetres }: Moved): string | null {
  if (movedMetres < harmlessMetres) return null;
  const about = smallLengthText(movedMetres);
  return msg(
    str`The microphone seems to stand about ${about} from where the system was read, so that less can be told. ${putBack()}`,
  );
}

/** The action for a line that cannot be told; null where the microphone is not the reason. */
export function actionIfMoved(findings: Findings): string | null {
  return sayMoved(findings) && putBack();
}

const putBack = () =>
  msg(
    'Put it where it stood, or read the system again in Probe where it stands now, then prove again.',
  );
