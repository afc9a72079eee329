/**
 * The channel a microphone sits on: a mono microphone on a stereo input leaves the other side
 * silent or with the noise of an open input, so the one with more energy; the first when they are
 * within 1 dB. Never the mean, which would halve the signal. Throws RangeError without channels.
 */
export function chooseChannel(channels: readonly Float32Array[]): number {
  if (channels.length === 0) throw new RangeError('channels must hold at least one, got 0');
  const energies = channels.map((samples) => {
    let sum = 0;
    for (const value of samples) sum += value * value;
    return sum;
  });
  const most = Math.max(...energies);
  return energies.findIndex((energy) => energy >= most * 10 ** -0.1);
}
