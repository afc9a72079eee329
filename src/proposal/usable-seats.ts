import type { Layout } from '../system/channel';
import type { SeatReadings } from './bass-field';
import { checkReadings } from './check-readings';
import type { Readings } from '../reading/reading';
import { isSub } from '../system/channel-names';
import { median } from '../../dsp/signal/median';
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
  const usable = others.filter(({ name, readings }) => {
    const refused = checkReadings(readings, layout);
    if (refused) {
      missing.push({
        channel: null,
        what: 'sub alignment',
        sentence: `${name} is left out of the sums. ${refused.sentence}`,
        action: `Take again at ${name}.`,
      });
    }
    const louderDb = refused ? null : louderBy(readings, first.readings);
    const alike = louderDb === null || Math.abs(louderDb) <= alikeDb;
    if (!alike) {
      missing.push({
        channel: null,
        what: 'sub alignment',
        sentence: `${name} is left out of the sums: its speakers were captured ${Math.abs(louderDb).toFixed(0)} dB ${louderDb > 0 ? 'louder' : 'softer'} than at ${first.name}, as with another gain.`,
        action: `Take again at ${name} with the gains of ${first.name}.`,
      });
    }
    return !refused && alike;
  });
  const sorted = usable.toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const celsius = [first, ...sorted].map(({ readings }) => readings.temperatureCelsius);
  const [least, most] = [Math.min(...celsius), Math.max(...celsius)];
  if (most - least > alikeCelsius) {
    missing.push({
      channel: null,
      what: 'temperature',
      sentence: `The seats were taken at ${least} to ${most} °C. Distances go by the ${celsius[0]} °C of ${first.name}; sums of the others hold all the same, as each is one take.`,
      action: 'Set the temperature that was right for each, or take the seats again.',
    });
  }
  return { seats: [first, ...sorted], missing };
}

/** By how much the main speakers of one seat are louder than at another, median, dB; null unread. */
function louderBy(readings: Readings, than: Readings): number | null {
  const differences = readings.channels.flatMap(({ channel, levelDb }) => {
    const other = than.channels.find((one) => one.channel === channel)?.levelDb ?? null;
    return isSub(channel) || levelDb === null || other === null ? [] : [levelDb - other];
  });
  return differences.length === 0 ? null : median(differences);
}
