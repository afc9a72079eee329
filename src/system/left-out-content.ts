import { msg, str } from '@lit/localize';
import type { ChannelLabel, GroupId, Layout } from './channel';
import { hasGroup, labelsOf, type DeclarableGroup } from './edit-speakers';
import { listInWords } from './list-in-words';

/** What a group carries, and what becomes of it. */
export interface LeftOutContent {
  /** The speakers that get it when the group is left out. */
  readonly into: readonly ChannelLabel[];
  /** What happens when the group is listed and not there. */
  readonly listed: string;
  /** What happens when the group is left out. */
  readonly leftOut: string;
}

interface Folding {
  readonly carries: string;
  /** Groups that take the content over: all that are there of the first row that has one. */
  readonly into: readonly (readonly GroupId[])[];
  readonly source: string;
}

const standard = () => msg('ITU-R BS.775, from memory');
const practice = () => msg('common practice, no source');

/** Where processors and renderers fold what has no speaker of its own. */
const foldings: Readonly<Record<DeclarableGroup | 'subs', Folding>> = {
  centre: {
    get carries() {
      return msg('dialogue');
    },
    into: [['fronts']],
    get source() {
      return msg(str`3 dB down each: ${standard()}`);
    },
  },
  sides: {
    get carries() {
      return msg('sound from the sides');
    },
    into: [['fronts']],
    get source() {
      return msg(str`3 dB down: ${standard()}`);
    },
  },
  backs: {
    get carries() {
      return msg('sound from behind');
    },
    into: [['sides'], ['fronts']],
    get source() {
      return practice();
    },
  },
  wides: {
    get carries() {
      return msg('sound between front and side');
    },
    into: [['fronts', 'sides']],
    get source() {
      return practice();
    },
  },
  'front heights': {
    get carries() {
      return msg('sound above the front');
    },
    into: [['middle heights'], ['back heights'], ['fronts']],
    get source() {
      return practice();
    },
  },
  'middle heights': {
    get carries() {
      return msg('sound overhead');
    },
    into: [['front heights', 'back heights'], ['sides'], ['fronts']],
    get source() {
      return practice();
    },
  },
  'back heights': {
    get carries() {
      return msg('sound above the back');
    },
    into: [['middle heights'], ['front heights'], ['backs'], ['sides'], ['fronts']],
    get source() {
      return practice();
    },
  },
  subs: {
    get carries() {
      return msg('the low-frequency effects and all bass below the crossovers');
    },
    into: [['fronts']],
    get source() {
      return practice();
    },
  },
};

/**
 * What becomes of a group's content in a layout: lost when the group is listed and not there,
 * folded into others when it is left out. Source: ITU-R BS.775 (from memory) for centre and sides,
 * common practice for the rest.
 */
export function leftOutContent(layout: Layout, group: DeclarableGroup | 'subs'): LeftOutContent {
  const { carries, into, source } = foldings[group];
  const row = into.find((groups) => groups.some((one) => hasGroup(layout, one))) ?? [];
  const labels = row.filter((one) => hasGroup(layout, one)).flatMap((one) => [...labelsOf(one)]);
  const own = labelsOf(group);
  const named = group === 'subs' ? msg('subs') : listInWords(own);
  const who = own.length === 1 ? msg(str`${named} is`) : msg(str`${named} are`);
  return {
    into: labels,
    listed: msg(str`When ${who} listed and not there, nobody plays ${carries}.`),
    leftOut: msg(
      str`When ${who} left out, ${listInWords(labels)} take over ${carries} (${source}).`,
    ),
  };
}
