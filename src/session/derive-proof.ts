import type { Proof } from '../proof/proof';
import { settingsToProve } from '../proof/settings-to-prove';
import type { ProcessorSteps, Proposal } from '../proposal/proposal';
import { joinOnce } from '../reading/join-once';
import type { Readings } from '../reading/reading';
import { segmentsToRepeat } from '../reading/segments-to-repeat';
import type { ChannelLabel, Layout } from '../system/channel';
import { settingsInForce } from '../system/declared-settings';
import { stepsOf } from '../system/sheet/steps-of-sheet';
import type { ProcessorSettings } from '../system/processor-settings';
import type { SessionDocument, TakeRecord } from './document';
import { takesHere } from './take-record';

/** The newest takes through the processor at the current position. */
export interface ProofTakes {
  readonly id: string;
  readonly layout: Layout;
  /** What they prove: the settings that were to be typed when the newest of them was played. */
  readonly typed: ProcessorSettings;
  readonly steps: ProcessorSteps;
  /** Readings through the processor, takes joined. */
  readonly readings: Readings;
  /** Readings without these settings that they are held against; null where there are none. */
  readonly before: Readings | null;
  /** Speakers whose segments came out damaged and are worth repeating. */
  readonly toRepeat: readonly ChannelLabel[];
}

/** What they prove. */
export interface ProofState
  extends Proof, Pick<ProofTakes, 'id' | 'typed' | 'readings' | 'before' | 'toRepeat'> {}

/** All that a proof follows from. */
export interface ProofGround {
  readonly document: SessionDocument;
  readonly layout: Layout;
  readonly readings: Readings | null;
}

/**
 * The takes that prove; the very ones of before when they follow from the same. Throws RangeError for
 * readings that contradict each other or the layout.
 */
export function deriveProofTakes(
  ground: ProofGround,
  last: { readonly ground: ProofGround; readonly proving: ProofTakes | null } | null,
): ProofTakes | null {
  if (last && isSame(ground, last.ground)) return last.proving;
  const { document, layout } = ground;
  const takes = provedTakes(document);
  const newest = takes.at(-1);
  if (!newest?.proves) return null;
  const { id, settings: typed } = newest.proves;
  const readings = joinOnce(takes.flatMap((take) => take.readings ?? []));
  const before = isOfRig(document, newest) ? ground.readings : null;
  for (const one of before ? [before, readings] : [readings]) {
    if (one.layout !== layout.name) {
      throw new RangeError(`readings must be of ${layout.name}, got ${one.layout}`);
    }
  }
  const steps = stepsNow(document);
  return { id, layout, typed, steps, readings, before, toRepeat: segmentsToRepeat(readings) };
}

/** The proof that a judgement of takes makes. */
export function proofOf(proof: Proof, takes: ProofTakes): ProofState {
  const { id, typed, readings, before, toRepeat } = takes;
  return { ...proof, id, typed, readings, before, toRepeat };
}

/** What a proposal and the tuner's choices say to type. */
export function wantedSettings(proposal: Proposal, document: SessionDocument): ProcessorSettings {
  return settingsToProve(proposal, settingsInForce(document).filters);
}

/** Whether a proof is of other settings than are proposed or chosen by now. */
export function isOldProof({
  proof,
  proposal,
  document,
}: {
  readonly proof: ProofState | null;
  readonly proposal: Proposal | null;
  readonly document: SessionDocument;
}): boolean {
  if (!proof || proposal?.sums !== 'there') return false;
  return !isAlike(wantedSettings(proposal, document), proof.typed);
}

/** Whether two settings are the same, whatever the order of their fields. */
function isAlike(a: unknown, b: unknown): boolean {
  const sorted = (value: unknown): string =>
    JSON.stringify(value, (_, part: unknown) =>
      typeof part === 'object' && part !== null && !Array.isArray(part)
        ? Object.fromEntries(Object.entries(part).sort(([x], [y]) => (x < y ? -1 : 1)))
        : part,
    );
  return sorted(a) === sorted(b);
}

function stepsNow({ sheet, processor }: SessionDocument): ProcessorSteps {
  return sheet ? stepsOf(sheet) : processor;
}

/** Takes of the newest proof of the current position that are read, oldest first. */
function provedTakes(document: SessionDocument): TakeRecord[] {
  const read = takesHere(document, 'prove').filter(
    ({ readings, outdated }) => readings && !outdated,
  );
  const newest = read.at(-1)?.proves?.id;
  return read.filter(({ proves }) => proves?.id === newest);
}

function isOfSame(one: readonly TakeRecord[], other: readonly TakeRecord[]): boolean {
  return one.length === other.length && one.every((take, at) => take === other[at]);
}

/** Whether the takes that read the system here are of the same rig. */
function isOfRig(document: SessionDocument, { rig }: TakeRecord): boolean {
  return takesHere(document).some((take) => take.readings !== null && take.rig === rig);
}

function isSame(now: ProofGround, was: ProofGround): boolean {
  const [one, other] = [now.document, was.document];
  return (
    now.layout === was.layout &&
    now.readings === was.readings &&
    isOfSame(provedTakes(one), provedTakes(other)) &&
    one.processor === other.processor &&
    one.sheet === other.sheet
  );
}
