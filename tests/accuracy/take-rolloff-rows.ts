import type { Crossing, RoomFigures } from './figures';
import { atLeast, atMost, quantile, shown, type Row } from './table';

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** Prototype, one position in a stiff room and in a leaky one: median and 90 % error of f3. */
const prototypes: Record<string, readonly [string, string, string]> = {
  typical: ['18 %', '47 %', '95 %'],
  leaky: ['23 %', '70 %', '92 %'],
};

/** Errors of the roll-offs that the takes' readings gave; subs are only shown. */
export function rolloffRows(rooms: readonly RoomFigures[], preset: string): Row[] {
  const all = rooms.flatMap(({ rolloffs }) => rolloffs);
  const mains = all.filter(({ kind }) => kind === 'main');
  const subs = all.filter(({ kind }) => kind === 'sub');
  const [median = '', most = '', coverage = ''] = prototypes[preset] ?? [];
  const boxes = mains.filter(({ box }) => box !== 'open');
  const wrong = boxes.filter(({ box }) => box === 'wrong').length;
  const under = mains.filter(
    ({ f6UpperHz, f6 }) => f6UpperHz !== null && f6 && f6UpperHz < f6.truthHz,
  );
  return [
    ...crossingRows('f3', told(mains, 'f3'), median, most, coverage),
    ...crossingRows('f6', told(mains, 'f6'), '', '', ''),
    ...crossingRows('f10', told(mains, 'f10'), '', '', ''),
    atMost('85 % quantile of f6 below the true f6', under.length / mains.length, 0.2, '', percent),
    shown('box decided', percent(boxes.length / mains.length)),
    shown('box wrong, of those', percent(wrong / boxes.length)),
    ...(subs.length > 0 ? [shown('subs: f6 median error', errorAt(told(subs, 'f6'), 0.5))] : []),
  ];
}

function told(all: RoomFigures['rolloffs'], key: 'f3' | 'f6' | 'f10'): Crossing[] {
  return all.flatMap((one) => one[key] ?? []);
}

function crossingRows(
  name: string,
  all: readonly Crossing[],
  median: string,
  most: string,
  coverage: string,
): Row[] {
  const errors = all.map(({ medianHz, truthHz }) => Math.abs(medianHz / truthHz - 1));
  const bias = quantile(
    all.map(({ medianHz, truthHz }) => Math.log(medianHz / truthHz)),
    0.5,
  );
  const held = all.filter(({ truthHz, low, high }) => truthHz >= low && truthHz <= high).length;
  return [
    atMost(`${name}: median error`, quantile(errors, 0.5), 0.26, median, percent),
    atMost(`${name}: 90 % error`, quantile(errors, 0.9), 0.65, most, percent),
    shown(`${name}: bias`, percent(Math.expm1(bias))),
    atLeast(`${name}: truth inside the 90 % interval`, held / all.length, 0.85, coverage, percent),
  ];
}

function errorAt(all: readonly Crossing[], share: number): string {
  return percent(
    quantile(
      all.map(({ medianHz, truthHz }) => Math.abs(medianHz / truthHz - 1)),
      share,
    ),
  );
}
