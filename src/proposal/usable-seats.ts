import type { Layout } from '../system/channel';
import type { SeatReadings } from './bass-field';
import { checkReadings } from './check-readings';
import type { MissingSetting } from './proposal';

/** Temperatures so far apart move a speaker at 3 m by 5 mm, °C. */
const alikeCelsius = 3;

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
    return !refused;
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
