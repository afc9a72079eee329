import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import { sayDb } from '../proposal/phrases';
import type { ChannelLabel } from '../system/channel';
import { allowedLevelDb } from './claim-level';
import { explainLines, failedLine } from './explain-line';
import type { ProofLine, SettingChange, Slip } from './proof';
import type { ProofCase } from './proof-case';

/** A channel's level against what its trim asks for, dB. */
interface Louder {
  readonly label: ChannelLabel;
  readonly isSub: boolean;
  readonly typed: number;
  readonly db: number;
}

/** Names what was typed instead of the trims of channels that are too loud or too quiet. */
export function diagnoseTrims(proof: ProofCase, lines: readonly ProofLine[]): readonly ProofLine[] {
  const all = loudnesses(proof, lines);
  const bad = all.filter(({ label }) => failedLine(lines, 'level', label));
  if (bad.length === 0) return lines;
  const allowed = allowedLevelDb(proof);
  const explain = (
    those: readonly Louder[],
    now: (one: Louder) => number,
    slip: Slip | null,
    sentence: string,
  ): void => {
    const changes = those.map((one) => changeOf(one, now(one)));
    const labels = those.map(({ label }) => label);
    lines = explainLines(lines, ['level'], labels, { slip, changes, sentence });
  };
  const mains = all.filter(({ isSub }) => !isSub);
  const common = median(mains.map(({ typed }) => -2 * typed));
  const turned = all.filter(({ typed }) => typed !== 0);
  if (
    bad.length > 1 &&
    all.every(({ typed, db }) => Math.abs(db - (-2 * typed - common)) <= allowed)
  ) {
    explain(
      turned,
      ({ typed }) => -typed,
      'wrong sign',
      msg('All trims seem to be typed with the wrong sign.'),
    );
    explain(
      bad,
      ({ typed }) => -typed,
      'wrong sign',
      msg('All trims seem to be typed with the wrong sign.'),
    );
  }
  for (const one of bad) {
    if (Math.abs(one.db + 2 * one.typed) <= allowed) {
      const sentence = msg(
        str`Its trim seems to be typed with the wrong sign: type ${sayDb(one.typed)}.`,
      );
      explain([one], ({ typed }) => -typed, 'wrong sign', sentence);
    }
    if (Math.abs(one.db) <= allowed) continue;
    const now = one.typed + one.db;
    const sentence = msg(str`It sounds as if ${sayDb(now)} was typed; type ${sayDb(one.typed)}.`);
    explain([one], () => now, null, sentence);
  }
  return lines;
}

function loudnesses({ mains, typed, volumeDb }: ProofCase, lines: readonly ProofLine[]): Louder[] {
  const ofMains = mains.flatMap(({ channel: { label }, before, after }): Louder[] => {
    if (typeof before?.levelDb !== 'number' || typeof after?.levelDb !== 'number') return [];
    const trim = typed.trimDb[label] ?? 0;
    const db = after.levelDb - before.levelDb - trim - volumeDb;
    return [{ label, isSub: false, typed: trim, db }];
  });
  const ofSubs = lines.flatMap(({ claim, channels: [label], figure }): Louder[] => {
    const isMain = mains.some(({ channel }) => channel.label === label);
    if (claim !== 'level' || label === undefined || isMain || !figure) return [];
    return [{ label, isSub: true, typed: typed.trimDb[label] ?? 0, db: figure.value }];
  });
  return [...ofMains, ...ofSubs];
}

function changeOf({ label, typed }: Louder, now: number): SettingChange {
  return { setting: 'trim', channels: [label], group: null, from: now, to: typed, unit: 'dB' };
}
