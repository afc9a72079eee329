import type {
  InspectAnswer,
  InspectRequest,
  SoundSource,
} from '../../../../src/inspect/inspection';

const hz = Array.from({ length: 60 }, (_, n) => 20 * 2 ** (n / 6));
/** A slope of 3 dB an octave that is 0 dB at 1 kHz, louder for every speaker after the first. */
const powerOf = (louderDb: number): number[] =>
  hz.map((f) => 10 ** ((louderDb + 3 * Math.log2(f / 1000)) / 10));

const time = (value: number | null) => ({
  seconds: value,
  interval: value === null ? null : ([0.9 * value, 1.1 * value] as const),
  nonLinearity: value === null ? null : 2,
  trusted: value !== null,
  sentence: value === null ? 'No T30: the noise is too near. More level would settle it.' : null,
});

/** Answers of a room nobody was in; every speaker 2 dB louder than the one before. */
export function inventedAnswer(request: InspectRequest): InspectAnswer {
  switch (request.kind) {
    case 'responses':
      return {
        kind: 'responses',
        hz,
        curves: request.sources.map((source: SoundSource, index) => ({
          source,
          power: powerOf(2 * index),
          noisePower: hz.map((f) => (f < 30 ? 1 : 1e-8)),
          fromHz: request.window.kind === 'gate' ? 1000 / request.window.milliseconds : null,
        })),
      };
    case 'phase':
      return {
        kind: 'phase',
        hz,
        curves: request.sources.map((source) => ({
          source,
          groupDelay: hz.map((f) => (f < 30 ? null : 1 / f)),
          excessPhase: hz.map(() => -45),
        })),
      };
    case 'time':
      return {
        kind: 'time',
        curves: request.sources.map((source) => ({
          source,
          energy: { seconds: [-0.001, 0, 0.1, 0.2], db: [-60, 0, -20, -40] },
          step: { seconds: [-0.001, 0, 0.001], level: [0, 1, 0.2] },
        })),
      };
    case 'decay': {
      const band = (name: string, midHz: number, t30: number | null) => ({
        midHz,
        name,
        edt: time(0.3),
        t20: time(0.35),
        t30: time(t30),
        curvature: null,
        rangeDb: 48,
        curve: null,
      });
      return {
        kind: 'decay',
        source: request.source,
        bands: [band('500 Hz', 501.2, 0.4), band('1 kHz', 1000, null)],
        mid: { edt: time(0.3), t20: time(0.35), t30: time(null) },
        schroeder:
          request.volume === null
            ? { hz: null, interval: null, sentence: 'No Schroeder frequency: type the room.' }
            : { hz: 167, interval: [150, 180], sentence: null },
      };
    }
    case 'bass':
      return {
        kind: 'bass',
        source: request.source,
        picture: {
          hz: Float64Array.from([20, 40, 80]),
          seconds: Float64Array.from([0, 0.1]),
          db: Float64Array.from([-6, -30, 0, -12, -20, -60]),
          floorDb: Float64Array.from([-60, -60, -60]),
          blurSeconds: Float64Array.from([0.1, 0.05, 0.02]),
        },
        modes: [
          { hz: 41, levelDb: 0, seconds: 0.8, interval: [0.7, 0.9], sentence: null },
          { hz: 63, levelDb: -3, seconds: null, interval: null, sentence: 'Two modes beat here.' },
        ],
      };
    case 'impulse':
      return {
        kind: 'impulse',
        source: request.source,
        ir: { samples: Float64Array.from([0, 1, 0.5]), sampleRate: 48_000, zeroIndex: 1 },
        arrivalSeconds: 0,
      };
  }
}
