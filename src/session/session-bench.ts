import { msg, str } from '@lit/localize';
import type { Weighting } from '../../dsp/level/weighting';
import type { NoiseRequest } from '../noise/noise-state';
import type { Inspector } from '../inspect/inspection';
import type { RigKind } from '../rig/port';
import type { ClimbRequest } from '../soundlevel/sound-level';
import type { ChannelLabel, Layout } from '../system/channel';
import { onLocaleChange } from '../locale/locale-in-force';
import { layoutFromName } from '../system/layout';
import { isTrouble, type Trouble } from '../trouble';
import type { Bench, BenchState, WalkPosition } from './bench';
import type { BenchParts } from './bench-parts';
import { findPosition, standAt } from './find-position';
import { Desk } from './desk';
import { firstState } from './first-state';
import { createDeviceWatch, type DeviceWatch } from './devices/device-watch';
import type { Position, SessionDocument, TakePurpose } from './document';
import { followTogether } from './run/follow-together';
import { createMeterDesk } from './run/meter-desk';
import { lateNoise } from './run/late-noise';
import { withRuns, type Runs } from './run/late-runs';
import { createProofJudge } from './run/proof-judge';
import { createPlugBoard } from './run/plug-board';
import { createPromptGate } from './run/prompt-gate';
import { leavesUnread, readAgain, readOutdated, readUnread } from './run/read-stored';
import { isSaidElse, sayAgain } from './run/say-again';
import { runNames, type RunName } from './run-names';
import { soundOf } from './run/sound-of';
import type { BenchRoom } from './run/bench-room';
import type { NoiseRun } from './run/noise-run';
import { createSessionDesk } from './shelf/session-desk';
import type { Sessions } from './shelf/sessions';

/** The one bench of a page: the face of what runs takes and noise, watches devices and saves. */
export class SessionBench implements Bench {
  readonly #desk: Desk;
  readonly #room: BenchRoom;
  readonly #noise: NoiseRun;
  readonly #devices: DeviceWatch;
  readonly sessions: Sessions;

  constructor(parts: BenchParts, document: SessionDocument, layout: Layout) {
    const desk = new Desk(parts, firstState(document, layout));
    this.#desk = desk;
    this.#room = {
      desk,
      gate: createPromptGate(desk),
      board: createPlugBoard(),
      meter: createMeterDesk(desk),
      judge: createProofJudge(desk),
    };
    followTogether(desk);
    onLocaleChange(() => void sayAgain(desk));
    this.#noise = lateNoise(this.#room);
    this.#devices = createDeviceWatch(desk);
    this.sessions = createSessionDesk(desk, () => this.#arrive());
  }

  get state(): BenchState {
    return this.#desk.state;
  }

  subscribe(listener: () => void): () => void {
    return this.#desk.subscribe(listener);
  }

  change(name: string, change: (document: SessionDocument) => SessionDocument): void {
    this.#desk.change(change, name);
    if (!this.#desk.busy) void readOutdated(this.#desk);
  }

  undo(): void {
    this.#walkHistory('undo');
  }

  redo(): void {
    this.#walkHistory('redo');
  }

  setLayout(name: string): void {
    const layout = layoutFromName(name);
    if (isTrouble(layout)) return this.raise(layout);
    this.#choose(
      msg(str`Choose layout ${layout.name}`),
      (document) => ({ ...document, layout: layout.name }),
      () => this.#desk.set({ layout, trouble: null }),
    );
  }

