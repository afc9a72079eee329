import { msg, str } from '@lit/localize';
import { versionWords } from '../offline/version-words';
import { settingsList, type SettingsLine } from '../proposal/settings-list';
import type { Proposal } from '../proposal/proposal';
import type { Readings } from '../reading/reading';
import type { ProofState } from '../session/derive-proof';
import type { ChannelLabel, Layout } from '../system/channel';
import { channelName } from '../system/channel-names';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import { wireLayout } from '../system/wiring/wire-layout';
import type { HandedOver } from './handed-over';
import type { Handover, HandoverCurve, HandoverFact, HandoverOutput } from './handover';
import { handoverCautions } from './handover-cautions';
import { handoverConditions } from './handover-conditions';

/**
 * Gathers the record of a session as it stands; `madeAt` is an ISO 8601 time, `version` the one the
 * page carries.
 */
export function gatherHandover(
  state: HandedOver,
  madeAt: string,
  version: string | null = null,
): Handover {
  const { document, layout, proof, readings } = state;
  const proposal = state.proposal?.layout === layout.name ? state.proposal : null;
  const { sheet } = document;
  const lines = proposal ? settingsList(proposal, layout, sheet, document.typed) : [];
  return {
    format: 'leadline-handover',
    version: 1,
    session: document.name,
    layout: layout.title,
    madeAt,
    simulated:
      document.rig === 'practice' || [readings, proposal, proof].some((one) => one?.simulated),
    processor: sheet && (sheet.invented ? msg(str`${sheet.name}, an invented sample`) : sheet.name),
    outputs: outputsOf(layout, sheet, lines, proof?.readings ?? readings),
    subs: subFacts(lines, proposal),
    proof: proof && proofOf(proof),
    conditions: [
      ...handoverConditions(state),
      { name: msg('Program'), value: versionWords(version) },
    ],
    cautions: handoverCautions(state),
    notes: document.notes,
  };
}

/** Every output of the processor, the open ones too; without a wiring the speakers of the layout. */
function outputsOf(
  layout: Layout,
  sheet: ProcessorSheet | null,
  lines: readonly SettingsLine[],
  readings: Readings | null,
): HandoverOutput[] {
  const wiring = sheet && wireLayout(layout, sheet);
  const rows =
    sheet && wiring?.wired
      ? sheet.outputs.map(({ id, name }) => ({
          output: name,
          channel: wiring.outputs.find(({ output }) => output === id)?.channel ?? null,
        }))
      : layout.channels.map(({ label }) => ({ output: label, channel: label }));
  const textOf = (id: string): string | null => lines.find((one) => one.id === id)?.text ?? null;
  return rows.map(({ output, channel }) => {
    const group = layout.channels.find(({ label }) => label === channel)?.group;
    return {
      output,
      channel,
      speaker: channel && channelName(channel),
      distance: channel && textOf(`distance ${channel}`),
      level: channel && textOf(`level ${channel}`),
      crossover: group === undefined || group === 'subs' ? null : textOf(`crossover ${group}`),
      response: curveOf(readings, channel),
    };
  });
}

function curveOf(readings: Readings | null, label: ChannelLabel | null): HandoverCurve | null {
  const response = readings?.channels.find(({ channel }) => channel === label)?.curves?.response;
  return response ? { hz: response.hz, db: response.db } : null;
}

function subFacts(lines: readonly SettingsLine[], proposal: Proposal | null): HandoverFact[] {
  const facts = lines.flatMap(({ section, name, text }) =>
    section === 'subs' ? [{ name, value: text ?? msg('cannot tell') }] : [],
  );
  if (!proposal?.subs) return facts;
  const { lowPassHz, replayGainDb } = proposal.lfe;
  return [
    ...facts,
    { name: 'LFE', value: msg(str`low-pass ${lowPassHz} Hz, +${replayGainDb} dB`) },
  ];
}

function proofOf({ counts, lines }: ProofState): Handover['proof'] {
  return {
    counts,
    lines: lines.map(({ claim, channels, verdict, sentence, action }) => ({
      claim,
      channels,
      verdict,
      sentence,
      action,
    })),
  };
}
