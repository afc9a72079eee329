/**
 * What a search still holds possible: where each channel may go and which must go somewhere. A
 * channel is placed when it must go somewhere and one output is left for it.
 */
export class Trial {
  /** Rises with every change, so that propagation knows when to stop. */
  changes = 0;

  readonly channels: readonly number[];

  private constructor(
    private readonly open: readonly Uint8Array[],
    private readonly counts: Uint8Array,
    private readonly needed: Uint8Array,
  ) {
    this.channels = open.map((_, channel) => channel);
  }

  /** A trial in which every channel may go where `mayGo` says and none must. */
  static start(
    channels: number,
    outputs: number,
    mayGo: (channel: number, output: number) => boolean,
  ): Trial {
    const open = Array.from({ length: channels }, (_, channel) =>
      Uint8Array.from({ length: outputs }, (_unused, output) => Number(mayGo(channel, output))),
    );
    const counts = open.map((row) => row.reduce((sum, isOpen) => sum + isOpen, 0));
    return new Trial(open, Uint8Array.from(counts), new Uint8Array(channels));
  }

  copy(): Trial {
    return new Trial(
      this.open.map((row) => row.slice()),
      this.counts.slice(),
      this.needed.slice(),
    );
  }

  isOpen(channel: number, output: number): boolean {
    return this.open[channel]?.[output] === 1;
  }

  isNeeded(channel: number): boolean {
    return this.needed[channel] === 1;
  }

  /** The outputs a channel may still go on. */
  outputsFor(channel: number): number[] {
    const outputs: number[] = [];
    for (const [output, isOpen] of (this.open[channel] ?? []).entries()) {
      if (isOpen === 1) outputs.push(output);
    }
    return outputs;
  }

  /** The channels that may still go on an output. */
  channelsFor(output: number): number[] {
    return this.channels.filter((channel) => this.isOpen(channel, output));
  }

  /** Where a channel is placed, -1 while it is not. */
  placeOf(channel: number): number {
    if (this.needed[channel] !== 1 || this.counts[channel] !== 1) return -1;
    return this.open[channel]?.indexOf(1) ?? -1;
  }

  isUsed(output: number): boolean {
    return this.channels.some(
      (c) => this.needed[c] === 1 && this.counts[c] === 1 && this.isOpen(c, output),
    );
  }

  /** Whether a channel that must go somewhere has nowhere left. */
  isStuck(): boolean {
    return this.channels.some((c) => this.needed[c] === 1 && this.counts[c] === 0);
  }

  close(channel: number, output: number): void {
    const row = this.open[channel];
    if (row?.[output] !== 1) return;
    row[output] = 0;
    this.counts[channel] = (this.counts[channel] ?? 0) - 1;
    this.changes++;
  }

  need(channel: number): void {
    if (this.needed[channel] !== 0) return;
    this.needed[channel] = 1;
    this.changes++;
  }

  /** Leaves a channel one output, on which it must go. */
  place(channel: number, output: number): void {
    for (const other of this.outputsFor(channel)) if (other !== output) this.close(channel, other);
    this.need(channel);
  }
}
