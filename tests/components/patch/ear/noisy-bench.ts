import type { NoiseRequest } from '../../../../src/noise/noise-state';
import type { ProcessorSheet } from '../../../../src/system/sheet/processor-sheet';
import { FakeBench } from '../../fake-bench';
import { inventedNoise } from '../../probe/noise/invented-noise';

/** A bench on which noise runs until it is stopped, and that keeps what was asked of it. */
export class NoisyBench extends FakeBench {
  /** Channels in the order in which they sounded, with how: begun anew or changed over. */
  readonly played: string[] = [];
  readonly asked: NoiseRequest[] = [];
  /** Whether what is asked begins only with catchUp, as with a line that opens anew. */
  lags = false;
  private end: (() => void) | null = null;

  constructor(layout: string, sheet: ProcessorSheet | null = null) {
    super(layout);
    this.set({ document: { ...this.state.document, sheet } });
  }

  override startNoise(request: NoiseRequest): Promise<void> {
    if (this.end) throw new RangeError('noise was started while noise runs');
    this.sound(request, 'start');
    return new Promise((resolve) => (this.end = resolve));
  }

  override changeNoise(request: NoiseRequest): void {
    if (!this.end) throw new RangeError('noise was changed while none runs');
    this.sound(request, 'change');
  }

  override stop(): void {
    super.stop();
    this.end?.();
    this.end = null;
    this.set({ activity: { kind: 'idle' } });
  }

  /** What was asked last sounds. */
  catchUp(): void {
    const request = this.asked.at(-1);
    if (request) this.set({ activity: { kind: 'noise', noise: inventedNoise({ request }) } });
  }

  private sound(request: NoiseRequest, how: string): void {
    this.played.push(`${how} ${request.channel}`);
    this.asked.push(request);
    if (!this.lags) this.catchUp();
  }
}
