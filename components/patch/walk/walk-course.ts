import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Bench, BenchState, WalkPosition } from '../../../src/session/bench';
import { walkOrder } from './walk-order';
import type { ChannelLabel } from '../../../src/system/channel';

interface WalkHost extends ReactiveControllerHost {
  bench: Bench | null;
}

/** The course of a walk: which speaker comes next, and going on by itself after a pause. */
export class WalkCourse implements ReactiveController {
  private readonly host: WalkHost;
  /** A speaker the tuner chose instead of the next one. */
  private chosen: ChannelLabel | null = null;
  private ticking: ReturnType<typeof setInterval> | null = null;
  /** Whether stops follow each other without a press. */
  byItself = false;
  pauseSeconds = 12;
  /** Seconds until the next stop plays by itself; null while nothing counts down. */
  countdown: number | null = null;
  /** Which arrangement of plugs plays, where outputs do not reach all speakers; from 0. */
  round = 0;

  constructor(host: WalkHost) {
    this.host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.wait(null);
  }

  /** The speaker to hold the microphone to; null when all were visited. */
  next({ layout, document }: BenchState): ChannelLabel | null {
    const order = walkOrder(layout);
    if (this.chosen !== null && order.includes(this.chosen)) return this.chosen;
    return order.find((label) => !document.walk.some(({ speaker }) => speaker === label)) ?? null;
  }

  choose(speaker: ChannelLabel | null): void {
    this.chosen = speaker;
    this.host.requestUpdate();
  }

  async play(at: WalkPosition): Promise<void> {
    this.wait(null);
    const { bench } = this.host;
    if (!bench) return;
    await bench.walkStop(at, this.round);
    const { state } = bench;
    if (at === 'seat' || state.trouble) return;
    this.choose(null);
    if (this.byItself && this.next(state) !== null) this.wait(this.pauseSeconds);
  }

  setByItself(on: boolean): void {
    this.byItself = on;
    if (!on) this.wait(null);
    this.host.requestUpdate();
  }

  stop(): void {
    this.wait(null);
    this.host.bench?.stop();
  }

  /** Counts down to the next stop; null ends a countdown. */
  wait(seconds: number | null): void {
    if (this.ticking !== null) clearInterval(this.ticking);
    this.ticking = null;
    this.countdown = seconds;
    this.host.requestUpdate();
    if (seconds === null) return;
    this.ticking = setInterval(() => this.tick(), 1000);
  }

  private tick(): void {
    const left = (this.countdown ?? 0) - 1;
    this.countdown = left;
    this.host.requestUpdate();
    if (left > 0) return;
    const state = this.host.bench?.state;
    const next = state ? this.next(state) : null;
    if (next !== null && state?.activity.kind === 'idle') void this.play(next);
    else this.wait(null);
  }
}
