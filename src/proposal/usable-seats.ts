import { temperatureText } from '../locale/temperature-text';
import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import type { Readings } from '../reading/reading';
import type { Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import type { SeatReadings } from './bass-field';
import { checkReadings } from './check-readings';
import type { MissingSetting } from './proposal';

/** Temperatures so far apart move a speaker at 3 m by 5 mm, °C. */
const alikeCelsius = 3;

/** Seats whose speakers are louder or softer than at the first by more were captured otherwise, dB. */
const alikeDb = 6;

/** The seats a proposal can rest on, the first as it is; the others by name, and what is wrong. */
export function usableSeats(
  first: SeatReadings,
  others: readonly SeatReadings[],
  layout: Layout,
): {
  readonly seats: readonly [SeatReadings, ...SeatReadings[]];
  readonly missing: readonly MissingSetting[];
} {
  const missing: MissingSetting[] = [];
  const usable = others.filter((seat) => {
    const problem = whyLeftOut(seat, first, layout);
    if (problem) missing.push({ channel: null, what: 'sub alignment', ...problem });
    return !problem;
  });
  const sorted = usable.toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const celsius = [first, ...sorted].map(({ readings }) => readings.temperatureCelsius);
  const [least, most] = [Math.min(...celsius), Math.max(...celsius)];
  if (most - least > alikeCelsius) {
    missing.push({
      channel: null,
      what: 'temperature',
      sentence: msg(
        str`The seats were taken at ${temperatureText(least)} to ${temperatureText(most)}. Distances go by the ${temperatureText(celsius[0])} of ${first.name}; sums of the others hold all the same, as each is one take.`,
      ),
      action: msg('Set the temperature that was right for each, or take the seats again.'),
    });
  }
  return { seats: [first, ...sorted], missing };
}

/** Why the sums are made without a seat; null when they can rest on it. */
function whyLeftOut(
  { name, readings }: SeatReadings,
  first: SeatReadings,
  layout: Layout,
): Pick<MissingSetting, 'sentence' | 'action'> | null {
  const refused = checkReadings(readings, layout);
  if (refused) {
    const sentence = msg(str`${name} is left out of the sums. ${refused.sentence}`);
    return { sentence, action: msg(str`Take again at ${name}.`) };
  }
  const db = louderBy(readings, first.readings);
  if (db === null || Math.abs(db) <= alikeDb) return null;
  return {
    sentence: msg(
      str`${name} is left out of the sums: its speakers were captured ${withUnit(numberText(Math.abs(db), 0), 'dB')} ${db > 0 ? msg('louder') : msg('softer')} than at ${first.name}, as with another gain.`,
    ),
    action: msg(str`Take again at ${name} with the gains of ${first.name}.`),
  };
}

/** By how much the main speakers of one seat are louder than at another, median, dB; null unread. */
function louderBy(readings: Readings, than: Readings): number | null {
  const differences = readings.channels.flatMap(({ channel, levelDb }) => {
    const other = than.channels.find((one) => one.channel === channel)?.levelDb ?? null;
    return isSub(channel) || levelDb === null || other === null ? [] : [levelDb - other];
  });
  return differences.length === 0 ? null : median(differences);
}
