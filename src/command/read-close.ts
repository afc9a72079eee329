import { diameterMetres, fitsItsBox, type CloseTo } from '../reading/close-to';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { GivenOptions, OptionSpec } from './command';
import { numberOption } from './number-option';

/** Options of a take whose microphone was held close to a speaker. */
export const closeOptions: readonly OptionSpec[] = [
  {
    name: 'close',
    value: 'CHANNEL',
    about: "the speaker the microphone was held to, a hand's width from its cone",
  },
  { name: 'cone-alone', about: 'with --close: its box has a port, which is unheard there' },
  {
    name: 'port-diameter',
    value: 'M',
    about: 'with --close: the microphone was in the port, this wide, 0.01 to 1 m',
  },
  { name: 'cone-diameter', value: 'M', about: 'with --port-diameter: of the cone, 0.01 to 1 m' },
];

const diameters = { ...diameterMetres, unit: 'm' };

/** Where the microphone was held; null at a seat. A Trouble for options that do not go together. */
export function readClose(options: GivenOptions, schedule: Schedule): CloseTo | null | Trouble {
  const label = options.get('close');
  const [inPort, withCone] = [options.has('port-diameter'), options.has('cone-diameter')];
  const coneOnly = options.has('cone-alone');
  if (label === undefined) {
    return inPort || withCone || coneOnly
      ? wrong('--cone-alone, --port-diameter and --cone-diameter go with --close: name the speaker')
      : null;
  }
  const channel = schedule.channels.find((one) => one === label);
  if (!channel) {
    return wrong(`--close ${label} is not in this take: it has ${schedule.channels.join(', ')}`);
  }
  if (inPort !== withCone) {
    return wrong('--port-diameter and --cone-diameter are summed by: give both, or neither');
  }
  if (!inPort) return { channel, coneOnly };
  if (coneOnly) return wrong('--cone-alone and --port-diameter cannot both be: give one of them');
  const portMetres = numberOption(options, 'port-diameter', diameters);
  if (isTrouble(portMetres)) return portMetres;
  const coneMetres = numberOption(options, 'cone-diameter', diameters);
  if (isTrouble(coneMetres)) return coneMetres;
  const port = { coneMetres, portMetres };
  return fitsItsBox(port)
    ? { channel, coneOnly, port }
    : wrong('--port-diameter is more than twice --cone-diameter: no box has such a port');
}

function wrong(sentence: string): Trouble {
  return trouble('bad-option', `${sentence}.`);
}
