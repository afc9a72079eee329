import type { SessionDocument } from '../session/document';
import { soundLevelHere } from '../session/run/sound-level-here';
import { compareConditions } from './compare-conditions';
import { compareDistances } from './compare-distances';
import { compareLevels } from './compare-levels';
import { compareNoise } from './compare-noise';
import { comparePolarity } from './compare-polarity';
import { compareResponses } from './compare-responses';
import { compareRolloffs } from './compare-rolloffs';
import { compareSettings } from './compare-settings';
import { compareSystems } from './compare-system';
import { unheardSpeakers } from './compare-takes';
import { findMoves } from './find-moves';
import type { PairedPosition } from './pair-positions';
import { pairVisits, type PairedVisits } from './pair-visits';
import { visitNotes } from './visit-notes';
import type { VisitComparison, VisitFinding, VisitName, VisitVerdict } from './visits';

/**
 * Holds a session against an earlier one of the same system: what moved, drifted or was changed,
 * beside the 90 % intervals of both. Levels and distances count between speakers only, since a gain
 * and the tape of one speaker move all. Throws RangeError for a session whose layout has no meaning.
 */
export function compareVisits(
  now: SessionDocument,
  before: SessionDocument,
  paired: PairedVisits = pairVisits(now, before),
): VisitComparison {
  const { layout, other, pairs } = paired;
  const findings = [
    ...compareSystems(now, before, layout, other),
    ...compareSettings(now, before),
    ...compareConditions(now, before),
    ...paired.findings,
    ...pairs.flatMap((pair) => comparePosition(pair, now, before)),
  ];
  const count = (verdict: VisitVerdict): number =>
    findings.filter((finding) => finding.verdict === verdict).length;
  const names = { now: visitName(now), before: visitName(before) };
  return {
    format: 'leadline-visits',
    version: 1,
    ...names,
    simulated: [now, before].some(({ takes }) => takes.some(({ simulated }) => simulated)),
    findings,
    notes: visitNotes(findings, names.now, names.before),
    counts: {
      'as it was': count('as it was'),
      changed: count('changed'),
      'cannot tell': count('cannot tell'),
    },
  };
}

function comparePosition(
  pair: PairedPosition,
  now: SessionDocument,
  before: SessionDocument,
): VisitFinding[] {
  const unheard = unheardSpeakers(pair);
  // Held by hand to a speaker, distance, level and the room around it differ every time.
  if (pair.position.kind === 'close') {
    return [
      ...unheard,
      ...comparePolarity(pair),
      ...compareRolloffs(pair, 0),
      ...compareResponses(pair, 0),
    ];
  }
  const moves = findMoves(pair, before.system);
  const absolute = offsetRise(now, before);
  const { commonDb, findings: levels } = compareLevels(pair, moves.movedMetres, absolute);
  return [
    ...unheard,
    ...compareDistances(pair, moves),
    ...levels,
    ...comparePolarity(pair),
    ...compareRolloffs(pair, moves.movedMetres),
    ...compareResponses(pair, moves.movedMetres),
    ...compareNoise(pair, commonDb, absolute),
  ];
}

/** How much more sound a full-scale reading means than then, dB; null without both calibrations. */
function offsetRise(now: SessionDocument, before: SessionDocument): number | null {
  const [is, was] = [soundLevelHere(now), soundLevelHere(before)];
  return is && was ? is.offsetDb - was.offsetDb : null;
}

function visitName({ name, layout, takes }: SessionDocument): VisitName {
  const times = takes.filter(({ readings }) => readings !== null).map(({ startedAt }) => startedAt);
  return { session: name, layout, takenAt: times.toSorted().at(-1) ?? null };
}
