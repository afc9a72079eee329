import type { Capture, RigKind } from '../rig/port';
import type { Layout } from '../system/channel';
import { layoutFromName } from '../system/layout';
import { scheduleTake } from '../take/schedule-take';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { Activity, Bench, BenchState } from './bench';
import type { BenchParts } from './bench-parts';
import type { SessionDocument, TakeRecord } from './document';
import { deriveState } from './derive-state';
import { recordOf, withReadings, withTake } from './take-record';

const idle: Activity = { kind: 'idle' };

/** The one bench of a page: holds the state, runs takes, saves after every change. */
export class SessionBench implements Bench {
  state: BenchState;
  readonly #parts: BenchParts;
  readonly #listeners = new Set<() => void>();
  #running: AbortController | null = null;
  #saving: Promise<void> = Promise.resolve();

  constructor(parts: BenchParts, document: SessionDocument, layout: Layout) {
    this.#parts = parts;
    const first: BenchState = {
      document,
      layout,
      readings: null,
      proposal: null,
      activity: idle,
      trouble: null,
      mic: null,
      abilities: null,
      saved: 'saved',
    };
    this.state = deriveState(first, null);
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  change(_name: string, change: (document: SessionDocument) => SessionDocument): void {
    if (this.state.saved === 'elsewhere') return this.raise(elsewhere);
    const document = change(this.state.document);
    if (document === this.state.document) return;
    this.#set(deriveState({ ...this.state, document }, this.state));
    this.#save();
  }

  setLayout(name: string): void {
    const layout = layoutFromName(name);
    if (isTrouble(layout)) return this.raise(layout);
    if (this.#running) return this.raise(busy);
    if (this.state.saved === 'elsewhere') return this.raise(elsewhere);
    this.#set({ ...this.state, layout, trouble: null });
    this.change('Choose layout', (document) => ({ ...document, layout: layout.name }));
  }

  setRig(kind: RigKind): void {
    if (this.#running) return this.raise(busy);
    this.#set({ ...this.state, abilities: null, trouble: null });
    this.change('Choose rig', (document) => ({ ...document, rig: kind }));
  }

  async startTake(): Promise<void> {
    await this.#run(async (signal) => {
      const { document, layout } = this.state;
      const schedule = scheduleTake(layout);
      this.#play(
        {
          phase: 'starting',
          progress: 0,
          secondsLeft: schedule.lengthSamples / schedule.sampleRate,
          position: 0,
        },
        null,
      );
      const rig = await this.#parts.makeRig(document, layout);
      if (isTrouble(rig)) return rig;
      const quiet = rig.monitor((mic) => this.#set({ ...this.state, mic }));
      try {
        const capture = await rig.play(schedule, {
          signal,
          gainDb: rig.kind === 'live' ? document.live.gainDb : 0,
          onProgress: (play) => {
            const segment = schedule.segments.findLast((one) => one.markStart <= play.position);
            this.#play(play, segment?.channel ?? null);
          },
        });
        const abilities = await rig.describe();
        if (!isTrouble(abilities)) this.#set({ ...this.state, abilities });
        return isTrouble(capture) ? capture : await this.#keep(schedule, capture, signal);
      } finally {
        quiet();
      }
    });
  }

  stop(): void {
    this.#running?.abort();
  }

  async saveStimulus(): Promise<{ name: string; blob: Blob }[] | null> {
    return this.#parts.takeFiles(scheduleTake(this.state.layout), this.state.layout);
  }

  async importCapture(file: File): Promise<void> {
    await this.#run(async (signal) => {
      const schedule = scheduleTake(this.state.layout);
      const bytes = new Uint8Array(await file.arrayBuffer());
      const capture = this.#parts.readRecording(bytes, schedule);
      return isTrouble(capture) ? capture : await this.#keep(schedule, capture, signal);
    });
  }

  dismissTrouble(): void {
    this.#set({ ...this.state, trouble: null });
  }

  /** Shows a trouble until it is dismissed or replaced. */
  raise(problem: Trouble): void {
    this.#set({ ...this.state, trouble: problem });
  }

  /** Marks this page as the follower of another that writes the same session. */
  follow(): void {
    this.#set({ ...this.state, saved: 'elsewhere' });
  }

  /** Reads takes that were captured but not read, such as after a crash; newest first. */
  async resume(): Promise<void> {
    const waiting = this.state.document.takes.findLast((take) => take.readings === null);
    if (!waiting || waiting.schedule.layout !== this.state.document.layout) return;
    await this.#run(async (signal) => {
      const samples = await this.#parts.store.loadCapture(waiting.captureId);
      if (samples === null || isTrouble(samples)) return samples;
      return this.#read(waiting, samples, signal);
    });
  }

  async #keep(schedule: TakeRecord['schedule'], capture: Capture, signal: AbortSignal) {
    const record = recordOf(this.#parts.newId(), schedule, capture);
    const lost = await this.#parts.store.saveCapture(record.captureId, capture.samples);
    if (lost) this.raise(lost);
    this.change('Add take', (document) => withTake(document, record));
    return this.#read(record, capture.samples, signal);
  }

  async #read(record: TakeRecord, samples: Float32Array, signal: AbortSignal) {
    const { conditions } = this.state.document;
    const startedAt = performance.now();
    this.#set({
      ...this.state,
      activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] },
    });
    const readings = await this.#parts.read(
      record.schedule,
      { samples, sampleRate: record.captureRate },
      {
        ...conditions,
        simulated: record.simulated,
        signal,
        onChannel: (reading, progress) => {
          const { activity } = this.state;
          if (activity.kind !== 'reading') return;
          const elapsed = (performance.now() - startedAt) / 1000;
          const secondsLeft = (elapsed * (1 - progress)) / progress;
          const channels = [...activity.channels, reading];
          this.#set({
            ...this.state,
            activity: { kind: 'reading', progress, secondsLeft, channels },
          });
        },
      },
    );
    if (isTrouble(readings)) return readings;
    this.change('Add readings', (document) => withReadings(document, record.id, readings));
    return null;
  }

  async #run(work: (signal: AbortSignal) => Promise<Trouble | null>): Promise<void> {
    if (this.#running) return this.raise(busy);
    if (this.state.saved === 'elsewhere') return this.raise(elsewhere);
    const running = new AbortController();
    this.#running = running;
    this.#set({ ...this.state, trouble: null });
    try {
      const problem = await work(running.signal);
      if (problem) this.raise(problem);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.raise(
        trouble(
          'failed',
          `The take could not be finished: ${why}. Nothing in the session was lost; run it again.`,
        ),
      );
    } finally {
      this.#running = null;
      this.#set({ ...this.state, activity: idle, mic: null });
    }
  }

  #play(play: Extract<Activity, { kind: 'playing' }>['play'], channel: string | null): void {
    this.#set({ ...this.state, activity: { kind: 'playing', play, channel } });
  }

  #save(): void {
    this.#set({ ...this.state, saved: 'saving' });
    this.#saving = this.#saving.then(async () => {
      const { document } = this.state;
      const problem = await this.#parts.store.save(document);
      if (document !== this.state.document) return;
      this.#set({
        ...this.state,
        saved: problem ? 'failed' : 'saved',
        trouble: problem ?? this.state.trouble,
      });
    });
  }

  #set(state: BenchState): void {
    this.state = state;
    for (const listener of this.#listeners) listener();
  }
}

const busy = trouble('failed', 'A take is running: stop it first (Esc), then change this.');

const elsewhere = trouble(
  'storage',
  'This session is open in another tab: change it there, or close that tab and reload this one.',
);
