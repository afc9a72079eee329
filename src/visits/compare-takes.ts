import { msg, str } from '@lit/localize';
import { sentenceName } from '../proof/claim-answers';
import type { Readings } from '../reading/reading';
import type { Position, SessionDocument } from '../session/document';
import type { ChannelLabel } from '../system/channel';
import { channelName } from '../system/channel-names';
import { listInWords } from '../system/list-in-words';
import { makeFinding } from './make-finding';
import {
  isSamePlace,
  visitedPositions,
  type PairedPosition,
  type VisitedPosition,
} from './pair-positions';
import type { VisitFinding } from './visits';

/** Positions of two visits that can be compared, and why the others cannot. */
export interface MatchedTakes {
  readonly pairs: readonly { readonly now: VisitedPosition; readonly before: VisitedPosition }[];
  readonly findings: readonly VisitFinding[];
}

/**
 * Matches what was read at the two visits, place by place. Takes that both sessions hold, as copies
 * do, were made then: only what was taken since is compared.
 */
export function matchTakes(now: SessionDocument, before: SessionDocument): MatchedTakes {
  const [here, then] = [visitedPositions(now), visitedPositions(before)];
  const findings: VisitFinding[] = [...leftOut(now, 'here'), ...leftOut(before, 'then')];
  if (here.length === 0 || then.length === 0) {
    const where = here.length === 0 ? msg('this session') : msg('the earlier session');
    const sentence = msg(str`Nothing measured can be compared: ${where} has no take that is read.`);
    const action =
      here.length === 0 ? msg('Take the system in Probe.') : msg('Choose a session with takes.');
    findings.push(makeFinding('take', 'none', { verdict: 'cannot tell', sentence, action }));
    return { pairs: [], findings };
  }
  const known = new Set(before.takes.map(({ captureId }) => captureId));
  const pairs: { now: VisitedPosition; before: VisitedPosition }[] = [];
  for (const place of here) {
    const was = then.find(({ position }) => isSamePlace(place.position, position));
    const fresh = place.takes.filter(({ captureId }) => !known.has(captureId));
    if (!was) findings.push(noPartner(place.position, 'here'));
    else if (fresh.length === 0) findings.push(notTakenSince(place.position));
    else {
      const refused = refuse(place, was);
      if (refused) findings.push(refused);
      else pairs.push({ now: { ...place, takes: fresh }, before: was });
    }
  }
  for (const { position } of then) {
    if (!here.some((place) => isSamePlace(place.position, position))) {
      findings.push(noPartner(position, 'then'));
    }
  }
  return { pairs, findings };
}

/** Speakers that both sessions have and that were not heard at both visits: silence is a change. */
export function unheardSpeakers(pair: PairedPosition): VisitFinding[] {
  const { name } = pair.position;
  const silent = pair.unheard.flatMap((label): VisitFinding[] => {
    const [is, was] = [isSilent(pair.now, label), isSilent(pair.before, label)];
    if (is === null || was === null || is === was) return [];
    const sentence = is
      ? msg(
          str`${sentenceName(channelName(label))} was heard then and stays silent now: look at its plug, its wires and its amplifier.`,
        )
      : msg(str`${sentenceName(channelName(label))} was silent then and is heard now.`);
    const rest = { verdict: 'changed', sentence, position: name, channels: [label] } as const;
    return [makeFinding('take', label, rest)];
  });
  const others = pair.unheard.filter((label) =>
    silent.every(({ channels }) => !channels.includes(label)),
  );
  if (others.length === 0) return silent;
  return [
    ...silent,
    makeFinding('take', 'unheard', {
      position: name,
      channels: others,
      verdict: 'cannot tell',
      sentence: msg(str`${listInWords(others)} cannot be compared: not heard well at both visits.`),
      action: msg(str`Take ${name} again.`),
    }),
  ];
}

/** Null where it was neither heard well nor silent. */
function isSilent({ channels }: Readings, label: ChannelLabel): boolean | null {
  const found = channels.find(({ channel }) => channel === label);
  if (!found) return null;
  if (found.faults.some(({ kind }) => kind === 'silent')) return true;
  return found.faults.length === 0 && found.levelDb !== null ? false : null;
}

function leftOut({ takes, layout }: SessionDocument, when: 'here' | 'then'): VisitFinding[] {
  const others = takes.filter(({ schedule }) => schedule.layout !== layout);
  if (others.length === 0) return [];
  return [
    makeFinding('take', `other layout ${when}`, {
      verdict: 'cannot tell',
      sentence: msg(
        str`${others.length === 1 ? msg('A take') : msg(str`${others.length} takes`)} ${when} ${others.length === 1 ? msg('is') : msg('are')} of another layout than its session has now and cannot be compared.`,
      ),
      action:
        when === 'here'
          ? msg('Take the system as it is planned now.')
          : msg('Choose the layout it was taken in, in the session of then.'),
    }),
  ];
}

function noPartner({ name }: Position, when: 'here' | 'then'): VisitFinding {
  return makeFinding('take', `only ${when}`, {
    position: name,
    verdict: 'cannot tell',
    sentence:
      when === 'here'
        ? msg(str`${name} cannot be compared: no position of then has this name.`)
        : msg(str`${name} was taken then and cannot be compared: no position here has this name.`),
    action:
      when === 'here'
        ? msg('Take again at a position of then, under its name.')
        : msg(str`Take ${name} again where it was, under this name.`),
  });
}

function notTakenSince({ name }: Position): VisitFinding {
  return makeFinding('take', 'same', {
    position: name,
    verdict: 'cannot tell',
    sentence: msg(str`${name} was not taken since: both sessions hold the same takes of it.`),
  });
}

function refuse(here: VisitedPosition, then: VisitedPosition): VisitFinding | null {
  const [is, was] = [here.takes.at(-1)?.simulated, then.takes.at(-1)?.simulated];
  if (is === was) return null;
  return makeFinding('take', 'simulated', {
    position: here.position.name,
    verdict: 'cannot tell',
    sentence: msg(
      str`${here.position.name} cannot be compared: it is ${is ? msg('simulated here and was real then') : msg('real here and was simulated then')}.`,
    ),
    action: msg(
      str`Take ${here.position.name} ${is ? msg('with the real system') : msg('in the practice room, or choose a session of the real system')}.`,
    ),
  });
}
