import { describe, expect, it } from 'vitest';
import type { ChosenDevice, SessionDocument } from '../../../src/session/document';
import { newSession } from '../../../src/session/new-session';
import { trouble, type Trouble } from '../../../src/trouble';
import { makeBench, settled } from './make-bench';

const mine: ChosenDevice = { id: 'm1', name: 'Invented microphone' };
const builtIn: ChosenDevice = { id: 'm0', name: 'Built-in' };
const hall: ChosenDevice = { id: 'o1', name: 'Invented interface “Ä/8”' };

/** A bench whose devices come and go as the test says. */
function benchOf(chosen: Partial<SessionDocument['live']> = {}) {
  const now = {
    microphones: [builtIn, mine] as readonly ChosenDevice[],
    outputs: [hall] as readonly ChosenDevice[],
    refuses: null as Trouble | null,
    asked: 0,
  };
  let changed: () => void = () => undefined;
  const made = makeBench(
    {
      devices: {
        list: () => Promise.resolve({ microphones: now.microphones, outputs: now.outputs }),
        ask: () => {
          now.asked++;
          return Promise.resolve(now.refuses);
        },
        watch: (onChange) => {
          changed = onChange;
          return () => undefined;
        },
      },
    },
    { rig: 'live', live: { ...newSession('', '').live, ...chosen } },
  );
  const become = async (next: Partial<typeof now>): Promise<void> => {
    Object.assign(now, next);
    changed();
    await settled();
  };
  return { ...made, now, become };
}

describe('devices on the bench', () => {
  it('are told as they are, and asked for only when wanted', async () => {
    const { bench, now } = benchOf();
    expect(bench.state.devices).toBeNull();
    await bench.lookAtDevices(false);
    expect(now.asked).toBe(0);
    expect(bench.state.devices).toEqual({
      microphones: [builtIn, mine],
      outputs: [hall],
      change: null,
    });
    await bench.lookAtDevices(true);
    expect(now.asked).toBe(1);
  });

  it('say why when the microphone is refused', async () => {
    const { bench, now } = benchOf();
    now.refuses = trouble('no-permission', 'The microphone is blocked for this page.');
    await bench.lookAtDevices(true);
    expect(bench.state.trouble).toBe(now.refuses);
  });

  it('are watched from then on: the chosen one that goes is named', async () => {
    const { bench, become } = benchOf({ microphone: mine });
    await bench.lookAtDevices(false);
    await become({ microphones: [builtIn] });
    expect(bench.state.devices?.microphones).toEqual([builtIn]);
    expect(bench.state.devices?.change).toMatch(
      /chosen microphone “Invented microphone” went away/,
    );
    expect(bench.state.document.live.microphone).toEqual(mine);
  });

  it('are found again by name when they come back under another id', async () => {
    const { bench, held, become } = benchOf({ microphone: mine });
    await bench.lookAtDevices(false);
    await become({ microphones: [builtIn] });
    const back = { ...mine, id: 'm77' };
    await become({ microphones: [builtIn, back] });
    expect(bench.state.document.live.microphone).toEqual(back);
    expect(bench.state.devices?.change).toMatch(/“Invented microphone” is back/);
    expect(held.documents.at(-1)?.live.microphone).toEqual(back);
  });

  it('are found at once when their ids changed since the session was saved', async () => {
    const { bench } = benchOf({ output: { id: 'long ago', name: hall.name } });
    await bench.lookAtDevices(false);
    expect(bench.state.document.live.output).toEqual(hall);
  });

  it('give their name to a device that was chosen by id alone', async () => {
    const { bench } = benchOf({ microphone: { id: 'm1', name: '' } });
    await bench.lookAtDevices(false);
    expect(bench.state.document.live.microphone).toEqual(mine);
  });

  it('change nothing in a tab that only follows', async () => {
    const { bench, held } = benchOf({ output: { id: 'long ago', name: hall.name } });
    bench.follow();
    await bench.lookAtDevices(false);
    expect(bench.state.devices?.outputs).toEqual([hall]);
    expect(bench.state.document.live.output?.id).toBe('long ago');
    expect(held.documents).toEqual([]);
  });
});
