import { boxSection } from './box';
import {
  butterworthHigh,
  butterworthLow,
  crossoverAllPass,
  peak,
  sectionsAt,
  type Complex,
  type Section,
} from './section';
import type { SpeakerModel } from './speaker';

/** Complex response of a speaker on axis in the free field at 1 m, its delay left out; hz ≥ 0. */
export function speakerResponse(speaker: SpeakerModel, hz: number): Complex {
  return speakerResponses(speaker)(hz);
}

/** speakerResponse of one speaker, prepared for many frequencies. */
export function speakerResponses(speaker: SpeakerModel): (hz: number) => Complex {
  const sections = [boxSection(speaker.box), ...passbandSections(speaker)];
  if (speaker.protectionHz !== null) sections.push(butterworthHigh(speaker.protectionHz));
  const gain = 10 ** (speaker.gainDb / 20) * (speaker.inverted ? -1 : 1);
  const slope = sloping(speaker.tiltDbPerOctave, gain);
  return (hz) => slope(sectionsAt(sections, hz), hz);
}

/** The same without box, protection, gain and polarity: what shapes the passband. */
export function passbandResponses(speaker: SpeakerModel): (hz: number) => Complex {
  const sections = passbandSections(speaker);
  const slope = sloping(speaker.tiltDbPerOctave, 1);
  return (hz) => slope(sectionsAt(sections, hz), hz);
}

function passbandSections({ upper, bumps, crossoverHz }: SpeakerModel): Section[] {
  return [
    butterworthLow(upper.hz, upper.order),
    ...bumps.map(({ hz, gainDb, q }) => peak(hz, gainDb, q)),
    ...(crossoverHz === null ? [] : [crossoverAllPass(crossoverHz)]),
  ];
}

/** Times gain·(jf/1 kHz)^(slope/6.02): a straight line in dB per octave with its minimum phase. */
function sloping(dbPerOctave: number, gain: number): (response: Complex, hz: number) => Complex {
  const power = dbPerOctave / (20 * Math.log10(2));
  const [cos, sin] = [Math.cos((Math.PI / 2) * power), Math.sin((Math.PI / 2) * power)];
  return ([re, im], hz) => {
    if (hz === 0) return [0, 0];
    const size = gain * (hz / 1000) ** power;
    return [size * (re * cos - im * sin), size * (re * sin + im * cos)];
  };
}
