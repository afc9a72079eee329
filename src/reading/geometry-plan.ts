import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import { listInWords } from '../system/list-in-words';
import { sayMetres, type GeometryFinding } from './geometry-finding';
import type { PlacedDistance } from './geometry-fit';
import { agreeOnSeat, strangeMetres, type AgreedSeat } from './geometry-outliers';
import type { Readings } from './reading';

/** The seat of the plan and the microphone differ from here on, metres; common practice. */
const movedMetres = 0.2;

/** Whether measured distances fit one seat of the plan, and what does not fit it. */
export function findOffPlan(
  placed: readonly PlacedDistance[],
  readings: Readings,
): GeometryFinding[] {
  const seat = agreeOnSeat(placed);
  return seat ? sayAgreed(seat, placed, readings) : sayAlone(placed, readings);
}

function sayAgreed(
  { fit, strangers }: AgreedSeat,
  placed: readonly PlacedDistance[],
  readings: Readings,
): GeometryFinding[] {
  const others = placed.filter((one) => !strangers.some(({ speaker }) => speaker === one));
  const labels = others.map(({ channel }) => channel);
  const { rightMetres, backMetres, commonMetres } = fit;
  const findings = strangers.map(({ speaker, metres }) =>
    sayStranger(speaker, metres, msg('beside the others')),
  );
  const moved = Math.hypot(rightMetres, backMetres) > movedMetres;
  if (moved) {
    findings.push({
      kind: 'seat',
      channels: labels,
      wantsAction: true,
      sentence: msg(
        str`The microphone stands beside the plan's main seat, ${wayInWords(rightMetres, backMetres)}, by the arrivals of ${labels.length} speakers. Move the one or the other, unless this is another seat.`,
      ),
    });
  }
  const offAlike = Math.abs(commonMetres) > strangeMetres;
  if (offAlike) findings.push(sayTape(commonMetres, labels, readings));
  if (findings.length === 0) {
    const worst = Math.max(fit.worstMetres, 0.01);
    findings.push({
      kind: 'agrees',
      channels: labels,
      wantsAction: false,
      sentence: msg(
        str`The distances of all ${labels.length} speakers that can be compared fit the plan, and one seat, to ${sayMetres(worst)}.`,
      ),
    });
  }
  return findings;
}

/** Each for itself, where no seat can be fitted or none fits. */
function sayAlone(placed: readonly PlacedDistance[], readings: Readings): GeometryFinding[] {
  const differences = placed.map(({ offset, metres, ...one }) => ({
    ...one,
    speaker: { ...one, offset, metres },
    longer: metres - Math.hypot(offset.rightMetres, offset.backMetres, offset.upMetres),
  }));
  const strangers = differences.filter(({ longer }) => Math.abs(longer) > strangeMetres);
  if (strangers.length === 0) return [];
  const isReference = ({ channel }: { channel: ChannelLabel }): boolean =>
    channel === readings.reference;
  const alike = commonOf(differences.map(({ longer }) => longer));
  const labels = placed.map(({ channel }) => channel);
  if (alike !== null && placed.length > 1) return [sayTape(alike, labels, readings)];
  if (placed.length >= 5) {
    const names = strangers.map(({ channel }) => channel);
    const sentence = msg(
      str`The distances fit no one seat of the plan: ${listInWords(names)} ${names.length === 1 ? msg('is') : msg('are')} off by more than ${sayMetres(strangeMetres)}. Check their places in the plan, and by the wire check that each plays its own channel.`,
    );
    return [{ kind: 'unclear', channels: names, wantsAction: true, sentence }];
  }
  return strangers.map((one) =>
    isReference(one)
      ? sayTape(one.longer, [one.channel], readings)
      : sayStranger(
          one.speaker,
          one.longer,
          msg(str`with ${readings.reference} at ${sayMetres(readings.referenceDistanceMetres)}`),
        ),
  );
}

/** What all differences have in common, when they are alike and large; else null. */
function commonOf(differences: readonly number[]): number | null {
  const [low, high] = [Math.min(...differences), Math.max(...differences)];
  const mean = differences.reduce((sum, one) => sum + one, 0) / differences.length;
  return high - low <= strangeMetres && Math.abs(mean) > strangeMetres ? mean : null;
}

function sayStranger(
  { channel, metres, offset }: PlacedDistance,
  longer: number,
  beside: string,
): GeometryFinding {
  const declared = Math.hypot(offset.rightMetres, offset.backMetres, offset.upMetres);
  const said = msg(
    str`${channel} reads ${sayMetres(metres)} and is declared ${sayMetres(declared)} away: ${sayMetres(Math.abs(longer))} too ${longer > 0 ? msg('far') : msg('near')} ${beside}.`,
  );
  const why =
    longer > 0
      ? msg(
          'A delay inside the speaker or a wireless link is made up for by the distance that is proposed; else its tape distance is wrong, or another speaker plays its channel. Measure it by tape once more.',
        )
      : msg(
          'Sound is never early: its tape distance is wrong, or another speaker plays its channel. Measure it by tape once more.',
        );
  return { kind: 'speaker', channels: [channel], wantsAction: true, sentence: `${said} ${why}` };
}

function sayTape(
  longer: number,
  channels: readonly ChannelLabel[],
  { reference, absolute }: Readings,
): GeometryFinding {
  const sentence = msg(
    str`All distances read ${sayMetres(Math.abs(longer))} ${longer > 0 ? msg('longer') : msg('shorter')} than declared, alike: ${
      absolute
        ? msg('something on the way delays all sound')
        : msg(str`most likely the tape distance of ${reference} is wrong`)
    }. The processor takes only differences, so nothing is lost.`,
  );
  return { kind: 'tape', channels, wantsAction: false, sentence };
}

function wayInWords(rightMetres: number, backMetres: number): string {
  const ways = [
    [rightMetres, 'right', 'left'],
    [backMetres, 'back', 'forward'],
  ] as const;
  const parts = ways
    .filter(([metres]) => Math.abs(metres) >= 0.05)
    .map(([metres, one, other]) => `${sayMetres(Math.abs(metres))} ${metres > 0 ? one : other}`);
  return listInWords(parts);
}
