import { msg, str } from '@lit/localize';
import type { DeclaredSettings } from '../system/declared-settings';
import type { DeclaredSystem } from '../system/declared-system';
import { listInWords } from '../system/list-in-words';
import { partnerLabel } from '../system/partner-label';
import { sayMetres, type DirectSpeaker, type GeometryFinding } from './geometry-finding';
import { strangeMetres } from './geometry-outliers';
import type { ChannelReading } from './reading';

/** Partners are unequal from here on, metres, 0.3 ms; common practice. */
const unequalMetres = 0.1;

/** Distances in the processor beside those of the plan: told where they differ in earnest. */
export function findOffTyped(
  direct: readonly DirectSpeaker[],
  { places }: DeclaredSystem,
  { distanceMetres }: DeclaredSettings,
): GeometryFinding[] {
  const typed = direct.flatMap(({ channel, metres }) => {
    const has = distanceMetres[channel.label];
    return has === undefined ? [] : [{ label: channel.label, has, metres, longer: metres - has }];
  });
  const middle =
    typed.map(({ longer }) => longer).toSorted((a, b) => a - b)[typed.length >> 1] ?? 0;
  const wrong = typed.filter(
    ({ label, longer }) =>
      (places[label]?.distanceMetres ?? null) !== null && Math.abs(longer - middle) > strangeMetres,
  );
  if (wrong.length === 0) return [];
  const named = wrong.map(({ label, has, metres }) =>
    msg(str`${label} (${sayMetres(has)}, by sound ${sayMetres(metres)})`),
  );
  const sentence = msg(
    str`The processor has other distances than the sound tells, beside the other speakers: ${listInWords(named)}. Propose has what to type.`,
  );
  return [
    { kind: 'typed', channels: wrong.map(({ label }) => label), wantsAction: true, sentence },
  ];
}

/** Left and right partners that are not equally far: no error. */
export function findUnequalPairs(direct: readonly DirectSpeaker[]): GeometryFinding[] {
  const pairs = direct.flatMap((left) => {
    const partner = partnerLabel(left.channel.label);
    const right = direct.find(({ channel }) => channel.label === partner);
    if (!right || /R$|Rw$/.test(left.channel.label)) return [];
    const apart = left.metres - right.metres;
    const unsure = halfOf(left.reading) + halfOf(right.reading);
    return Math.abs(apart) > Math.max(unequalMetres, unsure) ? [{ left, right, apart }] : [];
  });
  if (pairs.length === 0) return [];
  const named = pairs.map(({ left, right, apart }) => {
    const [near, far] = apart > 0 ? [right, left] : [left, right];
    return msg(
      str`${far.channel.label} is ${sayMetres(Math.abs(apart))} farther than ${near.channel.label}`,
    );
  });
  const channels = pairs.flatMap(({ left, right }) => [left.channel.label, right.channel.label]);
  const sentence = msg(
    str`Left and right are not equally far: ${listInWords(named)}. Distances make up for the time.`,
  );
  return [{ kind: 'pair', channels, wantsAction: false, sentence }];
}

function halfOf({ distanceInterval }: ChannelReading): number {
  return distanceInterval ? (distanceInterval[1] - distanceInterval[0]) / 2 : 0;
}
