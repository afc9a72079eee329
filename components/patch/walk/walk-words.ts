import { msg, str } from '@lit/localize';
import { LocaleMap } from '../../../src/locale/locale-map';
import type { BenchState } from '../../../src/session/bench';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import type { DeclaredSystem } from '../../../src/system/declared-system';
import { solveWalk } from '../../../src/wirecheck/solve-walk';
import type { WalkResult, WalkStop } from '../../../src/wirecheck/walk';
import type { WiringFinding } from '../../../src/wirecheck/wiring-finding';
import type { PlanMark } from '../../plan/plan-mark';

const solved = new LocaleMap<readonly WalkStop[], { of: readonly unknown[]; result: WalkResult }>();

/** The walk's result; solved once for the same stops, layout and plan. */
export function walkResult(
  walk: readonly WalkStop[],
  layout: Layout,
  system: DeclaredSystem,
): WalkResult {
  const known = solved.get(walk);
  if (known?.of[0] === layout && known.of[1] === system) return known.result;
  const there = walk.filter(({ speaker }) =>
    layout.channels.some(({ label }) => label === speaker),
  );
  const result = solveWalk(there, layout, system);
  solved.set(walk, { of: [layout, system], result });
  return result;
}

/** Whether every speaker was visited; nothing found then proves the wiring. */
export function isWalked({ document, layout }: Pick<BenchState, 'document' | 'layout'>): boolean {
  return layout.channels.every(({ label }) =>
    document.walk.some(({ speaker }) => speaker === label),
  );
}

/** The mark of a speaker; null while the walk says nothing of it. */
export function walkMark(label: ChannelLabel, result: WalkResult): PlanMark | null {
  const words = result.findings.flatMap((finding) => wordsOn(label, finding));
  if (words.length > 0) return { right: false, words: [...new Set(words)].join('; ') };
  const found = result.heard.find(({ speaker }) => speaker === label);
  return found?.channel === label ? { right: true, words: msg('found here') } : null;
}

function wordsOn(label: ChannelLabel, finding: WiringFinding): string[] {
  switch (finding.kind) {
    case 'exchanged': {
      const at = finding.channels.indexOf(label);
      if (at < 0) return [];
      return [msg(str`plays ${finding.channels.at(at - 1) ?? label}`)];
    }
    case 'elsewhere':
      return finding.from === label ? [msg(str`plays ${finding.channel}`)] : [];
    case 'silent':
      return finding.channel === label ? [msg('its channel is silent')] : [];
    case 'doubled':
      return finding.from.includes(label) ? [msg(str`plays ${finding.channel}`)] : [];
    case 'mute speaker':
      return finding.speaker === label ? [msg('no channel found here')] : [];
    case 'shared speaker':
      return finding.speaker === label ? [msg(str`plays ${finding.channels.join(', ')}`)] : [];
    case 'inverted':
      return finding.speaker === label ? ['inverted'] : [];
    case 'suspect':
      return finding.channels.includes(label) ? [msg('does not fit its place')] : [];
    case 'cannot tell':
      return finding.channels.includes(label) ? [msg('cannot tell')] : [];
  }
}

/** Speakers whose stops must be made again once the findings are put right. */
export function toWalkAgain(findings: readonly WiringFinding[]): ChannelLabel[] {
  const labels = findings.flatMap((finding): readonly ChannelLabel[] => {
    switch (finding.kind) {
      case 'exchanged':
      case 'cannot tell':
      case 'suspect':
        return finding.channels;
      case 'elsewhere':
        return [finding.channel, finding.from];
      case 'silent':
        return [finding.channel];
      case 'doubled':
        return finding.from;
      case 'shared speaker':
        return [finding.speaker, ...finding.channels];
      case 'mute speaker':
      case 'inverted':
        return [finding.speaker];
    }
  });
  return [...new Set(labels)];
}
