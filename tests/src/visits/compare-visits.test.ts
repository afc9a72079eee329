import { describe, expect, it } from 'vitest';
import type { ChannelReading } from '../../../src/reading/reading';
import {
  beside,
  changed,
  farther,
  finding,
  louder,
  microphoneAt,
  then,
  toldReadings,
  visit,
  withReadingsOf,
} from './told-visits';

const half = ({ figure }: { figure: { interval: readonly [number, number] } | null }): number =>
  figure ? (figure.interval[1] - figure.interval[0]) / 2 : Infinity;

describe('two visits that read alike', () => {
  it('changed in nothing, and the mains are as they were', () => {
    const found = beside(visit('now'));
    expect(changed(found)).toEqual([]);
    for (const what of ['distance', 'level', 'polarity', 'response', 'roll-off']) {
      expect(finding(found, `${what} · SiL · Seat 1`).verdict).toBe('as it was');
    }
    expect(found.notes).toEqual([]);
    expect(found.before.takenAt).toBe('2025-01-01T00:01:00.000Z');
  });

  it('say what cannot be told, each with one action', () => {
    const found = beside(visit('now'));
    const untold = found.findings.filter(({ verdict }) => verdict === 'cannot tell');
    expect(untold.length).toBeGreaterThan(0);
    for (const { action, sentence } of untold) {
      expect(action, sentence).toMatch(/^[A-Z].+\.$/);
    }
    expect(finding(found, 'distance · Sub 1 · Seat 1').verdict).toBe('cannot tell');
    const others = found.findings.filter(({ verdict }) => verdict !== 'cannot tell');
    expect(others.every(({ action }) => action === null)).toBe(true);
  });

  it('have findings with ids of their own, and sentences without broken numbers', () => {
    const { findings } = beside(visit('now', { SiL: farther(0.3) }));
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
    for (const { sentence } of findings) expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('what moved', () => {
  it('is one speaker where the others stand as they stood', () => {
    const found = beside(visit('now', { SiL: farther(0.3) }));
    expect(changed(found)).toEqual(['distance · SiL · Seat 1']);
    const { figure, sentence } = finding(found, 'distance · SiL · Seat 1');
    expect(figure?.value).toBeCloseTo(0.3, 6);
    expect(sentence).toContain('30 cm farther');
  });

  it('is the reference speaker where all others seem to have moved together', () => {
    const mains = ['FR', 'FC', 'SiL', 'SiR', 'TpFL', 'TpFR', 'TpBL', 'TpBR'] as const;
    const told = Object.fromEntries(mains.map((label) => [label, farther(-0.2)]));
    const found = beside(visit('now', told));
    expect(changed(found)).toEqual(['distance · FL · Seat 1']);
    expect(finding(found, 'distance · FL · Seat 1').figure?.value).toBeCloseTo(0.2, 6);
  });

  it('is nothing where another tape distance was given', () => {
    const readings = toldReadings({}, farther(0.4));
    const now = withReadingsOf(visit('now'), { ...readings, referenceDistanceMetres: 2.8 });
    expect(changed(beside(now))).toEqual([]);
  });

  it('is the microphone where one place of it explains all distances', () => {
    const found = beside(visit('now', microphoneAt(0.1, 0.25)));
    expect(changed(found)).toEqual(['microphone · Seat 1']);
    const { figure, sentence } = finding(found, 'microphone · Seat 1');
    expect(figure?.value).toBeCloseTo(Math.hypot(0.1, 0.25), 2);
    expect(sentence).toContain('to the right');
    expect(sentence).toContain('back');
  });

  it('is the microphone and a speaker where only that one does not fit its place', () => {
    const told = microphoneAt(0.1, 0.25);
    const found = beside(
      visit('now', { ...told, SiR: (was) => farther(0.4)(told.SiR?.(was) ?? was) }),
    );
    expect(changed(found)).toEqual(['microphone · Seat 1', 'distance · SiR · Seat 1']);
  });

  it('is nobody’s fault where distances fit neither', () => {
    const told = { FR: farther(0.3), FC: farther(-0.4), SiL: farther(0.5), SiR: farther(-0.3) };
    const rest = { TpFL: farther(0.6), TpBR: farther(-0.5) };
    const found = beside(visit('now', { ...told, ...rest }));
    expect(changed(found)).toEqual([]);
    expect(finding(found, 'microphone · Seat 1').verdict).toBe('cannot tell');
    expect(finding(found, 'distance · FC · Seat 1').action).toContain('Put the microphone');
  });

  it('cannot be told within both intervals', () => {
    const wide = (was: ChannelReading): ChannelReading => ({
      ...was,
      distanceInterval:
        was.distanceMetres === null ? null : [was.distanceMetres - 0.2, was.distanceMetres + 0.2],
    });
    const now = withReadingsOf(visit('now'), toldReadings({ SiL: farther(0.2) }, wide));
    const found = beside(now, withReadingsOf(then, toldReadings({}, wide)));
    expect(finding(found, 'distance · SiL · Seat 1').verdict).toBe('cannot tell');
  });
});

describe('what drifted', () => {
  it('is a level beside the others', () => {
    const found = beside(visit('now', { SiR: louder(-2) }));
    expect(changed(found)).toEqual(['level · SiR · Seat 1']);
    expect(finding(found, 'level · SiR · Seat 1').figure?.value).toBeCloseTo(-2, 6);
  });

  it('is not a gain that all have in common', () => {
    const now = withReadingsOf(visit('now'), toldReadings({}, louder(7)));
    const found = beside(now);
    expect(changed(found)).toEqual([]);
    expect(finding(found, 'level · FL · Seat 1').verdict).toBe('as it was');
    expect(finding(found, 'level · all · Seat 1').verdict).toBe('cannot tell');
    expect(finding(found, 'noise · Seat 1').verdict).toBe('cannot tell');
  });

  it('is the level of all where the sound level was calibrated at both visits', () => {
    const calibrated = (offsetDb: number) => ({
      microphone: {
        ...then.microphone,
        soundLevel: {
          offsetDb,
          how: 'calibrator',
          at: '',
          microphone: 'the system’s own choice',
        } as const,
      },
    });
    const readings = toldReadings({}, louder(7));
    const quieter = withReadingsOf(visit('now', {}, calibrated(110)), readings);
    const before = { ...then, ...calibrated(117) };
    expect(finding(beside(quieter, before), 'level · all · Seat 1').verdict).toBe('as it was');
    const really = withReadingsOf(visit('now', {}, calibrated(117)), readings);
    const found = beside(really, before);
    expect(changed(found)).toEqual(['level · all · Seat 1']);
    expect(finding(found, 'level · all · Seat 1').figure?.value).toBeCloseTo(7, 6);
  });

  it('cannot be told of two speakers that differ from one another', () => {
    const pair = (db: number) =>
      withReadingsOf(visit(db === 0 ? 'then' : 'now'), {
        ...toldReadings({ FR: louder(db) }),
        channels: toldReadings({ FR: louder(db) }).channels.slice(0, 2),
      });
    const found = beside(pair(4), pair(0));
    expect(finding(found, 'level · FR · Seat 1').verdict).toBe('cannot tell');
    expect(finding(found, 'level · FL · Seat 1').verdict).toBe('cannot tell');
  });

  it('is less sure in more noise', () => {
    const noisy =
      (marginDb: number) =>
      (was: ChannelReading): ChannelReading => ({
        ...was,
        margins: {
          hz: [31.5, 63, 500, 1000, 2000],
          marginDb: Array.from({ length: 5 }, () => marginDb),
        },
        curves: was.curves && {
          ...was.curves,
          response: {
            ...was.curves.response,
            noiseDb: was.curves.response.db.map((db) => db - marginDb),
          },
        },
      });
    const widths = [50, 20, 12].map((marginDb) => {
      const now = withReadingsOf(
        visit('now'),
        toldReadings({ SiR: louder(-1.2) }, noisy(marginDb)),
      );
      const found = beside(now);
      return ['level', 'response'].map((what) => half(finding(found, `${what} · SiR · Seat 1`)));
    });
    for (const at of [0, 1]) {
      const [quiet = 0, some = 0, much = 0] = widths.map((pair) => pair[at] ?? 0);
      expect(some).toBeGreaterThan(quiet);
      expect(much).toBeGreaterThan(some);
    }
    const loud = withReadingsOf(visit('now'), toldReadings({ SiR: louder(-1.2) }, noisy(3)));
    expect(finding(beside(loud), 'level · SiR · Seat 1').verdict).toBe('cannot tell');
  });
});

describe('what sounds otherwise', () => {
  const tilted =
    (db: number, aboveHz: number) =>
    (was: ChannelReading): ChannelReading => ({
      ...was,
      curves: was.curves && {
        ...was.curves,
        response: {
          ...was.curves.response,
          db: was.curves.response.db.map((one, k) =>
            (was.curves?.response.hz[k] ?? 0) > aboveHz ? one + db : one,
          ),
        },
      },
    });

  it('is a speaker whose treble is gone, with where', () => {
    const found = beside(visit('now', { FC: tilted(-9, 4000) }));
    expect(changed(found)).toEqual(['response · FC · Seat 1']);
    const { sentence, figure } = finding(found, 'response · FC · Seat 1');
    expect(figure?.value).toBeCloseTo(-9, 1);
    const at = Number(/at (\d+) Hz/.exec(sentence)?.[1]);
    expect(at).toBeGreaterThan(4000);
  });

  it('is put down to the microphone where all mains changed alike', () => {
    const now = withReadingsOf(
      visit('now'),
      toldReadings({}, (was) => (was.channel.startsWith('Sub') ? was : tilted(-5, 6000)(was))),
    );
    expect(changed(beside(now))).toEqual(['response · all · Seat 1']);
  });

  it('is a roll-off that left both intervals', () => {
    const higher = (was: ChannelReading): ChannelReading => ({
      ...was,
      rolloff: was.rolloff && { ...was.rolloff, f6Hz: { median: 90, interval: [85, 95] } },
    });
    const found = beside(visit('now', { FL: higher }));
    expect(changed(found)).toEqual(['roll-off · FL · Seat 1']);
    expect(finding(found, 'roll-off · FL · Seat 1').sentence).toContain('90 Hz');
  });

  it('is no roll-off whose intervals are wide while the response about it is as it was', () => {
    const unsure = (was: ChannelReading): ChannelReading => ({
      ...was,
      rolloff: was.rolloff && { ...was.rolloff, f6Hz: { median: 40, interval: [20, 80] } },
    });
    const before = withReadingsOf(then, toldReadings({}, unsure));
    const alike = withReadingsOf(visit('now'), toldReadings({}, unsure));
    expect(finding(beside(alike, before), 'roll-off · FL · Seat 1').verdict).toBe('as it was');
    const bassless = toldReadings({ FL: tilted(4, 60) }, unsure);
    const other = withReadingsOf(visit('now'), bassless);
    expect(finding(beside(other, before), 'roll-off · FL · Seat 1').verdict).toBe('cannot tell');
  });

  it('may be another speaker where nearly everything of one changed', () => {
    const other = (was: ChannelReading): ChannelReading =>
      tilted(-9, 4000)(louder(-4)(farther(0.4)(was)));
    const found = beside(visit('now', { FC: other }));
    expect(found.notes).toEqual([
      'FC changed in so much that another speaker may play on its output: check the wiring in Patch.',
    ]);
    expect(beside(visit('now', { FC: louder(-4) })).notes).toEqual([]);
  });

  it('is a speaker that fell silent', () => {
    const silent = (was: ChannelReading): ChannelReading => ({
      ...was,
      levelDb: null,
      faults: [{ kind: 'silent', sentence: 'Nothing.' }],
    });
    const found = beside(visit('now', { FC: silent }));
    expect(changed(found)).toEqual(['take · FC · Seat 1']);
    expect(finding(found, 'take · FC · Seat 1').sentence).toContain('stays silent now');
  });

  it('is a speaker that was turned over', () => {
    const found = beside(visit('now', { TpFR: (was) => ({ ...was, polarity: 'inverted' }) }));
    expect(changed(found)).toEqual(['polarity · TpFR · Seat 1']);
  });
});

describe('the order of channels', () => {
  it('changes no finding', () => {
    const told = { ...microphoneAt(0.2, -0.1), SiL: louder(3), FC: farther(0.5) };
    const now = visit('now', told);
    const turned = (document: typeof now) => {
      const [take] = document.takes;
      if (!take?.readings) throw new Error('a visit has a take');
      const channels = take.readings.channels.toReversed();
      return withReadingsOf(document, { ...take.readings, channels });
    };
    expect(beside(turned(now), turned(then)).findings).toEqual(beside(now).findings);
  });
});
