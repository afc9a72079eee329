import {
  alignmentWays,
  subsWays,
  type AlignmentWay,
  type BassFigures,
  type SubsWay,
} from './bass-measure';
import { atMost, quantile, shown, type Row, type Table } from './table';

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;
const decibels = (value: number): string => `${value.toFixed(2)} dB`;

/** The prototype's median and worst tenth of loss and of the dip. */
const alignmentPrototypes: Partial<Record<AlignmentWay, readonly [string, string]>> = {
  'as wired': ['2.1 / 4.2', '5.9 / 12'],
  onset: ['2.4 / 5.6', ''],
  'envelope peak': ['1.2 / 2.1', ''],
  'most power': ['0.44 / 0.89', '1.9 / 4.1'],
  here: ['0.63 / 1.3', '2.4 / 5.3'],
};
const subsPrototypes: Partial<Record<SubsWay, string>> = {
  'one sub': '2.92 dB',
  'by arrival': '2.58 dB',
  here: '2.08 dB',
};

/** The tables of all rooms of one kind. */
export function bassTables(preset: string, rooms: readonly BassFigures[]): Table[] {
  const title = (what: string): string => `${what}, ${rooms.length} ${preset} rooms`;
  return [
    { title: title('Crossover by the measured rule'), rows: crossoverRows(rooms) },
    { title: title('Sub to main, six seats'), rows: alignmentRows(rooms) },
    { title: title('The same at the crossover proposed'), rows: proposedRows(rooms) },
    { title: title('Two subs, six seats, 25 to 100 Hz'), rows: subsRows(rooms) },
  ];
}

function crossoverRows(rooms: readonly BassFigures[]): Row[] {
  const all = rooms.flatMap(({ crossovers }) => crossovers);
  return (['one seat', 'six seats'] as const).flatMap((seats) => {
    const own = all.filter((one) => one.seats === seats);
    const share = (is: (one: (typeof own)[number]) => boolean): number =>
      own.filter(is).length / own.length;
    const isOne = seats === 'one seat';
    const lower = share(({ chosenHz, ruleHz }) => chosenHz < ruleHz);
    const below = share(({ chosenHz, f6Hz }) => chosenHz < f6Hz);
    const ratios = own
      .filter(({ chosenHz, ruleHz }) => Math.max(chosenHz, ruleHz) < Infinity)
      .map(({ chosenHz, ruleHz }) => chosenHz / ruleHz);
    return [
      atMost(
        `${seats}: lower than on the true f6, of ${own.length}`,
        lower,
        0.1,
        isOne ? '9 %' : '',
        percent,
      ),
      atMost(`${seats}: below the true f6`, below, 0.02, isOne ? '1.7 %' : '', percent),
      shown(
        `${seats}: the same by the 80 % quantile`,
        `${percent(share(({ chosen80Hz, ruleHz }) => chosen80Hz < ruleHz))} / ${percent(share(({ chosen80Hz, f6Hz }) => chosen80Hz < f6Hz))}`,
      ),
      shown(
        `${seats}: times the rule's step, median / 90 %`,
        `${quantile(ratios, 0.5).toFixed(2)} / ${quantile(ratios, 0.9).toFixed(2)}`,
      ),
    ];
  });
}

