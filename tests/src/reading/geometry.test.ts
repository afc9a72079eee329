import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../dsp/signal/random';
import { checkGeometry } from '../../../src/reading/geometry';
import type { GeometryFinding } from '../../../src/reading/geometry-finding';
import { fitSeat } from '../../../src/reading/geometry-fit';
import type { Readings } from '../../../src/reading/reading';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import { nothingInForce } from '../../../src/system/declared-settings';
import {
  nothingDeclared,
  placedLayout,
  type DeclaredPlace,
  type DeclaredSystem,
} from '../../../src/system/declared-system';
import { expectClose } from '../../close';
import { sampleReadings } from '../../components/sample-readings';
import { layoutNamed } from './wired-room';

/** Where speakers stand from the seat, x right, y back, z up, metres. */
type Points = Readonly<Partial<Record<ChannelLabel, readonly [number, number, number]>>>;

const points: Points = {
  FL: [-1.2, -2.1, 0],
  FR: [1.2, -2.1, 0],
  FC: [0, -2.2, 0],
  SiL: [-1.7, 0.6, 0.2],
  SiR: [1.7, 0.6, 0.2],
  TpFL: [-1.1, -0.1, 1.4],
  TpFR: [1.1, -0.1, 1.4],
};

/** A plan in which the speakers stand at those points. */
function planOf(at: Points): DeclaredSystem {
  const places: Partial<Record<ChannelLabel, DeclaredPlace>> = {};
  for (const [label, [x, y, z]] of Object.entries(at)) {
    places[label as ChannelLabel] = {
      azimuthDegrees: (Math.atan2(-x, -y) * 180) / Math.PI,
      elevationDegrees: (Math.atan2(z, Math.hypot(x, y)) * 180) / Math.PI,
      distanceMetres: Math.hypot(x, y, z),
    };
  }
  return { ...nothingDeclared, places };
}

/** Readings of a microphone at a place; `longer` is what sound takes longer by, metres. */
function heardAt(
  layout: Layout,
  at: Points,
  [x, y]: readonly [number, number] = [0, 0],
  longer: Readonly<Partial<Record<ChannelLabel, number>>> = {},
): Readings {
  const readings = sampleReadings(layout);
  const channels = readings.channels.map((one) => {
    const point = at[one.channel];
    if (!point) return one;
    const straight = Math.hypot(point[0] - x, point[1] - y, point[2]);
    return { ...one, distanceMetres: straight + (longer[one.channel] ?? 0) };
  });
  return { ...readings, channels };
}

function check(
  readings: Readings,
  name: string,
  system: DeclaredSystem,
  distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>> = {},
): GeometryFinding[] {
  const layout = placedLayout(layoutNamed(name), system);
  return checkGeometry(readings, layout, system, { ...nothingInForce, distanceMetres });
}

const kinds = (findings: readonly GeometryFinding[]): string[] => findings.map(({ kind }) => kind);

