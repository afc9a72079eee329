import { describe, expect, it } from 'vitest';
import type { BassBands, ChannelReading } from '../../../src/reading/reading';
import type { CloseTo } from '../../../src/reading/close-to';
import { isSameOrder } from '../../../src/reading/rolloff-together';
import type { Position, SessionDocument, TakeRecord } from '../../../src/session/document';
import { ordersTogether } from '../../../src/session/orders-together';
import { rememberTogether, stillTogether } from '../../../src/session/still-together';
import { withSameModel, withSheetF3 } from '../../../src/system/speaker-models';
import { sampleDocument, sampleTake } from '../../components/sample-session';
import { layoutNamed } from '../reading/wired-room';
import { inventedBass, inventedTogether } from '../reading/told-together';

const layout = layoutNamed('4.1');
const seat = (number: number): Position => ({
  id: `seat-${number}`,
  name: `Seat ${number}`,
  kind: 'seat',
});

/** A take of which everything has a bass of its own, unless changed. */
function take(
  position: Position,
  change: (reading: ChannelReading) => ChannelReading = (one) => one,
  more: Partial<TakeRecord> = {},
): TakeRecord {
  const record = { ...sampleTake('4.1'), id: `${position.id} take`, position, ...more };
  if (!record.readings) return record;
  const channels = record.readings.channels.map((one) =>
    change({ ...one, bassBands: inventedBass() }),
  );
  return { ...record, readings: { ...record.readings, channels } };
}

function documentOf(
  takes: readonly TakeRecord[],
  more: Partial<SessionDocument> = {},
): SessionDocument {
  return { ...sampleDocument('4.1'), takes, ...more };
}

const heard = (document: SessionDocument): string[] =>
  ordersTogether(document, layout).map((order) =>
    order.heard.map(({ channel, seat: at }) => `${channel}@${at}`).join(' '),
  );

const bassOf = (record: TakeRecord, label: string): BassBands | undefined =>
  record.readings?.channels.find(({ channel }) => channel === label)?.bassBands;

