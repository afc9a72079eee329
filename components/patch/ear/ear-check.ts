import { msg, str } from '@lit/localize';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { NoiseRequest } from '../../../src/noise/noise-state';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { channelKind } from '../../../src/system/channel-names';
import { forgetAnswers, type EarAnswer } from '../../../src/wirecheck/ear-check';
import { namedBand } from '../../probe/noise/named-bands';
import { wiringOrder } from '../wiring/wiring-now';

interface EarHost extends ReactiveControllerHost {
  bench: Bench | null;
}

/** The course of an ear check: which channel plays, what was answered, which one comes next. */
export class EarCheck implements ReactiveController {
  private readonly host: EarHost;
  /** Resolves when the noise that this check began has ended. */
  private running: Promise<void> | null = null;
  private ending = false;
  private asked: NoiseRequest | null = null;
  /** The channel that plays or played last and can be answered. */
  at: ChannelLabel | null = null;
  /** The channel in hand once it really sounded: before, there is nothing to answer. */
  private sounded: ChannelLabel | null = null;
  /** Whether the next speaker that is picked is where the sound came from. */
  pointing = false;
  /** Level of the noise when it was changed here, dB; null follows the test level. */
  wantedDb: number | null = null;

  constructor(host: EarHost) {
    this.host = host;
    host.addController(this);
  }

  /** Nobody answers any more once the sheet is left. */
  hostDisconnected(): void {
    this.stop();
  }

  hostUpdate(): void {
    const activity = this.host.bench?.state.activity;
    if (!this.sounding || activity?.kind !== 'noise') return;
    if (activity.noise.request.channel === this.at) this.sounded = this.at;
  }

  /** Whether the channel in hand sounds or sounded, so that it can be answered. */
  get answerable(): boolean {
    return this.at !== null && this.sounded === this.at;
  }

  get sounding(): boolean {
    return this.running !== null && !this.ending;
  }

  /** Whether what runs now is this check's noise. */
  get owns(): boolean {
    return this.running !== null;
  }

  play(channel: ChannelLabel): void {
    const { bench } = this.host;
    if (!bench) return;
    if (channel !== this.at || !this.sounding) this.sounded = null;
    this.at = channel;
    this.pointing = false;
    this.asked = this.requestFor(channel, bench.state);
    if (this.sounding) bench.changeNoise(this.asked);
    else void this.begin(bench, this.asked);
    this.host.requestUpdate();
  }

  answer(answer: EarAnswer): void {
    const { at, sounding } = this;
    const { bench } = this.host;
    if (!bench || at === null || !this.answerable) return;
    const known: EarAnswer =
      answer.kind === 'elsewhere' && answer.speaker === at ? { kind: 'here' } : answer;
    bench.change(msg(str`Ear check of ${at}`), (document) => ({
      ...document,
      earAnswers: { ...document.earAnswers, [at]: known },
    }));
    this.pointing = false;
    const next = this.nextOpen(bench.state);
    if (next !== null && sounding) return this.play(next);
    if (next === null) this.stop();
    this.at = null;
    this.host.requestUpdate();
  }

  point(pointing: boolean): void {
    if (!this.answerable) return;
    this.pointing = pointing;
    this.host.requestUpdate();
  }

  /** The next channel without an answer; the one in hand stays open. */
  next(): void {
    const { bench } = this.host;
    const next = bench && this.nextOpen(bench.state);
    if (next) this.play(next);
  }

  again(): void {
    if (this.at !== null) this.play(this.at);
  }

  /** The channel before the one in hand, else the last one that was answered. */
  back(): void {
    const { bench } = this.host;
    if (!bench) return;
    if (this.pointing) return this.point(false);
    const order = wiringOrder(bench.state);
    const here = order.findIndex((label) => label === this.at);
    const { earAnswers } = bench.state.document;
    const before =
      here >= 0 ? order[here - 1] : order.findLast((label) => earAnswers[label] !== undefined);
    if (before) this.play(before);
  }

  /** Takes back the answers of some channels and plays the first of them. */
  retest(channels: readonly ChannelLabel[]): void {
    const { bench } = this.host;
    const [first] = channels;
    if (!bench || !first) return;
    bench.change(msg('Play channels again'), (document) => ({
      ...document,
      earAnswers: forgetAnswers(document.earAnswers, channels),
    }));
    this.play(first);
  }

  setLevel(db: number): void {
    this.wantedDb = db;
    if (this.sounding && this.at !== null) this.play(this.at);
    else this.host.requestUpdate();
  }

  levelDb({ document }: BenchState): number {
    return Math.min(document.live.capDb, this.wantedDb ?? document.live.gainDb);
  }

  stop(): void {
    if (!this.sounding) return;
    this.ending = true;
    this.pointing = false;
    this.host.bench?.stop();
    this.host.requestUpdate();
  }

  /** The sound was ended from elsewhere, such as by Esc. */
  stopped(): void {
    if (this.sounding) this.ending = true;
    this.pointing = false;
    this.host.requestUpdate();
  }

  /** The first channel without an answer, from the one in hand on and round. */
  nextOpen(state: BenchState): ChannelLabel | null {
    const order = wiringOrder(state);
    const here = order.findIndex((label) => label === this.at);
    const round = [...order.slice(here + 1), ...order.slice(0, here + 1)];
    const { earAnswers } = state.document;
    return round.find((label) => earAnswers[label] === undefined) ?? null;
  }

  private async begin(bench: Bench, request: NoiseRequest): Promise<void> {
    if (this.running) await this.running;
    // Another channel was asked for while the sound before it ended.
    if (this.asked !== request || this.running) return;
    this.ending = false;
    this.running = bench.startNoise(request);
    await this.running;
    this.running = null;
    this.ending = false;
    this.host.requestUpdate();
  }

  private requestFor(channel: ChannelLabel, state: BenchState): NoiseRequest {
    const { lowHz, highHz } = namedBand(channelKind(channel) === 'sub' ? 'sub' : 'mains');
    return {
      kind: 'noise',
      channel,
      lowHz,
      highHz,
      gainDb: this.levelDb(state),
      bandsPerOctave: 3,
      averagingSeconds: 3,
    };
  }
}