describe('measured distances beside the plan', () => {
  const layout = layoutNamed('5.1.2');
  const plan = planOf(points);

  it('agree, and say how well', () => {
    const findings = check(heardAt(layout, points), '5.1.2', plan);
    expect(kinds(findings)).toEqual(['agrees']);
    expect(findings[0]?.sentence).toMatch(
      /all 7 speakers .* fit the plan, and one seat, to 0\.01 m/,
    );
    expect(findings[0]?.wantsAction).toBe(false);
  });

  it('tell that the microphone stands elsewhere, and where', () => {
    const findings = check(heardAt(layout, points, [0.4, -0.3]), '5.1.2', plan);
    expect(kinds(findings)).toEqual(['seat', 'pair']);
    expect(findings[0]?.sentence).toContain('0.40 m right and 0.30 m forward');
  });

  it('name the one speaker that does not fit, and what may be behind it', () => {
    const late = check(heardAt(layout, points, [0, 0], { SiL: 0.62 }), '5.1.2', plan);
    expect(kinds(late)).toEqual(['speaker', 'pair']);
    expect(late[0]).toMatchObject({ channels: ['SiL'], wantsAction: true });
    expect(late[0]?.sentence).toMatch(
      /0\.62 m too far beside the others.*delay inside.*Measure it by tape once more/,
    );
    const early = check(heardAt(layout, points, [0.1, 0.1], { TpFR: -0.5 }), '5.1.2', plan);
    expect(early[0]).toMatchObject({ kind: 'speaker', channels: ['TpFR'] });
    expect(early[0]?.sentence).toMatch(
      /too near.*Sound is never early.*Measure it by tape once more/,
    );
  });

  it('name two that do not fit, where six others agree', () => {
    const more: Points = { ...points, BL: [-1.4, 1.9, 0], BR: [1.3, 2, 0] };
    const nine = layoutNamed('7.1.2');
    const heard = heardAt(nine, more, [0, 0], { SiL: 0.6, FR: 1.1 });
    const named = check(heard, '7.1.2', planOf(more)).filter(({ kind }) => kind === 'speaker');
    expect(named.flatMap(({ channels }) => channels).sort()).toEqual(['FR', 'SiL']);
    const seven = check(heardAt(layout, points, [0, 0], { SiL: 0.6, FR: 1.1 }), '5.1.2', plan);
    expect(seven[0]).toMatchObject({ kind: 'unclear', channels: ['FR', 'SiL'] });
  });

  it('lay what all have in common on the tape, which changes nothing', () => {
    const longer = Object.fromEntries(Object.keys(points).map((label) => [label, 0.5]));
    const findings = check(heardAt(layout, points, [0, 0], longer), '5.1.2', plan);
    expect(kinds(findings)).toEqual(['tape']);
    expect(findings[0]?.sentence).toMatch(/0\.50 m longer.*tape distance of FL.*only differences/);
    expect(findings[0]?.wantsAction).toBe(false);
  });

  it('say nothing of less than 0.3 m, nor of subs and bounced heights', () => {
    const quiet = check(heardAt(layout, points, [0, 0], { FC: 0.1 }), '5.1.2', plan);
    expect(quiet.filter(({ wantsAction }) => wantsAction)).toEqual([]);
    const bouncing: DeclaredSystem = { ...plan, bounced: ['TpFL', 'TpFR'] };
    const heard = heardAt(layout, points, [0, 0], { TpFL: 2, TpFR: 2, 'Sub 1': 3 });
    expect(kinds(check(heard, '5.1.2', bouncing))).toEqual(['agrees']);
  });

  it('compare each for itself where too few are declared', () => {
    const stereo = layoutNamed('2.0');
    const { FL = [0, 0, 0], FR = [0, 0, 0] } = points;
    const two = planOf({ FL, FR });
    const findings = check(heardAt(stereo, points, [0, 0], { FR: 0.5 }), '2.0', two);
    expect(kinds(findings)).toEqual(['speaker', 'pair']);
    expect(findings[0]?.sentence).toContain('FR reads 2.92 m and is declared 2.42 m away');
    expect(check(heardAt(stereo, points), '2.0', nothingDeclared)).toEqual([]);
  });

  it('say that they fit no seat where three speakers are off', () => {
    const longer = { SiL: 0.9, FR: -0.7, TpFL: 1.4 };
    const findings = check(heardAt(layout, points, [0, 0], longer), '5.1.2', plan);
    expect(findings[0]).toMatchObject({ kind: 'unclear', wantsAction: true });
  });

  it('never blame another speaker alone, over 300 rooms', () => {
    const random = seededRandom(4);
    let named = 0;
    for (let room = 0; room < 300; room++) {
      const shaken: Points = Object.fromEntries(
        Object.entries(points).map(([label, [x, y, z]]) => [
          label,
          [x + 0.6 * (random() - 0.5), y + 0.6 * (random() - 0.5), z],
        ]),
      );
      const labels = Object.keys(points) as ChannelLabel[];
      const odd = labels[Math.floor(random() * labels.length)] ?? 'FL';
      const longer = Object.fromEntries(labels.map((label) => [label, 0.06 * (random() - 0.5)]));
      longer[odd] = 0.4 + random();
      const seat = [0.3 * (random() - 0.5), 0.3 * (random() - 0.5)] as const;
      const findings = check(heardAt(layout, shaken, seat, longer), '5.1.2', planOf(shaken));
      const blamed = findings.filter(({ kind }) => kind === 'speaker');
      for (const { channels } of blamed) expect(channels).toEqual([odd]);
      named += blamed.length;
    }
    expect(named).toBeGreaterThan(270);
  });
});

describe('distances typed into the processor', () => {
  const layout = layoutNamed('5.1.2');
  const plan = planOf(points);
  const tape = Object.fromEntries(
    Object.entries(points).map(([label, point]) => [label, Math.hypot(...point)]),
  );

  it('are told where the sound has another, beside the others', () => {
    const findings = check(heardAt(layout, points), '5.1.2', plan, { ...tape, FR: 3.4 });
    expect(kinds(findings)).toEqual(['typed', 'agrees']);
    expect(findings[0]?.sentence).toContain('FR (3.40 m, by sound 2.42 m)');
  });

  it('stand in for a plan without distances', () => {
    const bare = { ...plan, places: {} };
    const findings = check(heardAt(layout, points), '5.1.2', bare, { ...tape, FR: 3.4 });
    expect(findings[0]).toMatchObject({ kind: 'speaker', channels: ['FR'] });
  });

  it('may all be off alike', () => {
    const moved = Object.fromEntries(Object.entries(tape).map(([label, m]) => [label, m + 1]));
    expect(kinds(check(heardAt(layout, points), '5.1.2', plan, moved))).toEqual(['agrees']);
  });
});

describe('the fit of a seat', () => {
  it('finds place and common error from exact distances', () => {
    const speakers = Object.entries(points).map(([label, [x, y, z]]) => ({
      channel: label as ChannelLabel,
      offset: { rightMetres: x, backMetres: y, upMetres: z },
      metres: Math.hypot(x - 0.7, y - 0.4, z) + 0.25,
    }));
    const fit = fitSeat(speakers);
    expectClose(fit?.rightMetres, 0.7, 1e-6);
    expectClose(fit?.backMetres, 0.4, 1e-6);
    expectClose(fit?.commonMetres, 0.25, 1e-6);
    expect(fit?.worstMetres).toBeLessThan(1e-6);
  });

  it('is not made from speakers in one direction', () => {
    const speakers = (['FL', 'FR', 'FC', 'FLw', 'FRw'] as const).map((channel, k) => ({
      channel,
      offset: { rightMetres: 0.01 * k, backMetres: -2 - 0.1 * k, upMetres: 0 },
      metres: 2 + 0.1 * k,
    }));
    expect(fitSeat(speakers)).toBeNull();
  });
});

describe('left and right', () => {
  it('are noted where they are not equally far, which is no error', () => {
    const layout = layoutNamed('5.1.2');
    const heard = heardAt(layout, { ...points, FR: [1.4, -2.4, 0] });
    const [finding] = check(heard, '5.1.2', nothingDeclared);
    expect(finding).toMatchObject({ kind: 'pair', channels: ['FL', 'FR'], wantsAction: false });
    expect(finding?.sentence).toContain('FR is 0.36 m farther than FL');
  });
});