describe('what is read together', () => {
  it('is each pair at every seat, and a lone sub only at several', () => {
    expect(heard(documentOf([take(seat(1))]))).toEqual([
      'FL@seat-1 FR@seat-1',
      'SiL@seat-1 SiR@seat-1',
    ]);
    expect(heard(documentOf([take(seat(1)), take(seat(2))]))).toEqual([
      'FL@seat-1 FR@seat-1 FL@seat-2 FR@seat-2',
      'Sub 1@seat-1 Sub 1@seat-2',
      'SiL@seat-1 SiR@seat-1 SiL@seat-2 SiR@seat-2',
    ]);
  });

  it('is the newest whole bass of a speaker at a seat', () => {
    const fault = { kind: 'bang', sentence: 'A bang.' } as const;
    const first = take(seat(1));
    const bang = take(
      seat(1),
      (one) => (one.channel === 'FL' ? { ...one, faults: [fault] } : one),
      { id: 'second' },
    );
    const [order] = ordersTogether(documentOf([first, bang]), layout);
    expect(order?.heard[0]?.bass).toBe(bassOf(first, 'FL'));
    expect(order?.heard[1]?.bass).toBe(bassOf(bang, 'FR'));
  });

  it('leaves out close positions, other rigs and layouts, the outdated and what has no bass', () => {
    const close = { id: 'near', name: 'Close to FL', kind: 'close' } as const;
    const without = (one: ChannelReading): ChannelReading => ({ ...one, bassBands: undefined });
    const takes = [
      take(seat(2), (one) => one, { rig: 'live' }),
      take(seat(3), (one) => one, { schedule: sampleTake('5.1').schedule }),
      take(seat(4), (one) => one, { outdated: true }),
      take(seat(5), without),
      take(close),
      take(seat(1)),
    ];
    expect(heard(documentOf(takes))[0]).toBe('FL@seat-1 FR@seat-1');
    expect(heard(documentOf(takes, { position: close }))).toEqual([]);
    expect(heard(documentOf(takes, { position: seat(9) }))).toEqual([]);
  });

  describe('with one of a model heard close by', () => {
    const near = (more: Partial<CloseTo>, id = 'near'): Position => ({
      id,
      name: id,
      kind: 'close',
      close: { channel: 'FR', coneOnly: false, ...more },
    });
    const size = { coneMetres: 0.13, portMetres: 0.05 };
    const bass = { re: [1], im: [0] };
    const withBass = (one: ChannelReading): ChannelReading => ({ ...one, bass });
    const closeOf = (takes: readonly TakeRecord[]) =>
      ordersTogether(documentOf(takes), layout).map(({ heard: at, close }) => ({ at, close }))[0];

    it('is that alone, for all of the model', () => {
      const close = take(near({}));
      expect(closeOf([close, take(seat(1))])).toEqual({
        at: [],
        close: { channel: 'FR', bass: bassOf(close, 'FR'), coneOnly: false, port: null },
      });
      expect(heard(documentOf([close, take(seat(1))]))[1]).toBe('SiL@seat-1 SiR@seat-1');
      for (const more of [{ outdated: true }, { rig: 'live' }, { purpose: 'prove' }] as const) {
        expect(closeOf([take(near({}), (one) => one, more), take(seat(1))])?.close).toBeUndefined();
      }
    });

    it('is cone and port where both were heard, whatever was louder', () => {
      const cone = take(near({ coneOnly: true }), withBass, { gainDb: -20 });
      const port = take(near({ port: size }, 'port'), withBass, { gainDb: -26 });
      expect(closeOf([port, cone, take(seat(1))])?.close).toEqual({
        channel: 'FR',
        bass: bassOf(cone, 'FR'),
        coneOnly: true,
        port: { size, bass: bassOf(port, 'FR'), coneHeard: bass, portHeard: bass, coneLouderDb: 6 },
      });
      expect(closeOf([cone, take(seat(1))])?.close).toMatchObject({ coneOnly: true, port: null });
      expect(closeOf([port, take(seat(1))])?.close).toBeUndefined();
      const whole = take(near({}, 'whole'));
      expect(closeOf([whole, cone, take(seat(1))])?.close?.coneOnly).toBe(false);
    });

    it('is another order once the port has another width', () => {
      const rest = [take(near({ coneOnly: true }), withBass), take(seat(1))];
      const port = take(near({ port: size }, 'port'), withBass);
      const wider = { ...port, position: near({ port: { ...size, portMetres: 0.07 } }, 'port') };
      const [a] = ordersTogether(documentOf([port, ...rest]), layout);
      const [same] = ordersTogether(documentOf([port, ...rest]), layout);
      const [other] = ordersTogether(documentOf([wider, ...rest]), layout);
      if (!a || !same || !other) throw new RangeError('no order');
      expect(isSameOrder(a, same)).toBe(true);
      expect(isSameOrder(a, other)).toBe(false);
    });
  });

  it('is one speaker alone when its sheet is known', () => {
    const { models } = sampleDocument('4.1');
    const document = documentOf([take(seat(1))], { models: withSheetF3(models, ['Sub 1'], 25) });
    const orders = ordersTogether(document, layout);
    expect(orders.map(({ sheetF3Hz }) => sheetF3Hz)).toEqual([null, 25, null]);
    expect(orders[1]).toMatchObject({ channels: ['Sub 1'], isSub: true });
  });

  it('is all groups that were said to be one model', () => {
    const { models } = sampleDocument('4.1');
    const joined = withSameModel(models, 'sides', 'fronts');
    const [order] = ordersTogether(documentOf([take(seat(1))], { models: joined }), layout);
    expect(order?.channels).toEqual(['FL', 'FR', 'SiL', 'SiR']);
    expect(order?.heard.length).toBe(4);
  });

  it('stays the same order while nothing of it changes, and a finding stands as long', () => {
    const document = documentOf([take(seat(1))]);
    const [a] = ordersTogether(document, layout);
    const [b, other] = ordersTogether({ ...document, name: 'Renamed' }, layout);
    if (!a || !b || !other) throw new RangeError('no order');
    expect(isSameOrder(a, b)).toBe(true);
    expect(isSameOrder(a, other)).toBe(false);
    const known = [{ order: a, finding: inventedTogether(['FL', 'FR'], null).finding }];
    expect(stillTogether(known, [b, other])).toBe(known);
    expect(stillTogether(known, [other])).toEqual([]);
    expect(stillTogether([], [b])).toEqual([]);
    for (const one of known) rememberTogether(one);
    expect(stillTogether([], [other, b])).toEqual(known);
    const [again] = ordersTogether(documentOf([take(seat(1))]), layout);
    if (!again) throw new RangeError('no order');
    expect(isSameOrder(a, again)).toBe(false);
  });
});
