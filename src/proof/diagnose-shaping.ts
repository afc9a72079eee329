import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { sayNumber } from '../proposal/phrases';
import { explainLines } from './explain-line';
import type { Findings } from './findings';
import type { ProofLine, SettingChange } from './proof';
import type { ProofCase } from './proof-case';

/** A processor that does not replay LFE louder at all is this much too quiet, give or take 2 dB. */
const missingGainDb = -10;
const aboutDb = 2;

/** Names equalisers and dynamics that are still on, and an LFE channel at another level. */
export function diagnoseShaping(
  { mains, typed }: ProofCase,
  { lfe }: Findings,
  lines: readonly ProofLine[],
): readonly ProofLine[] {
  const shaped = lines.flatMap(({ claim, verdict, changes, channels }) =>
    claim === 'response' && verdict === 'fail' && changes.length === 0 ? channels : [],
  );
  if (shaped.length > 0) {
    const sentence =
      shaped.length === mains.length
        ? msg('An equaliser or dynamics seem to be on for all channels: switch them off.')
        : msg('An equaliser seems to be on: switch it off.');
    lines = explainLines(lines, ['response', 'level'], shaped, {
      slip: 'equaliser or dynamics on',
      changes: [off(shaped)],
      sentence,
    });
  }
  const found = lines.find(({ claim, verdict }) => claim === 'LFE' && verdict === 'fail');
  if (!found?.figure) return lines;
  const db = found.figure.value;
  const level: SettingChange = {
    setting: 'LFE level',
    channels: found.channels,
    group: null,
    from: typed.lfe.gainDb + db,
    to: typed.lfe.gainDb,
    unit: 'dB',
  };
  // The test signal of LFE is quieter, so what turns loud sounds down leaves it too loud.
  const isDynamics = db > 0 && lfe !== null;
  const isMissing = Math.abs(db - missingGainDb) <= aboutDb;
  return explainLines(lines, ['LFE'], found.channels, {
    slip: isDynamics ? 'equaliser or dynamics on' : 'LFE level',
    changes: isDynamics ? [off([...mains.map(({ channel }) => channel.label)]), level] : [level],
    sentence: isDynamics
      ? msg(
          'Dynamics or a night mode seem to turn loud sounds down: switch them off; else the LFE level is set too high.',
        )
      : isMissing
        ? msg(
            str`The ${withUnit(sayNumber(-missingGainDb, 0), 'dB')} of LFE seem to be missing: switch them on.`,
          )
        : msg('The LFE level is set too low.'),
  });
}

function off(channels: ProofLine['channels']): SettingChange {
  return {
    setting: 'equaliser and dynamics',
    channels,
    group: null,
    from: 'on',
    to: 'off',
    unit: null,
  };
}
