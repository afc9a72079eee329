import type { Weighting } from '../../dsp/level/weighting';
import type { InspectAnswer, InspectRequest, Inspector } from '../../src/inspect/inspection';
import type { NoiseRequest } from '../../src/noise/noise-state';
import type { Bench, BenchState, WalkPosition } from '../../src/session/bench';
import type { Position, SessionDocument } from '../../src/session/document';
import { noHistoryNames } from '../../src/session/history/histories';
import { sessionsUnseen, type Sessions } from '../../src/session/shelf/sessions';
import type { RigKind } from '../../src/rig/port';
import type { ClimbRequest } from '../../src/soundlevel/sound-level';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble, type Trouble } from '../../src/trouble';
import { sampleDocument } from './sample-session';

/** The layout of a name the test knows to be good. */
export function layoutOf(name: string): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return layout;
}

function fakeSessions(note: (call: string) => void): Sessions {
  const call = (words: string): Promise<void> => Promise.resolve(note(words));
  return {
    look: () => call('look'),
    open: (id) => call(`open ${id}`),
    create: () => call('create'),
    duplicate: (id) => call(`duplicate ${id}`),
    rename: (id, name) => call(`rename ${id} to ${name}`),
    delete: (id) => call(`delete ${id}`),
    restore: (id) => call(`restore ${id}`),
    remove: (id) => call(`remove ${id}`),
    saveFile: () => call('saveFile').then(() => null),
    openFile: (file) => call(`openFile ${file.name}`),
    compareWith: (id) => call(`compareWith ${id}`),
    compareWithFile: (file) => call(`compareWithFile ${file.name}`),
  };
}

/** A bench that holds still: screens are tested on the state it is given, calls are counted. */
export class FakeBench implements Bench {
  state: BenchState;
  readonly calls: string[] = [];
  readonly sessions: Sessions = fakeSessions((call) => this.calls.push(call));
  private readonly listeners = new Set<() => void>();

  constructor(name = '5.2.4', state: Partial<BenchState> = {}) {
    this.state = {
      document: sampleDocument(name),
      layout: layoutOf(name),
      readings: null,
      together: [],
      proposal: null,
      proving: null,
      proof: null,
      activity: { kind: 'idle' },
      trouble: null,
      mic: null,
      soundLevel: null,
      abilities: null,
      toRepeat: [],
      exposure: { dose: null, equivalentDb: null, seconds: 0 },
      climbed: null,
      devices: null,
      saved: 'saved',
      history: noHistoryNames,
      sessions: sessionsUnseen,
      ...state,
    };
  }

  set(state: Partial<BenchState>): void {
    this.state = { ...this.state, ...state };
    for (const listener of this.listeners) listener();
  }

  get listening(): number {
    return this.listeners.size;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  change(name: string, change: (document: SessionDocument) => SessionDocument): void {
    this.calls.push(name);
    this.set({ document: change(this.state.document) });
  }

  undo(): void {
    this.calls.push('undo');
  }

  redo(): void {
    this.calls.push('redo');
  }

  setLayout(name: string): void {
    this.calls.push(`setLayout ${name}`);
    const layout = layoutFromName(name);
    if (isTrouble(layout)) this.set({ trouble: layout });
    else this.set({ layout, trouble: null });
  }

  setRig(kind: RigKind): void {
    this.calls.push(`setRig ${kind}`);
    this.set({ document: { ...this.state.document, rig: kind } });
  }

  walkStop(at: WalkPosition, round = 0): Promise<void> {
    this.calls.push(`walkStop ${at} ${round}`);
    return Promise.resolve();
  }

  startTake(): Promise<void> {
    this.calls.push('startTake');
    return Promise.resolve();
  }

  repeatSegments(channels: readonly ChannelLabel[]): Promise<void> {
    this.calls.push(`repeatSegments ${channels.join(', ')}`);
    return Promise.resolve();
  }

  startProof(channels: readonly ChannelLabel[] = []): Promise<void> {
    this.calls.push(`startProof ${channels.join(', ')}`);
    return Promise.resolve();
  }

  proceed(): void {
    this.calls.push('proceed');
  }

  startNoise(request: NoiseRequest): Promise<void> {
    this.calls.push(`startNoise ${request.kind} ${request.channel}`);
    return Promise.resolve();
  }

  changeNoise(request: NoiseRequest): void {
    this.calls.push(`changeNoise ${request.kind} ${request.channel}`);
  }

  keepNoise(): void {
    this.calls.push('keepNoise');
  }

  climbLevel(request: ClimbRequest): Promise<void> {
    this.calls.push(`climbLevel ${request.marginDb} dB`);
    return Promise.resolve();
  }

  calibrateSoundLevel(db: number, how: 'calibrator' | 'sound level meter'): Promise<void> {
    this.calls.push(`calibrateSoundLevel ${db} dB, ${how}`);
    return Promise.resolve();
  }

  setMeter(weighting: Weighting, time: 'fast' | 'slow'): void {
    this.calls.push(`setMeter ${weighting} ${time}`);
  }

  importCalibration(file: File): Promise<void> {
    this.calls.push(`importCalibration ${file.name}`);
    return Promise.resolve();
  }

  setPosition(position: Omit<Position, 'id'> | string): void {
    this.calls.push(`setPosition ${typeof position === 'string' ? position : position.name}`);
  }

  /** Answers what a test put here; else it never answers. */
  answer: (request: InspectRequest) => Promise<InspectAnswer | Trouble> = () =>
    new Promise(() => undefined);

  inspect(): Inspector {
    this.calls.push('inspect');
    return {
      ask: (request) => this.answer(request),
      close: () => this.calls.push('inspect no more'),
    };
  }

  lookAtDevices(ask: boolean): Promise<void> {
    this.calls.push(ask ? 'lookAtDevices, asking' : 'lookAtDevices');
    return Promise.resolve();
  }

  stop(): void {
    this.calls.push('stop');
  }

  saveStimulus(): Promise<null> {
    this.calls.push('saveStimulus');
    return Promise.resolve(null);
  }

  importCapture(file: File): Promise<void> {
    this.calls.push(`importCapture ${file.name}`);
    return Promise.resolve();
  }

  dismissTrouble(): void {
    this.calls.push('dismissTrouble');
    this.set({ trouble: null });
  }
}
