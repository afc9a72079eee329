import { msg, str } from '@lit/localize';
import { integratePower, type PowerSpectrum } from '../../dsp/response/power-spectrum';
import { powerToDb } from '../../dsp/level/decibels';
import type { NoiseSetting, ReadNumbers } from './noise-orders';
import type { NoiseRequest } from './noise-state';
import { levelBand, readShape } from './read-shape';
import { withoutMicrophone } from './show-spectrum';

const listened = () =>
  msg(
    'Listened to noise of the processor: level and shape only, without arrival and without roll-off.',
  );

/**
 * Level and shape of pink noise that someone else plays: the level of the band sweeps are levelled
 * in (or of the whole request when it does not hold that), at the microphone, the silence's share
 * taken off; the response is the spectrum against pink.
 */
export function readListening(
  heard: PowerSpectrum,
  silence: PowerSpectrum | null,
  { lowHz, highHz }: NoiseRequest,
  { isSub, calibration }: NoiseSetting,
): Pick<ReadNumbers, 'levelDb' | 'response' | 'notes'> {
  const whole = withoutMicrophone(heard, calibration);
  const hiss = silence && withoutMicrophone(silence, calibration);
  const band = levelBand(isSub);
  const inside = lowHz <= band[0] && highHz >= band[1];
  const [low, high] = inside ? band : [lowHz, highHz];
  const notes = [listened()];
  if (!inside) notes.push(msg(str`The level is that of ${low} to ${high} Hz.`));
  const power = squareBetween(whole, low, high);
  const noise = hiss ? squareBetween(hiss, low, high) : 0;
  const levelDb = power - noise > power / 2 ? powerToDb(power - noise) : null;
  if (levelDb === null) {
    notes.push(msg('No level: the room is as loud as the noise. More level would settle it.'));
  }
  const source = {
    heard: againstPink(whole),
    hiss: hiss && againstPink(hiss),
    bandHz: [lowHz, highHz] as const,
    isSub,
  };
  return { levelDb, response: readShape(source), notes };
}

function squareBetween(spectrum: PowerSpectrum, lowHz: number, highHz: number): number {
  const integral = integratePower(spectrum);
  return Math.max(integral(highHz) - integral(lowHz), 0) / spectrum.hzPerBin;
}

/** Power times frequency: flat for pink. */
function againstPink({ power, hzPerBin }: PowerSpectrum): PowerSpectrum {
  return { hzPerBin, power: power.map((value, k) => value * k * hzPerBin) };
}
