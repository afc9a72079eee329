import { calibrateSoundLevel } from '../../soundlevel/calibrate-sound-level';
import { climbLevel } from '../../soundlevel/climb-level';
import type { ClimbRequest } from '../../soundlevel/sound-level';
import { referenceChannel } from '../../system/layout';
import { isTrouble, type Trouble } from '../../trouble';
import { withRig, type BenchRoom } from './bench-room';
import { exposeLine } from './expose';
import { routesFor } from './routes-for';
import { microphoneName, soundLevelHere } from './sound-level-here';

/**
 * Climbs on the reference speaker. On a live rig the gain found becomes that of the takes; what a
 * simulated room likes says nothing about a real one.
 */
export function runClimb(
  room: BenchRoom,
  request: ClimbRequest,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { desk } = room;
  return withRig(room, async (rig) => {
    const { document, layout } = desk.state;
    const channel = referenceChannel(layout);
    const routes = await routesFor(room, rig, channel, signal);
    if (isTrouble(routes)) return routes;
    const soundLevel = rig.simulated ? null : soundLevelHere(document);
    const capped = { ...request, capDb: Math.min(request.capDb, document.live.capDb) };
    const result = await climbLevel(rig, capped, {
      signal,
      channel,
      isSub: false,
      routes,
      soundLevel,
      onState: (climb) => desk.set({ activity: { kind: 'climbing', climb } }),
      onLevel: exposeLine(desk, rig, soundLevel),
    });
    if (isTrouble(result)) return result;
    if (rig.kind === 'live') {
      const { gainDb } = result;
      desk.change((now) => ({ ...now, live: { ...now.live, gainDb } }));
    }
    desk.set({ climbed: result });
    return null;
  });
}

/** Listens to a calibrator, or beside a sound level meter, with the microphone in use. */
export function runSoundLevelCalibration(
  room: BenchRoom,
  db: number,
  how: 'calibrator' | 'sound level meter',
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { desk } = room;
  return withRig(room, async (rig) => {
    const soundLevel = await calibrateSoundLevel(rig, {
      db,
      how,
      microphone: microphoneName(desk.state.document),
      at: desk.parts.now(),
      signal,
    });
    if (isTrouble(soundLevel)) return soundLevel;
    desk.set({ trouble: null });
    desk.change((now) => ({ ...now, microphone: { ...now.microphone, soundLevel } }));
    return null;
  });
}
