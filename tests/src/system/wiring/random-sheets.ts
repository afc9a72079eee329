import fc from 'fast-check';
import type { ChannelLabel, Layout } from '../../../../src/system/channel';
import { layoutFromName } from '../../../../src/system/layout';
import type { ProcessorOutput, ProcessorSheet } from '../../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../../src/trouble';
import { sampleSheet } from '../sheet/sample-sheets';

const units: readonly (readonly ChannelLabel[])[] = [
  ['FL', 'FR'],
  ['FC'],
  ['SiL', 'SiR'],
  ['BL', 'BR'],
  ['TpFL', 'TpFR'],
  ['TpSiL', 'TpSiR'],
  ['TpBL', 'TpBR'],
  ['Sub 1'],
  ['Sub 2'],
];
const couples = units.filter((unit) => unit.length === 2);
const someUnits = (min: number, max: number) =>
  fc.subarray([...units], { minLength: min, maxLength: max });

/** A layout named by name; throws for one that is none. */
export function namedLayout(name: string): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return layout;
}

/** A layout of any pairs, centre and subs, named ones or not. */
export const anyLayout: fc.Arbitrary<Layout> = someUnits(1, 4).map((chosen) => ({
  name: 'free',
  title: 'free',
  channels: namedLayout('9.4.6').channels.filter(({ label }) => chosen.flat().includes(label)),
}));

const without = fc.option(
  someUnits(1, 1).map(([unit]) => unit),
  { nil: undefined, freq: 4 },
);

/** One output alone, with roles of any kind. */
const lone = fc
  .array(fc.tuple(fc.constantFrom(...units.flat()), without), { minLength: 6, maxLength: 20 })
  .map((roles) => [roles.map(([channel, onlyWithout]) => ({ channel, onlyWithout }))]);

/** Two outputs that carry pairs. */
const couple = fc
  .array(fc.tuple(fc.constantFrom(...couples), without), { minLength: 3, maxLength: 9 })
  .map((roles) =>
    [0, 1].map((side) =>
      roles.map(([unit, onlyWithout]) => ({ channel: unit[side] ?? 'FC', onlyWithout })),
    ),
  );

const naming = fc.record({
  '1': fc.constantFrom(['front'] as const, ['middle'] as const, ['back'] as const),
  '2': fc.constantFrom(['front', 'back'] as const, ['middle', 'back'] as const, undefined),
  '3': fc.constantFrom(['front', 'middle', 'back'] as const, undefined),
});

/** Small sheets with rules of every kind, which may leave nothing to wire. */
export const anySheet: fc.Arbitrary<ProcessorSheet> = fc
  .array(fc.oneof({ weight: 2, arbitrary: lone }, { weight: 3, arbitrary: couple }), {
    minLength: 2,
    maxLength: 4,
  })
  .chain((groups) => {
    const outputs: ProcessorOutput[] = [];
    const pairs: [string, string][] = [];
    for (const group of groups) {
      const ids = group.map((roles, at) => {
        const id = `o${outputs.length + at}`;
        return { id, name: `Output ${id}`, roles: onceEach(roles) };
      });
      outputs.push(...ids);
      const [first, second] = ids;
      if (first && second) pairs.push([first.id, second.id]);
    }
    const someIds = fc.subarray(
      outputs.map(({ id }) => id),
      { minLength: 1, maxLength: Math.min(3, outputs.length) },
    );
    const choice = fc.record({
      channels: someUnits(1, 4).map((chosen) => chosen.flat()),
      outputs: fc.option(someIds, { nil: undefined, freq: 9 }),
    });
    return fc.record({
      outputs: fc.constant(outputs),
      pairs: fc.constant(pairs),
      exclusive: fc.array(
        fc.record({
          name: fc.constant('a set'),
          choices: fc.array(choice, { minLength: 2, maxLength: 3 }),
        }),
        { maxLength: 3 },
      ),
      channelChain: fc.option(fc.shuffledSubarray([...units], { minLength: 2, maxLength: 3 })),
      outputChain: fc.option(fc.shuffledSubarray(outputs.map(({ id }) => [id]))),
      heightNaming: naming,
    });
  })
  .map(({ channelChain, outputChain, ...rules }) => ({
    ...sampleSheet('sample-7'),
    ...rules,
    filling: {
      channels: channelChain ? [channelChain] : [],
      outputs: outputChain ? [outputChain] : [],
    },
  }));

function onceEach<Role extends { channel: string }>(roles: readonly Role[]): Role[] {
  return roles.filter(
    ({ channel }, at) => roles.findIndex((role) => role.channel === channel) === at,
  );
}
