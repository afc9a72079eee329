import { seededRandom } from '../../dsp/signal/random';
import { readTake } from '../../src/reading/read-take';
import type { Readings } from '../../src/reading/reading';
import type { SessionDocument } from '../../src/session/document';
import type { ChannelLabel } from '../../src/system/channel';
import { layoutFromName } from '../../src/system/layout';
import { planTake } from '../../src/take/plan-take';
import { isTrouble } from '../../src/trouble';
import { compareVisits } from '../../src/visits/compare-visits';
import type { VisitComparison } from '../../src/visits/visits';
import { sampleDocument, sampleTake } from '../components/sample-session';
import { drawHouse, type House } from '../loop/draw-house';
import { hearOffline } from '../loop/hear-offline';
import { butterworth, filtered } from '../loop/processor/digital-filter';
import { roomResponse } from '../loop/room/room-response';
import type { SpeakerSpec } from '../loop/room/room-spec';

/** What somebody did to a system between two visits. */
export interface Meddling {
  readonly name: string;
  readonly celsius?: number;
  readonly speaker?: ChannelLabel;
  change?(was: SpeakerSpec, seat: House['seat']): SpeakerSpec;
  /** Nothing comes above this of the speaker, Hz. */
  readonly topHz?: number;
  /** Beginnings of the ids of findings, one of which must be of a change. */
  readonly found: readonly string[];
  /** Beginnings of ids that may change besides. */
  readonly may: readonly string[];
}

const layoutName = '5.1';
const tapeMetres = 2.4;
const settings = { sweepSeconds: 1, averages: 1, pauseSeconds: 0, overlap: false, repeats: 0 };

/** A speaker farther from the seat, along the line to it. */
function farther(metres: number) {
  return (was: SpeakerSpec, seat: House['seat']): SpeakerSpec => {
    const way = was.position.map((at, axis) => at - (seat[axis] ?? 0));
    const share = 1 + metres / Math.hypot(...way);
    const [x = 0, y = 0, z = 0] = way.map((part, axis) => (seat[axis] ?? 0) + share * part);
    return { ...was, position: [x, y, z] };
  };
}

export const meddlings: readonly Meddling[] = [
  { name: 'nothing', found: [], may: [] },
  {
    name: 'SiL 0.2 m nearer',
    speaker: 'SiL',
    change: farther(-0.2),
    found: ['distance · SiL'],
    // Nearer is louder by right, and another place has another room around it.
    may: ['level · SiL', 'response · SiL', 'roll-off · SiL'],
  },
  {
    name: 'FR 1 dB louder',
    speaker: 'FR',
    change: (was) => ({ ...was, gainDb: (was.gainDb ?? 0) + 1 }),
    found: ['level · FR'],
    may: [],
  },
  {
    name: 'tweeter of FC gone',
    speaker: 'FC',
    topHz: 2500,
    found: ['response · FC'],
    may: ['level · FC', 'distance · FC', 'polarity · FC'],
  },
  {
    name: 'sub inverted',
    speaker: 'Sub 1',
    change: (was) => ({ ...was, inverted: was.inverted !== true }),
    found: ['polarity · Sub 1'],
    may: [],
  },
  { name: '6 °C warmer', celsius: 26, found: ['conditions · temperature'], may: [] },
];

/** A house as it was read once, to be held against what was done to it. */
export interface VisitedHouse {
  compare(meddling: Meddling): Promise<VisitComparison>;
}

/** Reads the house of a seed for a first time. */
export async function visitHouse(seed: number): Promise<VisitedHouse> {
  const layout = layoutFromName(layoutName);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const house = drawHouse(layout, seed);
  const plan = planTake(layout, settings, null);
  if (isTrouble(plan)) throw new RangeError(plan.sentence);
  const [part] = plan.parts;
  if (!part) throw new RangeError('the layout has speakers');
  const { schedule } = part;

  const read = async (meddling: Meddling | null): Promise<Readings> => {
    const random = seededRandom(seed + (meddling ? 0.25 : 0.75));
    const celsius = meddling?.celsius ?? house.room.celsius;
    const response = (label: ChannelLabel): Float64Array => {
      const was = house.speakers.get(label);
      if (!was) throw new RangeError(`the house has no ${label}`);
      const isIt = label === meddling?.speaker;
      const speaker = (isIt && meddling.change?.(was, house.seat)) || was;
      const heard = roomResponse({ ...house.room, celsius, microphone: house.seat }, speaker);
      const top = isIt ? meddling.topHz : undefined;
      return top === undefined
        ? heard
        : filtered(heard, butterworth('low-pass', 4, top, house.room.sampleRate));
    };
    const samples = hearOffline(schedule, response, {
      skewPpm: 200 * random() - 100,
      noiseDb: house.room.noiseDb,
      gainDb: meddling ? 2 * random() - 1 : 0,
      seed: seed + (meddling ? 1000 : 2000),
    });
    const readings = await readTake(
      schedule,
      { samples, sampleRate: schedule.sampleRate },
      {
        temperatureCelsius: celsius,
        // The tape is read a little otherwise each time.
        referenceDistanceMetres: tapeMetres + (meddling ? 0.02 * random() - 0.01 : 0),
        simulated: false,
      },
    );
    if (isTrouble(readings)) throw new RangeError(readings.sentence);
    return readings;
  };
  const documentOf = (id: string, readings: Readings): SessionDocument => ({
    ...sampleDocument(layoutName),
    id,
    name: id,
    rig: 'live',
    conditions: {
      temperatureCelsius: readings.temperatureCelsius,
      referenceDistanceMetres: readings.referenceDistanceMetres,
    },
    takes: [
      {
        ...sampleTake(layoutName),
        id: `take of ${id}`,
        captureId: `capture of ${id}`,
        startedAt: id === 'then' ? '2025-01-01T10:00:00.000Z' : '2025-06-01T10:00:00.000Z',
        rig: 'live',
        simulated: false,
        schedule,
        readings,
      },
    ],
  });
  const then = documentOf('then', await read(null));
  return {
    compare: async (meddling) => compareVisits(documentOf('now', await read(meddling)), then),
  };
}

/** What a comparison found that it must not, and missed that it must find. */
export function judgeVisit(
  { found, may }: Meddling,
  { findings }: VisitComparison,
): { readonly missed: readonly string[]; readonly wrong: readonly string[] } {
  const changed = findings.filter(({ verdict }) => verdict === 'changed');
  const begins = (words: readonly string[], id: string): boolean =>
    words.some((word) => id.startsWith(word));
  return {
    missed: found.filter((word) => !changed.some(({ id }) => id.startsWith(word))),
    wrong: changed.flatMap(({ id, sentence }) =>
      begins([...found, ...may], id) ? [] : [`${id}: ${sentence}`],
    ),
  };
}
