import { coneAndPort } from '../../dsp/rolloff/cone-and-port';
import { fitRolloff } from '../../dsp/rolloff/fit-rolloff';
import type { RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import type { PortSize } from './close-to';
import { bassBands } from './kept-bass';
import { subUpperHz } from './read-rolloff';
import type { BassReading } from './reading';
import { marginBetween, tellRolloff, type RolloffFinding } from './rolloff-finding';
import type { KeptClose } from './rolloff-together';

/**
 * One roll-off from the bass of one speaker heard close by, its port summed with its cone where both
 * were heard. `sheetF3Hz`: f3 on its sheet, 5 to 500. RangeError for sizes out of range.
 * Sources: see dsp/rolloff/fit-rolloff and dsp/rolloff/cone-and-port.
 */
export function readRolloffClose(
  close: KeptClose,
  isSub: boolean,
  sheetF3Hz: number | null = null,
): RolloffFinding {
  const summed = close.port !== null;
  const bands = bandsOf(close);
  const fit = fitRolloff(bands, {
    place: 'close',
    ...(summed ? { summed } : { coneOnly: close.coneOnly }),
    ...(sheetF3Hz === null ? {} : { sheetF3Hz }),
    ...(isSub ? { upperHz: subUpperHz } : {}),
  });
  return tellRolloff(fit, isSub, marginBetween(bands.hz, bands.marginDb, 40, 80));
}

/** The port's diameter over the cone's. */
export function portShare({ coneMetres, portMetres }: PortSize): number {
  return portMetres / coneMetres;
}

function bandsOf({ bass, port }: KeptClose): RolloffBands {
  if (!port) return bassBands(bass);
  const cone = { transfer: transferOf(port.coneHeard, 1), noisePower: bass.noisePower };
  const mouth = {
    transfer: transferOf(port.portHeard, 10 ** (port.coneLouderDb / 20)),
    noisePower: port.bass.noisePower,
  };
  return coneAndPort(cone, mouth, portShare(port.size));
}

function transferOf({ re, im }: BassReading, gain: number) {
  const scaled = (values: readonly number[]): Float64Array =>
    Float64Array.from(values, (value) => gain * value);
  return { re: scaled(re), im: scaled(im) };
}
