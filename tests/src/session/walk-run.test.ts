import { describe, expect, it } from 'vitest';
import { isTrouble, trouble } from '../../../src/trouble';
import { makeBench, until } from './make-bench';

describe('walkStop', () => {
  it('plays a stop in the practice room and keeps what was heard, newest at each speaker', async () => {
    const { bench } = makeBench();
    const seen = until(bench, ({ activity }) => activity.kind === 'walking');
    const done = bench.walkStop('FR');
    expect((await seen).activity).toMatchObject({ kind: 'walking', at: 'FR' });
    await done;
    expect(bench.state.trouble).toBeNull();
    const [stop] = bench.state.document.walk;
    expect(stop?.speaker).toBe('FR');
    const level = (label: string): number =>
      stop?.sounds.find(({ channel }) => channel === label)?.levelDb ?? -200;
    expect(level('FR')).toBeGreaterThan(level('FL') + 6);
    await bench.walkStop('FR');
    expect(bench.state.document.walk).toHaveLength(1);
    await bench.walkStop('seat');
    expect(bench.state.document.seatSounds.map(({ channel }) => channel)).toEqual(['FL', 'FR']);
    expect(bench.state.document.takes).toEqual([]);
  });

  it('says what went wrong and keeps the stop it had', async () => {
    let fails = false;
    const { bench } = makeBench({
      readStop: () =>
        Promise.resolve(
          fails ? trouble('too-loud', 'The microphone clipped at this stop.') : { sounds: [] },
        ),
    });
    await bench.walkStop('FL');
    const { walk } = bench.state.document;
    fails = true;
    await bench.walkStop('FL');
    expect(isTrouble(bench.state.trouble) && bench.state.trouble.sentence).toContain('clipped');
    expect(bench.state.document.walk).toBe(walk);
  });

  it('keeps nothing of a stop that is stopped', async () => {
    const { bench } = makeBench();
    const done = bench.walkStop('FL');
    bench.stop();
    await done;
    expect(bench.state.trouble?.trouble).toBe('stopped');
    expect(bench.state.document.walk).toEqual([]);
  });
});
