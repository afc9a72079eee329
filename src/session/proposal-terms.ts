import type { SeatReadings } from '../proposal/bass-field';
import type { ProposalChoices } from '../proposal/choices';
import type { ProcessorSteps } from '../proposal/proposal';
import type { ProposalOptions } from '../proposal/proposal-options';
import { withGain } from '../reading/at-gain';
import { joinOnce } from '../reading/join-once';
import type { Readings } from '../reading/reading';
import type { RolloffTogether } from '../reading/rolloff-together';
import type { Layout } from '../system/channel';
import type { SessionDocument, TakeRecord } from './document';
import { takesHere } from './take-record';

/** All that a proposal of a session rests on; plain data, so that it travels to a worker. */
export interface ProposalTerms {
  readonly readings: Readings;
  readonly layout: Layout;
  readonly processor: ProcessorSteps;
  readonly options: Pick<ProposalOptions, 'sheet' | 'seat' | 'otherSeats' | 'choices' | 'together'>;
}

/** What the readings of the current position are proposed from. */
export function proposalTerms(
  document: SessionDocument,
  readings: Readings,
  layout: Layout,
  together: readonly RolloffTogether[],
): ProposalTerms {
  const { sheet, processor, position, choices, chosenCrossoverHz } = document;
  const all: ProposalChoices = { ...choices, crossoverHz: chosenCrossoverHz };
  const otherSeats = position.kind === 'seat' ? otherSeatsOf(document, readings) : [];
  return {
    readings,
    layout,
    processor,
    options: { sheet, seat: position.name, otherSeats, choices: all, together },
  };
}

/** Whether two documents give the same proposal for the same readings and layout. */
export function proposesAlike(a: SessionDocument, b: SessionDocument): boolean {
  return (
    a.choices === b.choices &&
    a.chosenCrossoverHz === b.chosenCrossoverHz &&
    proposesAlikeButForChoices(a, b)
  );
}

/** Whether they would if the tuner had chosen alike. */
export function proposesAlikeButForChoices(a: SessionDocument, b: SessionDocument): boolean {
  return (
    a.processor === b.processor &&
    a.sheet === b.sheet &&
    probesAlike(a.takes, b.takes) &&
    a.position === b.position
  );
}

/** Takes that prove change no proposal. */
function probesAlike(a: readonly TakeRecord[], b: readonly TakeRecord[]): boolean {
  if (a === b) return true;
  const [one, other] = [a, b].map((takes) => takes.filter(({ purpose }) => purpose !== 'prove'));
  return one?.length === other?.length && (one?.every((take, at) => take === other?.[at]) ?? false);
}

/**
 * Readings of every other seat of the same layout and kind of room, its takes joined, levels as
 * they would be with the gain of the takes here, where both gains are known.
 */
function otherSeatsOf(document: SessionDocument, here: Readings): SeatReadings[] {
  const others = new Map(
    document.takes.flatMap(({ position }) =>
      position.kind === 'seat' && position.id !== document.position.id
        ? [[position.id, position] as const]
        : [],
    ),
  );
  const wanted = gainOf(takesHere(document), here);
  return [...others.values()].flatMap((position): SeatReadings[] => {
    const taken = takesHere({ ...document, position });
    const takes = taken.flatMap(({ readings, outdated }) =>
      readings && !outdated && readings.simulated === here.simulated ? [readings] : [],
    );
    if (takes.length === 0) return [];
    const readings = joinOnce(takes);
    const own = gainOf(taken, readings);
    const gainDb = wanted === null || own === null ? 0 : wanted - own;
    return [{ name: position.name, readings: withGain(readings, gainDb) }];
  });
}

/** Gain of the take that levels of joined readings are relative to, dB; null where not known. */
function gainOf(takes: readonly TakeRecord[], { takeId }: Readings): number | null {
  return takes.findLast(({ readings }) => readings?.takeId === takeId)?.gainDb ?? null;
}
