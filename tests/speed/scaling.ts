import { makeTake, type SpeedTake } from './make-take';
import { readWhole } from './read-whole';

const layouts = ['2.0', '3.1', '5.1.2', '5.2.4', '9.1.6'];
const sweepSeconds = [2 ** 17 / 48000, 2 ** 18 / 48000, 2 ** 19 / 48000, 2 ** 20 / 48000];
const lengthLayout = '3.1';
const times = 4;

/**
 * Time goes with the size to this power at most, from the least squares of its logarithm: linear,
 * with room for the logarithm in a transform, for caches and for other work on the machine. Takes
 * begin with silence, however few speakers they have, which makes the power a little less than 1.
 */
const mostPower = 1.2;

interface Row {
  readonly name: string;
  readonly size: number;
  readonly seconds: number;
}

/** Reads takes of 2 to 16 speakers and with sweeps of 3 to 22 s on one core; the problems. */
export async function showScaling(): Promise<string[]> {
  const bySpeakers: Row[] = [];
  for (const name of layouts) {
    const take = await makeTake(name);
    const size = take.schedule.channels.length;
    bySpeakers.push({ name: `${size} speakers`, size, seconds: await secondsOf(take) });
  }
  const byLength: Row[] = [];
  for (const seconds of sweepSeconds) {
    const take = await makeTake(lengthLayout, { sweepSeconds: seconds });
    const size = take.samples.length / take.schedule.sampleRate;
    byLength.push({ name: `${size.toFixed(0)} s`, size, seconds: await secondsOf(take) });
  }
  return [
    ...judge('speakers', 'ms a speaker', bySpeakers),
    ...judge(`length, ${lengthLayout}`, 'ms a second', byLength),
  ];
}

async function secondsOf(take: SpeedTake): Promise<number> {
  const all: number[] = [];
  for (let n = 0; n < times; n++) all.push((await readWhole(take)).core);
  return Math.min(...all);
}

function judge(what: string, unit: string, rows: readonly Row[]): string[] {
  console.log(`\nWith the ${what}: seconds of one core, ${unit}`);
  for (const { name, size, seconds } of rows) {
    const each = ((1000 * seconds) / size).toFixed(1).padStart(8);
    console.log(`${name.padEnd(20)}${seconds.toFixed(3).padStart(8)} ${each}`);
  }
  const power = slopeOf(
    rows.map(({ size }) => Math.log(size)),
    rows.map(({ seconds }) => Math.log(seconds)),
  );
  console.log(
    `Time goes with size to the power of ${power.toFixed(2)}; the limit is ${mostPower}.`,
  );
  return power > mostPower
    ? [`time goes with the ${what} to the power of ${power.toFixed(2)}`]
    : [];
}

/** Slope of the least-squares line. */
function slopeOf(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, one) => sum + one, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const product = x.reduce((sum, one, n) => sum + (one - mx) * ((y[n] ?? my) - my), 0);
  return product / x.reduce((sum, one) => sum + (one - mx) ** 2, 0);
}
