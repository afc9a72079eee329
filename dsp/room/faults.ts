/** A place where a recorder lost `samples` frames (positive) or wrote them twice (negative). */
export interface BufferFault {
  readonly atSample: number;
  readonly samples: number;
}

/**
 * The recording with frames cut out or repeated. Places are samples of the undamaged recording;
 * repeated frames are those just before the place. Throws RangeError for a place outside.
 */
export function damageRecording(
  recording: Float32Array,
  faults: readonly BufferFault[],
): Float32Array {
  const pieces: Float32Array[] = [];
  let at = 0;
  for (const { atSample, samples } of faults.toSorted((a, b) => a.atSample - b.atSample)) {
    const end = atSample + Math.max(samples, 0);
    if (!(atSample >= at && end <= recording.length && atSample + Math.min(samples, 0) >= 0)) {
      throw new RangeError(`a fault must lie inside the recording, got ${atSample}`);
    }
    pieces.push(recording.subarray(at, atSample));
    if (samples < 0) pieces.push(recording.subarray(atSample + samples, atSample));
    at = end;
  }
  pieces.push(recording.subarray(at));
  const out = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let place = 0;
  for (const piece of pieces) {
    out.set(piece, place);
    place += piece.length;
  }
  return out;
}

/** Limits a recording in place to ±level, as an overdriven input does. */
export function clipRecording(recording: Float32Array, level: number): void {
  for (let n = 0; n < recording.length; n++) {
    recording[n] = Math.max(-level, Math.min(level, recording[n] ?? 0));
  }
}
