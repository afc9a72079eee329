import { bandPower } from '../../dsp/level/band-level';
import { bandEdges, bandMidpoints } from '../../dsp/level/bands';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import type { BandMargins, ChannelReading } from './reading';

/** Octave bands that are told, Hz. */
const rangeHz = { main: [31, 16_500], sub: [15, 130] } as const;
/** Margins are told no further than this, dB. */
const mostDb = 99;

/** With less than this over the noise a band moves by half a decibel and more; common practice. */
export const trustedMarginDb = 10;

/**
 * Signal over noise of a response in octave bands, both through the same deconvolution; null
 * without noise.
 */
export function readMargins(
  heard: PowerSpectrum,
  hiss: PowerSpectrum | null,
  isSub: boolean,
): BandMargins | null {
  if (!hiss) return null;
  const [low, high] = isSub ? rangeHz.sub : rangeHz.main;
  const top = (heard.power.length - 1) * heard.hzPerBin;
  const hz = Array.from(bandMidpoints(low, high, 1)).filter((mid) => bandEdges(mid, 1)[1] <= top);
  const marginDb = hz.map((mid) => {
    const [from, to] = bandEdges(mid, 1);
    const noise = bandPower(hiss, from, to);
    const ratio = (bandPower(heard, from, to) - noise) / noise;
    const db = ratio > 0 ? 10 * Math.log10(ratio) : -mostDb;
    return Number.isNaN(db) ? -mostDb : Math.min(Math.max(db, -mostDb), mostDb);
  });
  return { hz, marginDb };
}

/** The octave bands of a reading that stand 10 dB over the noise, as ranges of midpoints, Hz. */
export function trustedBands({ margins }: ChannelReading): (readonly [number, number])[] {
  const ranges: [number, number][] = [];
  let open: [number, number] | null = null;
  for (const [k, hz] of (margins?.hz ?? []).entries()) {
    if ((margins?.marginDb[k] ?? 0) < trustedMarginDb) {
      open = null;
      continue;
    }
    if (open) open[1] = hz;
    else ranges.push((open = [hz, hz]));
  }
  return ranges;
}
