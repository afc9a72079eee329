import type { Readings } from '../reading/reading';
import type { Layout } from '../system/channel';
import type { Trouble } from '../trouble';
import { abilitiesOf } from './abilities';
import { bassCase } from './bass-case';
import { checkProcessor } from './check-processor';
import { checkReadings } from './check-readings';
import { nothingChosen } from './choices';
import { composeProposal } from './compose-proposal';
import type { ProcessorSteps, Proposal } from './proposal';
import { measuredMembers, type ProposalOptions } from './proposal-options';
import { usableSeats } from './usable-seats';

/**
 * Numbers to type into the processor, each with its reason: crossovers, distances, trims, subs and
 * their filters, with the bass ledger. Distances and trims are those of the readings' own seat,
 * sums those of all seats. The order of channels in the readings and the layout changes nothing. A
 * trouble when the readings belong to another layout, hold what is no number, or the processor's
 * steps cannot be used.
 */
export function proposeSettings(
  readings: Readings,
  layout: Layout,
  processor: ProcessorSteps,
  options: ProposalOptions = {},
): Proposal | Trouble {
  const { sheet = null, seat = 'Seat 1', otherSeats = [], choices = nothingChosen } = options;
  const abilities = abilitiesOf(processor, sheet);
  const refused = checkProcessor(abilities) ?? checkReadings(readings, layout);
  if (refused) return refused;
  const members = measuredMembers(readings, layout, options);
  const { seats, missing } = usableSeats({ name: seat, readings }, otherSeats, layout);
  const captured = members.some(
    ({ channel, reading }) => channel.kind === 'sub' && Boolean(reading?.bass),
  );
  const later = options.sums === 'later' && captured;
  const one = bassCase(members, seats, abilities, choices.bassPreferenceDb, !later);
  return composeProposal(one, {
    layout,
    choices,
    seats: seats.map(({ name }) => name),
    sums: later ? 'coming' : 'there',
    missing,
  });
}
