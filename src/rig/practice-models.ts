import { drawSpeaker, type SpeakerOptions } from '../../dsp/room/draw-speaker';
import type { ConeDistortion } from '../../dsp/room/cone-distortion';
import type { SpeakerModel } from '../../dsp/room/speaker';
import { gaussian, seededRandom } from '../../dsp/signal/random';
import type { Channel, GroupId, Layout } from '../system/channel';

/** Range of the box's −3 dB frequency by group, Hz. */
const cutoffs: Readonly<Record<GroupId, readonly [number, number]>> = {
  fronts: [36, 62],
  centre: [48, 80],
  wides: [55, 90],
  sides: [55, 95],
  backs: [55, 95],
  'front heights': [75, 115],
  'middle heights': [75, 115],
  'back heights': [75, 115],
  subs: [20, 28],
};

/**
 * One speaker model per group, drawn from the seed, and of each its specimens: a few tenths of a
 * decibel and a percent apart. Levels differ between groups; subs have a delay of milliseconds;
 * cones distort a little, and more the lower and louder they play.
 */
export function practiceModels(
  layout: Layout,
  seed: number,
  frontHeightsBounce: boolean,
): (channel: Channel) => SpeakerModel {
  const groups = [...new Set(layout.channels.map((channel) => channel.group))];
  const models = new Map<GroupId, SpeakerModel>();
  for (const group of groups) {
    const own = seededRandom(seed + groupSeed(group));
    const kind =
      group === 'subs'
        ? 'sub'
        : group === 'front heights' && frontHeightsBounce
          ? 'bounced'
          : 'main';
    const options: SpeakerOptions = { kind, f3Hz: cutoffs[group] };
    const model = drawSpeaker(seed + groupSeed(group), options);
    const delaySeconds = group === 'subs' ? 0.002 + 0.005 * own() : 0;
    models.set(group, { ...model, delaySeconds, cone: drawCone(model, seed + groupSeed(group)) });
  }
  const spread = gaussian(seededRandom(seed + 0.625));
  const specimens = new Map(
    layout.channels.map((channel) => [
      channel.label,
      { gainDb: 0.3 * spread(), detune: 1 + 0.012 * spread() },
    ]),
  );
  return (channel) => {
    const model = models.get(channel.group);
    const specimen = specimens.get(channel.label);
    if (!model || !specimen) throw new RangeError(`${channel.label} is not in the layout`);
    const resonanceHz = model.box.resonanceHz * specimen.detune;
    return {
      ...model,
      box: { ...model.box, resonanceHz },
      gainDb: model.gainDb + specimen.gainDb,
    };
  };
}

/** Subs are built to move further. */
function drawCone({ box, upper }: SpeakerModel, seed: number): ConeDistortion {
  const random = seededRandom(seed + 0.5);
  const small = upper.hz < 1000 ? 0.5 : 1;
  return {
    hz: box.resonanceHz,
    second: small * (0.02 + 0.03 * random()),
    third: small * (0.04 + 0.04 * random()),
  };
}

function groupSeed(group: GroupId): number {
  return 1000 * (1 + Object.keys(cutoffs).indexOf(group));
}
