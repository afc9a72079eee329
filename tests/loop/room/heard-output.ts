import { readFileSync } from 'node:fs';

/** What the microphone hears of one output: the speakers on it, none for an output left open. */
export interface HeardOutput {
  readonly output: number;
  readonly speakers: readonly HeardSpeaker[];
}

export interface HeardSpeaker {
  /** Impulse response from it to the microphone: a file of raw 64-bit floats. */
  readonly response: string;
  readonly inverted: boolean;
}

/** Sum of the responses of all speakers on an output; null for silence. */
export function heardResponse(heard: HeardOutput | undefined): Float64Array | null {
  let sum: Float64Array | null = null;
  for (const { response, inverted } of heard?.speakers ?? []) {
    const bytes = readFileSync(response);
    const samples = new Float64Array(new Uint8Array(bytes).buffer);
    sum ??= new Float64Array(samples.length);
    for (const [n, value] of samples.entries())
      sum[n] = (sum[n] ?? 0) + (inverted ? -value : value);
  }
  return sum;
}