function alignmentRows(rooms: readonly BassFigures[]): Row[] {
  const rows = alignmentWays.flatMap((way): Row[] => {
    const all = rooms.flatMap(({ alignments }) => alignments.filter((one) => one.way === way));
    const [loss = '', dip = ''] = alignmentPrototypes[way] ?? [];
    const beyond = (periods: number): number =>
      all.filter(({ offPeriods }) => offPeriods > periods).length / all.length;
    const pair = (pick: (one: (typeof all)[number]) => number): string => {
      const values = all.map(pick);
      return `${quantile(values, 0.5).toFixed(2)} / ${quantile(values, 0.9).toFixed(2)}`;
    };
    const losses = all.map(({ lossDb }) => lossDb);
    const isOurs = way === 'here';
    return [
      ...(isOurs
        ? [
            atMost('here: loss, median', quantile(losses, 0.5), 0.6, '0.63 dB', decibels),
            atMost('here: loss, worst tenth', quantile(losses, 0.9), 1.3, '1.3 dB', decibels),
          ]
        : [
            shown(
              `${way}: loss, median / worst tenth`,
              pair(({ lossDb }) => lossDb),
              loss,
            ),
          ]),
      shown(
        `${way}: loss at three other seats`,
        pair(({ elsewhereDb }) => elsewhereDb),
      ),
      shown(
        `${way}: dip`,
        pair(({ dipDb }) => -dipDb),
        dip,
      ),
      shown(
        `${way}: dip at three other seats`,
        pair(({ dipElsewhereDb }) => -dipElsewhereDb),
      ),
      shown(
        `${way}: beyond half a period`,
        percent(beyond(0.5)),
        way === 'most power' ? '60 %' : '',
      ),
      isOurs
        ? atMost('here: beyond a period', beyond(1), 0.04, '4 %', percent)
        : shown(`${way}: beyond a period`, percent(beyond(1))),
    ];
  });
  const least = rooms.map(({ leastLossDb }) => leastLossDb);
  const held = rooms.flatMap(({ inInterval }) => inInterval ?? []);
  const heldShare = held.filter(Boolean).length / held.length;
  return [
    ...rows,
    shown(
      'least of any delay: loss',
      `${quantile(least, 0.5).toFixed(2)} / ${quantile(least, 0.9).toFixed(2)}`,
    ),
    shown('best delay of all nine seats in the 90 % interval', percent(heldShare)),
  ];
}

/** What the proposal comes to, crossover and delay, at the seats measured and at three others. */
function proposedRows(rooms: readonly BassFigures[]): Row[] {
  const all = rooms.map(({ proposed }) => proposed);
  const lost = (seats: string, values: readonly number[]): Row[] => [
    atMost(`${seats}: loss, median`, quantile(values, 0.5), 0.6, '0.63 dB', decibels),
    atMost(`${seats}: loss, worst tenth`, quantile(values, 0.9), 1.3, '1.3 dB', decibels),
  ];
  const share = (is: (one: (typeof all)[number]) => boolean): number =>
    all.filter(is).length / all.length;
  const steps = all.map(({ crossoverHz }) => crossoverHz);
  return [
    ...lost(
      'measured seats',
      all.map(({ lossDb }) => lossDb),
    ),
    ...lost(
      'three other seats',
      all.map(({ elsewhereDb }) => elsewhereDb),
    ),
    atMost(
      'beyond a period',
      share(({ offPeriods }) => offPeriods > 1),
      0.04,
      '4 %',
      percent,
    ),
    shown(
      'crossover, median / 90 %',
      `${quantile(steps, 0.5).toFixed(0)} / ${quantile(steps, 0.9).toFixed(0)} Hz`,
    ),
    shown('crossover above 120 Hz', percent(share(({ crossoverHz }) => crossoverHz > 120))),
  ];
}

function subsRows(rooms: readonly BassFigures[]): Row[] {
  const ones = rooms.flatMap(({ subs }) => subs.filter(({ way }) => way === 'one sub'));
  const alone = ones.reduce((sum, one) => sum + one.deviationDb, 0) / ones.length;
  return subsWays.flatMap((way): Row[] => {
    const all = rooms.flatMap(({ subs }) => subs.filter((one) => one.way === way));
    const mean = (pick: (one: (typeof all)[number]) => number): number =>
      all.reduce((sum, one) => sum + pick(one), 0) / all.length;
    const deviation = mean(({ deviationDb }) => deviationDb);
    const name = `${way}: seat deviation`;
    const prototype = subsPrototypes[way] ?? '';
    return [
      ...(way === 'here'
        ? [
            atMost(name, deviation, 2.1, prototype, decibels),
            atMost('here: of the deviation of one sub', deviation / alone, 0.72, '71 %', percent),
          ]
        : [shown(name, decibels(deviation), prototype)]),
      shown(`${way}: at three other seats`, decibels(mean(({ elsewhereDb }) => elsewhereDb))),
      shown(`${way}: level re the loudest in phase`, decibels(mean(({ levelDb }) => levelDb))),
    ];
  });
}
