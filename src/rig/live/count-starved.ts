const quantum = 128;

/**
 * How often the browser filled in silence because no microphone audio had arrived: runs of whole
 * render quanta of exact zeros between sound, which a microphone never gives. 0 when the whole
 * capture is exact zeros. `samples` start on a render quantum.
 */
export function countStarved(samples: Float32Array): number {
  let runs = 0;
  let inRun = false;
  let heard = false;
  for (let start = 0; start + quantum <= samples.length; start += quantum) {
    const silent = samples.subarray(start, start + quantum).every((value) => value === 0);
    if (!silent && inRun && heard) runs++;
    heard ||= !silent;
    inRun = silent;
  }
  return runs;
}
