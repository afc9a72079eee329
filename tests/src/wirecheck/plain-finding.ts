import type { WiringFinding } from '../../../src/wirecheck/wiring-finding';

/** Findings as sorted texts in which the order of labels does not matter. */
export function plainFindings(findings: readonly WiringFinding[]): string[] {
  return findings.map(plainFinding).sort();
}

function plainFinding(finding: WiringFinding): string {
  switch (finding.kind) {
    case 'exchanged': {
      const first = finding.channels.indexOf([...finding.channels].sort()[0] ?? 'FL');
      const turned = [...finding.channels.slice(first), ...finding.channels.slice(0, first)];
      return `exchanged ${turned.join(' ')}`;
    }
    case 'doubled':
      return `doubled ${finding.channel} from ${[...finding.from].sort().join(' ')}`;
    case 'suspect':
      return `suspect ${[...finding.channels].sort().join(' ')}`;
    case 'cannot tell':
      return `cannot tell ${[...finding.channels].sort().join(' ')}`;
    case 'elsewhere':
      return `${finding.channel} elsewhere from ${finding.from}`;
    case 'silent':
      return `silent ${finding.channel}`;
    case 'shared speaker':
      return `shared ${finding.speaker} by ${[...finding.channels].sort().join(' ')}`;
    default:
      return `${finding.kind} ${finding.speaker}`;
  }
}
