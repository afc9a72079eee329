import { msg, str } from '@lit/localize';
import type { Readings } from '../../src/reading/reading';
import type { Layout } from '../../src/system/channel';

/** What the newest take says about the wiring, one sentence a finding. */
export function wiringFindings(layout: Layout, readings: Readings | null): string[] {
  if (!readings || readings.layout !== layout.name) return [];
  const findings: string[] = [];
  for (const { channel, faults, polarity } of readings.channels) {
    if (faults.some((fault) => fault.kind === 'silent')) {
      findings.push(
        msg(
          str`${channel} stayed silent: check its plug, its amplifier and the output that should feed it.`,
        ),
      );
    } else if (polarity === 'inverted') {
      findings.push(
        msg(
          str`${channel} is inverted: switch its amplifier off, then change over its two wires at one end.`,
        ),
      );
    }
  }
  return findings;
}

/** The title of Patch: what is known of the wiring, in one sentence. */
export function wiringTitle(layout: Layout, readings: Readings | null): string {
  if (!readings || readings.layout !== layout.name) {
    return msg(
      str`No output has been checked yet: connect ${layout.channels.length}, in this order`,
    );
  }
  const count = wiringFindings(layout, readings).length;
  if (count > 0)
    return msg(
      str`The last take found ${count === 1 ? msg('one plug') : msg(str`${count} plugs`)} to look at`,
    );
  return msg('Every output made a sound; whether it was the right speaker, only your ear has told');
}