  setRig(kind: RigKind): void {
    this.#choose(
      msg(str`Choose the ${kind} rig`),
      (document) => ({ ...document, rig: kind }),
      () => this.#desk.set({ abilities: null, trouble: null }),
    );
    if (kind === 'live' && this.state.document.rig === 'live') void this.lookAtDevices(false);
  }

  setPosition(wanted: Omit<Position, 'id'> | string): void {
    const position =
      typeof wanted === 'string'
        ? findPosition(this.state.document, wanted)
        : { ...wanted, id: this.#desk.parts.newId() };
    if (!position) throw new RangeError(`there is no position ${String(wanted)}`);
    this.#choose(msg(str`Go to ${position.name}`), (document) => standAt(document, position));
  }

  async startTake(): Promise<void> {
    await this.#run(runNames.take(), ({ runTakes }, signal) => runTakes(this.#room, null, signal));
  }

  async repeatSegments(channels: readonly ChannelLabel[]): Promise<void> {
    if (channels.length === 0) return;
    await this.#run(runNames.repeat(), ({ runTakes }, signal) =>
      runTakes(this.#room, channels, signal),
    );
  }

  async startProof(channels: readonly ChannelLabel[] | null = null): Promise<void> {
    await this.#run(runNames.proof(), ({ runProof }, signal) =>
      runProof(this.#room, channels, signal),
    );
  }

  proceed(): void {
    this.#room.gate.open();
  }

  async startNoise(request: NoiseRequest): Promise<void> {
    const name = request.kind === 'noise' ? runNames.noise() : runNames.listening();
    await this.#desk.run(name, (signal) => this.#noise.start(request, signal));
  }

  changeNoise(request: NoiseRequest): void {
    this.#noise.change(request);
  }

  keepNoise(): void {
    this.#noise.keep();
  }

  async climbLevel(request: ClimbRequest): Promise<void> {
    await this.#run(runNames.climb(), ({ runClimb }, signal) =>
      runClimb(this.#room, request, signal),
    );
  }

  async calibrateSoundLevel(db: number, how: 'calibrator' | 'sound level meter'): Promise<void> {
    await this.#run(runNames.soundLevel(), ({ runSoundLevelCalibration }, signal) =>
      runSoundLevelCalibration(this.#room, db, how, signal),
    );
  }

  async walkStop(at: WalkPosition, round = 0): Promise<void> {
    await this.#run(runNames.walkStop(), ({ runStop }, signal) =>
      runStop(this.#room, at, round, signal),
    );
  }

  setMeter(weighting: Weighting, time: 'fast' | 'slow'): void {
    this.#room.meter.set(weighting, time);
  }

  async importCalibration(file: File): Promise<void> {
    await this.#run(runNames.calibrationFile(), async ({ parseCalibration }, signal) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const calibration = parseCalibration(bytes, file.name);
      if (isTrouble(calibration)) return calibration;
      this.#desk.change((document) => ({
        ...document,
        microphone: { ...document.microphone, calibration },
      }));
      return readAgain(this.#desk, signal);
    });
  }

  inspect(): Inspector {
    return this.#desk.parts.inspect((takeId) => soundOf(this.#desk, takeId));
  }

  lookAtDevices(ask: boolean): Promise<void> {
    return this.#devices.look(ask);
  }

  stop(): void {
    this.#desk.stop();
  }

  async saveStimulus(
    purpose: TakePurpose = 'probe',
  ): Promise<{ name: string; blob: Blob }[] | null> {
    const files = await withRuns(({ wholeTake }) => {
      const schedule = wholeTake(this.state, purpose);
      if (isTrouble(schedule)) return Promise.resolve(schedule);
      return this.#desk.parts.takeFiles(schedule, this.state.layout);
    });
    if (!isTrouble(files)) return files;
    this.raise(files);
    return null;
  }

  async importCapture(file: File, purpose: TakePurpose = 'probe'): Promise<void> {
    await this.#run(runNames.recording(), async (runs, signal) => {
      const proving = purpose === 'prove' ? runs.toProve(this.#desk) : null;
      if (isTrouble(proving)) return proving;
      const problem = await runs.importRecording(this.#desk, file, signal, proving);
      await this.#room.judge.settled(signal);
      return problem;
    });
  }

  dismissTrouble(): void {
    this.#desk.set({ trouble: null });
  }

  /** Shows a trouble until it is dismissed or replaced. */
  raise(problem: Trouble): void {
    this.#desk.raise(problem);
  }

  /** Marks this page as the follower of another that writes the same session. */
  follow(): void {
    this.#desk.set({ saved: 'elsewhere' });
  }

  /** Shows what the page that writes has saved, and anew the list of sessions if it was looked at. */
  async showStored(): Promise<void> {
    const stored = await this.#desk.parts.store.load();
    if (isTrouble(stored)) return this.raise(stored);
    if (stored !== null) this.#desk.follow(stored);
    if (this.state.sessions.stored !== null) await this.sessions.look();
  }

  /** Ends following: what was saved last lies here, and may be changed from now on. */
  async takeOver(): Promise<void> {
    this.#desk.set({ trouble: null });
    await this.showStored();
    this.#desk.set({ saved: 'saved' });
  }

  /** Tries once more to save what could not be saved, if there is something. */
  saveAgain(): void {
    this.#desk.saveAgain();
  }

  /** Reads takes that were captured but not read, such as after a crash. */
  async resume(): Promise<void> {
    await readUnread(this.#desk);
    await sayAgain(this.#desk);
  }

  /** Runs one thing with what a bench runs, which is loaded before the first; see Desk.run. */
  async #run(
    name: RunName,
    work: (runs: Runs, signal: AbortSignal) => Promise<Trouble | null>,
  ): Promise<void> {
    await this.#desk.run(name, (signal) => withRuns((runs) => work(runs, signal)));
    // Units or language may have been changed while it ran.
    await sayAgain(this.#desk);
  }

  /** Choices that a running take would contradict. */
  #choose(
    name: string,
    change: (document: SessionDocument) => SessionDocument,
    first?: () => void,
  ): void {
    const { closed } = this.#desk;
    if (closed) return this.raise(closed);
    first?.();
    this.#desk.change(change, name);
  }

  /** What a step back or forth leaves unread, or outdated, is read again. */
  #walkHistory(way: 'undo' | 'redo'): void {
    const before = this.state.document;
    this.#desk.walkHistory(way);
    const { document } = this.state;
    if (leavesUnread(before, document) || document.takes.some(isSaidElse)) void this.resume();
  }

  /** Another session has come onto the desk. */
  #arrive(): void {
    if (this.state.document.rig === 'live') void this.lookAtDevices(false);
    void this.resume();
  }
}
