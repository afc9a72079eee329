import { boxResponse } from './box';
import { divide, multiply, type Complex } from './complex';
import type { Bump, SpeakerModel } from './speaker';

/** Complex response of a speaker on axis in the free field at 1 m, its delay left out; hz ≥ 0. */
export function speakerResponse(speaker: SpeakerModel, hz: number): Complex {
  if (hz === 0) return [0, 0];
  const gain = 10 ** (speaker.gainDb / 20) * (speaker.inverted ? -1 : 1);
  let response: Complex = multiply(boxResponse(speaker.box, hz), [gain, 0]);
  if (speaker.protectionHz !== null) {
    response = multiply(response, butterworthHigh(hz / speaker.protectionHz));
  }
  return multiply(response, passbandResponse(speaker, hz));
}

/** The same without box, protection, gain and polarity: what shapes the passband. */
export function passbandResponse(speaker: SpeakerModel, hz: number): Complex {
  const { upper, bumps, tiltDbPerOctave, crossoverHz } = speaker;
  let response = fractionalSlope(tiltDbPerOctave, hz / 1000);
  for (const bump of bumps) response = multiply(response, bumpResponse(bump, hz));
  if (crossoverHz !== null) response = multiply(response, crossoverPhase(hz / crossoverHz));
  return multiply(response, upper.order === 2 ? pole2(hz / upper.hz) : pole4(hz / upper.hz));
}

/** (jw)^(slope/6.02): a straight line in dB per octave with its minimum phase. */
function fractionalSlope(dbPerOctave: number, w: number): Complex {
  const power = dbPerOctave / (20 * Math.log10(2));
  const angle = (Math.PI / 2) * power;
  const size = w ** power;
  return [size * Math.cos(angle), size * Math.sin(angle)];
}

/** (1 − w² + jw A/Q)/(1 − w² + jw/(A Q)) with A² the gain at the middle. */
function bumpResponse({ hz, gainDb, q }: Bump, at: number): Complex {
  const w = at / hz;
  const a = 10 ** (gainDb / 40);
  return divide([1 - w * w, (w * a) / q], [1 - w * w, w / (a * q)]);
}

/** All-pass of a Linkwitz-Riley-4 pair: (s² − √2 s + 1)/(s² + √2 s + 1). Source: Linkwitz, JAES 1976. */
function crossoverPhase(w: number): Complex {
  return divide([1 - w * w, -Math.SQRT2 * w], [1 - w * w, Math.SQRT2 * w]);
}

function butterworthHigh(w: number): Complex {
  return divide([-w * w, 0], [1 - w * w, Math.SQRT2 * w]);
}

function pole2(w: number): Complex {
  return divide([1, 0], [1 - w * w, Math.SQRT2 * w]);
}

function pole4(w: number): Complex {
  const first: Complex = [1 - w * w, 2 * Math.cos(Math.PI / 8) * w];
  const second: Complex = [1 - w * w, 2 * Math.cos((3 * Math.PI) / 8) * w];
  return divide([1, 0], multiply(first, second));
}
