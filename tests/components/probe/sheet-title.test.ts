import { describe, expect, it } from 'vitest';
import {
  firstSheet,
  sheetFromHash,
  sheetOfActivity,
  type SheetId,
} from '../../../components/probe/probe-sheets';
import { sheetTitle } from '../../../components/probe/sheet-title';
import { stageFromHash } from '../../../components/shell/stages';
import type { MicrophoneSetup } from '../../../src/microphone/calibration';
import type { Activity, BenchState } from '../../../src/session/bench';
import { FakeBench } from '../fake-bench';
import { plain } from '../mount';
import { sampleTake } from '../sample-session';

function titled(sheet: SheetId, state: Partial<BenchState> = {}): string {
  return plain(sheetTitle(new FakeBench('5.2.4', state).state, sheet).title);
}

const { document } = new FakeBench('5.2.4').state;
const calibration = { name: 'invented.txt', hz: [20, 20_000], db: [0, 1], phaseDegrees: null };
const soundLevel = { offsetDb: 120, how: 'calibrator', at: '', microphone: 'invented' } as const;
const withMicrophone = (microphone: Partial<MicrophoneSetup>) => ({
  document: { ...document, microphone: { ...document.microphone, ...microphone } },
});
const climbing: Activity = {
  kind: 'climbing',
  climb: { gainDb: -40, marginDb: null, soundLevel: null, progress: 0, secondsLeft: 20 },
};
const waiting: Activity = { kind: 'waiting', prompt: { title: 'Move', steps: [] } };

describe('the sheets of Probe', () => {
  it('are named in the address behind their stage', () => {
    expect(sheetFromHash('#probe/level')).toBe('level');
    expect(stageFromHash('#probe/level')).toBe('probe');
    for (const hash of ['#probe', '#probe/', '#probe/attic', '#plan/level', '']) {
      expect(sheetFromHash(hash)).toBeNull();
    }
  });

  it('begin with the take in the practice room, with the wires before the first live take', () => {
    const live = { ...document, rig: 'live' as const };
    const first = (of: typeof document) =>
      firstSheet(new FakeBench('5.2.4', { document: of }).state);
    expect(first(document)).toBe('take');
    expect(first(live)).toBe('connect');
    expect(first({ ...live, takes: [sampleTake('5.2.4')] })).toBe('take');
  });

  it('each have what runs on them', () => {
    const on = (activity: Activity) => sheetOfActivity(new FakeBench('5.1', { activity }).state);
    expect([on({ kind: 'idle' }), on(climbing), on(waiting)]).toEqual([null, 'level', 'take']);
  });
});

describe('the titles of the sheets', () => {
  it('say how the speakers are reached', () => {
    expect(titled('connect')).toBe('The practice room needs no wires');
    expect(titled('connect', { document: { ...document, rig: 'live' } })).toBe(
      'This computer plays and listens',
    );
  });

  it('say what is known of the microphone', () => {
    expect(titled('microphone')).toBe('Nothing is known of the microphone yet');
    expect(titled('microphone', withMicrophone({ calibration }))).toBe(
      'Readings are corrected by invented.txt',
    );
    expect(titled('microphone', withMicrophone({ soundLevel }))).toBe(
      'The microphone is calibrated in level only',
    );
    expect(titled('microphone', withMicrophone({ calibration, soundLevel }))).toBe(
      'The microphone is calibrated in response and in level',
    );
  });

  it('say how loud takes play, and whether that is enough', () => {
    const climbed = {
      end: 'margin',
      gainDb: -30,
      marginDb: 26,
      sentence: '',
      linearity: null,
    } as const;
    expect(titled('level')).toBe('Takes play at −30.0 dB');
    expect(titled('level', { climbed })).toBe('−30.0 dB is loud enough for takes');
    expect(titled('level', { climbed: { ...climbed, end: 'clipping' } })).toBe(
      'Takes play at −30.0 dB',
    );
    expect(titled('level', { activity: climbing })).toBe('Climbing to a test level');
  });

  it('say what the noise does, and that a recording has none', () => {
    expect(titled('noise')).toContain('Pink noise shows a speaker');
    expect(titled('noise', { document: { ...document, rig: 'recording' } })).toContain(
      'needs a microphone at this computer',
    );
  });
});
