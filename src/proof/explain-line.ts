import type { ChannelLabel } from '../system/channel';
import type { Claim, ProofLine, SettingChange, Slip } from './proof';

/** Why lines failed, and what to change. */
export interface Cause {
  /** Null where no known mistake does this. */
  readonly slip: Slip | null;
  readonly changes: readonly SettingChange[];
  readonly sentence: string;
}

/** The failed line with its cause; a line that has one, or did not fail, stays. */
export function explainLine(line: ProofLine, cause: Cause | null): ProofLine {
  if (!cause || line.verdict !== 'fail' || line.changes.length > 0) return line;
  const sentence = `${line.sentence} ${cause.sentence}`;
  return { ...line, slip: cause.slip, changes: cause.changes, sentence };
}

/** The lines with the failed ones of some claims about some channels explained. */
export function explainLines(
  lines: readonly ProofLine[],
  claims: readonly Claim[],
  channels: readonly ChannelLabel[],
  cause: Cause,
): readonly ProofLine[] {
  return lines.map((line) =>
    claims.includes(line.claim) && line.channels.every((label) => channels.includes(label))
      ? explainLine(line, cause)
      : line,
  );
}

/** The line of a claim about a channel, when it failed. */
export function failedLine(
  lines: readonly ProofLine[],
  claim: Claim,
  label: ChannelLabel,
): ProofLine | null {
  return lines.find((one) => one.id === `${claim} ${label}` && one.verdict === 'fail') ?? null;
}
