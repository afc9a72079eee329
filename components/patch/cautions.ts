import { msg } from '@lit/localize';
import type { Layout } from '../../src/system/channel';

/** What to mind where plugs are moved. */
export function patchCautions(layout: Layout): string[] {
  const cautions = [
    msg(
      'Switch amplifiers off before a plug is moved, and turn the volume down before they come back on.',
    ),
    msg(
      'Work on mains, inside walls and in ceilings follows local codes and is left to licensed trades.',
    ),
  ];
  const subs = layout.channels.filter((channel) => channel.kind === 'sub').length;
  if (subs > 0) {
    cautions.push(
      msg(
        'From a computer a sub is reached only through LFE or through redirected bass. The processor plays LFE 10 dB louder in band and low-passes it near 120 Hz (ITU-R BS.775).',
      ),
    );
  }
  if (subs > 1) {
    cautions.push(
      msg(
        'Subs that share one output sound together: probe them one at a time, with the others switched off.',
      ),
    );
  }
  if (layout.channels.some((channel) => channel.kind === 'height')) {
    cautions.push(
      msg('Ladders: a second person holds them, and nothing sounds while someone is up.'),
    );
  }
  return cautions;
}
