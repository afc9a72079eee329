import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { rate } from './segments';

/** Sounds of a length of samples, about 1 rms while they last, made up for the tests. */
export type Sound = (length: number, seed: number) => Float64Array;

/** A door slams: noise below some 300 Hz to 1 kHz, dying away. */
export const bang: Sound = (length, seed) => {
  const random = seededRandom(seed);
  const normal = gaussian(random);
  const at = (0.3 + random()) * rate;
  const decay = (0.03 + 0.06 * random()) * rate;
  const hit = new Float64Array(length).map((_, n) =>
    n < at ? 0 : normal() * Math.exp((at - n) / decay),
  );
  return scaled(lowPass(hit, 300 + 700 * random()));
};

/** A lorry passes: noise about 50 Hz, swelling and fading for three seconds. */
export const rumble: Sound = (length, seed) => {
  const random = seededRandom(seed);
  const normal = gaussian(random);
  const tone = resonate(
    new Float64Array(length).map(() => normal()),
    35 + 30 * random(),
    1.5,
  );
  const soft = lowPass(lowPass(tone, 90), 90);
  return scaled(soft.map((value, n) => value * Math.sin((Math.PI * n) / length)));
};

/** Mains hum with its harmonics, there all the time. */
export const hum =
  (mainsHz: number): Sound =>
  (length, seed) => {
    const random = seededRandom(seed);
    const parts = [1, 0.5, 0.4, 0.15].map((level) => ({ level, phase: 6.28 * random() }));
    return scaled(
      new Float64Array(length).map((_, n) =>
        parts.reduce(
          (sum, { level, phase }, k) =>
            sum + level * Math.sin((2 * Math.PI * mainsHz * (k + 1) * n) / rate + phase),
          0,
        ),
      ),
    );
  };

/** Someone speaks for two seconds: syllables of a buzz through three resonances. */
export const voice: Sound = (length, seed) => {
  const random = seededRandom(seed);
  const normal = gaussian(random);
  const out = new Float64Array(length);
  let phase = 0;
  for (let at = (0.2 + random()) * rate, left = 9; left > 0; left--) {
    const long = Math.round((0.1 + 0.12 * random()) * rate);
    const hz = 110 + 90 * random();
    const buzz = new Float64Array(long).map((_, n) => {
      phase += hz / rate;
      return Math.sqrt(Math.sin((Math.PI * n) / long)) * ((phase % 1) - 0.5 + 0.03 * normal());
    });
    for (const [k, formant] of [300 + 400 * random(), 1000 + 1200 * random(), 2500].entries()) {
      const shaped = resonate(buzz, formant, formant / 90);
      for (const [n, value] of shaped.entries()) {
        const to = Math.round(at) + n;
        if (to < length) out[to] = (out[to] ?? 0) + value / 2 ** k;
      }
    }
    at += long + (0.04 + 0.08 * random()) * rate;
  }
  return scaled(out);
};

function lowPass(samples: Float64Array, hz: number): Float64Array {
  const keep = Math.exp((-2 * Math.PI * hz) / rate);
  let state = 0;
  return samples.map((value) => (state = keep * state + (1 - keep) * value));
}

function resonate(samples: Float64Array, hz: number, q: number): Float64Array {
  const turn = (2 * Math.PI * hz) / rate;
  const loss = Math.sin(turn) / (2 * q);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return samples.map((x) => {
    const y = (loss * (x - x2) + 2 * Math.cos(turn) * y1 - (1 - loss) * y2) / (1 + loss);
    [x2, x1, y2, y1] = [x1, x, y1, y];
    return y;
  });
}

/** Rms 1 over what lies within 26 dB of the peak. */
function scaled(samples: Float64Array): Float64Array {
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const loud = samples.filter((value) => Math.abs(value) > 0.05 * peak);
  const rms = Math.sqrt(loud.reduce((sum, value) => sum + value * value, 0) / loud.length);
  return samples.map((value) => value / rms);
}
