import type { Readings, RolloffReading } from '../reading/reading';
import type { ChannelLabel, Layout } from '../system/channel';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import type { Trouble } from '../trouble';
import { abilitiesOf } from './abilities';
import { bassCase } from './bass-case';
import type { SeatReadings } from './bass-field';
import { pairReadings } from './channel-measurement';
import { checkProcessor } from './check-processor';
import { checkReadings } from './check-readings';
import { noChoices, type ProposalChoices } from './choices';
import type { ProcessorSteps, Proposal } from './proposal';
import { composeProposal } from './compose-proposal';
import { usableSeats } from './usable-seats';

/** What a proposal rests on beside one position's readings; all may be left out. */
export interface ProposalOptions {
  /** The processor's sheet, whose steps come in place of the plain ones. */
  readonly sheet?: ProcessorSheet | null;
  /** Name of the seat the readings are of. */
  readonly seat?: string;
  /** Other seats, in any order. */
  readonly otherSeats?: readonly SeatReadings[];
  readonly choices?: ProposalChoices;
  /** The roll-off of a speaker; default that of its own reading. */
  readonly rolloffOf?: (channel: ChannelLabel) => RolloffReading | null;
  /** 'later' leaves sums and alignment aside, which takes most of the time; default 'now'. */
  readonly sums?: 'now' | 'later';
}

/** The choices of a tuner who keeps to everything. */
export const nothingChosen: ProposalChoices = { ...noChoices, crossoverHz: {} };

/**
 * Numbers to type into the processor, each with its reason: crossovers, distances, trims, subs and
 * their filters, with the bass ledger. Distances and trims are those of the first readings' seat,
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
  const own = pairReadings(readings, layout);
  const { rolloffOf } = options;
  const members = rolloffOf
    ? own.map(({ channel, reading }) => ({
        channel,
        reading: reading && { ...reading, rolloff: rolloffOf(channel.label) },
      }))
    : own;
  const { seats, missing } = usableSeats({ name: seat, readings }, otherSeats, layout);
  const later = options.sums === 'later' && members.some(isCapturedSub);
  const one = bassCase(members, seats, abilities, choices.bassPreferenceDb, !later);
  return composeProposal(one, {
    layout,
    choices,
    seats: seats.map(({ name }) => name),
    sums: later ? 'coming' : 'there',
    missing,
  });
}

function isCapturedSub({ channel, reading }: ReturnType<typeof pairReadings>[number]): boolean {
  return channel.kind === 'sub' && reading?.bass != null;
}
