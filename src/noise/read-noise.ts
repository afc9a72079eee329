import { msg, str } from '@lit/localize';
import { finePower } from '../../dsp/noise/fine-power';
import type { PeriodReading } from '../../dsp/noise/period-reading';
import { correctForMicrophone } from '../../dsp/response/microphone-correction';
import { readRolloff } from '../reading/read-rolloff';
import type { RolloffReading } from '../reading/reading';
import type { NoiseSetting, ReadNumbers } from './noise-orders';
import { readLevel, readShape } from './read-shape';
import { withoutMicrophone } from './show-spectrum';

/** Bass and the band it is judged against must be in the noise for a roll-off. */
const rolloffHz = [30, 500] as const;

/** Level and response of averaged periods; cheap. */
export function readNoise(
  reading: PeriodReading,
  { isSub, calibration }: NoiseSetting,
): Pick<ReadNumbers, 'levelDb' | 'response' | 'notes'> {
  const fine = finePower(reading);
  const source = {
    heard: withoutMicrophone(fine.heard, calibration),
    hiss: withoutMicrophone(fine.hiss, calibration),
    bandHz: reading.bandHz,
    isSub,
  };
  const level = readLevel(source);
  return {
    levelDb: level.db === null ? null : level.db + reading.levelShiftDb,
    response:
      level.db === null && source.heard.power.every((p) => p === 0) ? null : readShape(source),
    notes: level.why === null ? [] : [level.why],
  };
}

/** Roll-off of averaged periods, as a sweep's is read; takes a while. */
export function readNoiseRolloff(
  reading: PeriodReading,
  { isSub, calibration }: NoiseSetting,
): { readonly rolloff: RolloffReading | null; readonly notes: readonly string[] } {
  const [low, high] = reading.bandHz;
  if (low > rolloffHz[0] || high < rolloffHz[1]) {
    const note = msg(
      str`No roll-off: it needs noise from ${rolloffHz[0]} Hz or lower to ${rolloffHz[1]} Hz or higher.`,
    );
    return { rolloff: null, notes: [note] };
  }
  if (reading.transfer.samples.every((value) => value === 0)) return { rolloff: null, notes: [] };
  const corrected = (ir: PeriodReading['transfer']) =>
    calibration ? correctForMicrophone(ir, calibration) : ir;
  const { rolloff, notes } = readRolloff(
    corrected(reading.transfer),
    corrected(reading.noise),
    isSub,
  );
  return { rolloff, notes };
}
