import { lengthText } from '../../src/locale/length-text';
import { trimmedText } from '../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import type { Channel, Layout } from '../../src/system/channel';
import { partnersOf } from './partner';
import type { PlacedSpeaker } from './place-speakers';

/** The name a screen reader says: label, plain name, partner, distance, what is wrong. */
export function speakerName(
  placed: PlacedSpeaker,
  layout: Layout,
  faults: readonly string[],
): string {
  const { channel, distanceMetres } = placed;
  const parts = [`${channel.label}, ${channel.name}`];
  const partners = partnersOf(channel, layout).map((one) => one.label);
  if (partners.length > 0) parts.push(msg(str`with ${partners.join(', ')}`));
  parts.push(
    distanceMetres === null
      ? msg('not measured yet')
      : msg(str`${lengthText(distanceMetres)} away`),
  );
  return [...parts, ...faults].join(', ');
}

/** A direction in words: 0 is straight ahead, positive to the left. */
export function directionInWords(azimuthDegrees: number): string {
  const degrees = tenths(Math.abs(azimuthDegrees));
  if (degrees === 0) return msg('ahead');
  if (degrees === 180) return msg('behind');
  const angle = trimmedText(degrees, 1);
  return azimuthDegrees > 0 ? msg(str`${angle}° left`) : msg(str`${angle}° right`);
}

/** "30° up", "12.5° down", "ear height". */
export function elevationInWords(elevationDegrees: number): string {
  const degrees = tenths(Math.abs(elevationDegrees));
  if (degrees === 0) return msg('ear height');
  return `${trimmedText(degrees, 1)}° ${elevationDegrees > 0 ? 'up' : 'down'}`;
}

function tenths(degrees: number): number {
  return Number(degrees.toFixed(1));
}

/** How many of a kind there are, for the key beside the plan. */
export function kindInWords(kind: Channel['kind'], count: number): string {
  const words = {
    bed: msg('at ear height'),
    height: msg('above'),
    sub: count === 1 ? msg('sub') : msg('subs'),
  };
  return `${count} ${words[kind]}`;
}
