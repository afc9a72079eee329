import { msg, str } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import { concludeEarCheck } from '../../src/wirecheck/ear-check';
import type { TitleAndLede } from '../probe/probe-title';
import type { PatchSheetId } from './patch-sheets';
import { wiringTitle } from './findings';
import { walkResult } from './walk/walk-words';
import { wiringNow, wiringOrder } from './wiring/wiring-now';

/** What a sheet of Patch has to say, as a sentence. */
export function patchTitle(state: BenchState, sheet: PatchSheetId): TitleAndLede {
  switch (sheet) {
    case 'sheet':
      return processorTitle(state);
    case 'wiring':
      return outputsTitle(state);
    case 'ear':
      return earTitle(state);
    case 'walk':
      return walkTitle(state);
    case 'in-force':
      return inForceTitle(state);
  }
}

function processorTitle({ document }: BenchState): TitleAndLede {
  return document.sheet
    ? {
        title: msg(str`The processor is “${document.sheet.name}”`),
        lede: msg('Its outputs decide the wiring, its steps decide what can be typed.'),
      }
    : {
        title: msg('Which processor feeds the speakers?'),
        lede: msg('What its outputs can carry decides the wiring.'),
      };
}

function outputsTitle(state: BenchState): TitleAndLede {
  const { layout, readings } = state;
  const wiring = wiringNow(state);
  if (!wiring) return { title: wiringTitle(layout, readings), lede: '' };
  if (!wiring.wired) {
    return {
      title: msg(str`${layout.title} cannot be wired to this processor`),
      lede: msg('Below: the outputs in conflict, the rule, and the nearest layouts.'),
    };
  }
  const open = (state.document.sheet?.outputs.length ?? 0) - wiring.outputs.length;
  return {
    title: msg(str`Each of the ${layout.channels.length} speakers has its output`),
    lede:
      open === 0
        ? msg('No output stays open.')
        : msg(str`${open === 1 ? msg('One output stays') : msg(str`${open} outputs stay`)} open.`),
  };
}

function earTitle(state: BenchState): TitleAndLede {
  const { document, layout } = state;
  if (document.rig === 'recording') {
    return { title: msg('The ear check needs sound from this computer'), lede: '' };
  }
  const order = wiringOrder(state);
  const { open, findings, proven } = concludeEarCheck(order, document.earAnswers);
  if (proven) {
    return { title: msg('Heard: every channel sounds from its own speaker'), lede: '' };
  }
  if (findings.length > 0) {
    return {
      title:
        findings.length === 1
          ? msg('One thing to put right')
          : msg(str`${findings.length} things to put right`),
      lede:
        open.length === 0
          ? msg('Every channel was played.')
          : msg(str`${open.length} channels still to play.`),
    };
  }
  return {
    title: msg(
      str`Prove by ear that all ${layout.channels.length} outputs drive the speakers they claim`,
    ),
    lede: msg('Noise plays on one channel at a time, in wiring order.'),
  };
}

function walkTitle({ document, layout }: BenchState): TitleAndLede {
  if (document.rig === 'recording') {
    return { title: msg('The walk needs sound from this computer'), lede: '' };
  }
  const { walk, system } = document;
  const visited = layout.channels.filter(({ label }) =>
    walk.some(({ speaker }) => speaker === label),
  ).length;
  const left = layout.channels.length - visited;
  const count = visited === 0 ? 0 : walkResult(walk, layout, system).findings.length;
  if (count > 0) {
    return {
      title:
        count === 1 ? msg('The walk found one thing') : msg(str`The walk found ${count} things`),
      lede:
        left === 0 ? msg('Every speaker was visited.') : msg(str`${left} speakers still to visit.`),
    };
  }
  if (left === 0)
    return { title: msg('Walked: every channel sounds from its own speaker'), lede: '' };
  return {
    title:
      visited === 0
        ? msg('Prove the wiring with the microphone')
        : msg(str`${visited} of ${layout.channels.length} speakers visited, nothing wrong`),
    lede: msg(
      'All channels sound in turn while the microphone is held to one speaker after another.',
    ),
  };
}

function inForceTitle({ document }: BenchState): TitleAndLede {
  const { distanceMetres, trimDb, crossoverHz, equaliser } = document.inForce;
  const count = [distanceMetres, trimDb, crossoverHz].reduce(
    (sum, record) => sum + Object.keys(record).length,
    equaliser === 'not known' ? 0 : 1,
  );
  return {
    title:
      count === 0
        ? msg('Is anything in force in the processor?')
        : msg('In force while it is measured'),
    lede:
      count === 0
        ? msg('Leave all empty when it is at factory settings.')
        : msg(str`${count} ${count === 1 ? msg('setting') : msg('settings')} declared.`),
  };
}
