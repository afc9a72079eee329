/** The step nearest to a frequency, by ratio; null when there are none. */
export function nearestStep(steps: readonly number[], hz: number): number | null {
  let best: number | null = null;
  for (const step of steps) {
    if (best === null || Math.abs(Math.log(step / hz)) < Math.abs(Math.log(best / hz))) best = step;
  }
  return best;
}

/**
 * Where a key moves the cursor, by a step, a third octave or an octave of `octave` steps; null when
 * the key is not one of the cursor's.
 */
export function stepCursor(
  steps: readonly number[],
  from: number | null,
  key: string,
  far: boolean,
  octave = 24,
): number | null {
  const index = Math.max(0, from === null ? 0 : steps.indexOf(from));
  const stride = far ? Math.round(octave / 3) : 1;
  const targets: Readonly<Record<string, number>> = {
    ArrowRight: index + stride,
    ArrowUp: index + stride,
    ArrowLeft: index - stride,
    ArrowDown: index - stride,
    PageUp: index + octave,
    PageDown: index - octave,
    Home: 0,
    End: steps.length - 1,
  };
  const target = targets[key];
  if (target === undefined) return null;
  return steps[Math.max(0, Math.min(steps.length - 1, target))] ?? null;
}
