import type { Transfer } from '../../dsp/bass/transfer';
import { explainBy, type Share } from '../../dsp/comparison/explain-by';
import type { ChannelLabel } from '../system/channel';
import { crossoverOf, expectThrough, heardRedirected, highPassOf } from './expect-bass';
import type { ProofCase, ProvedChannel } from './proof-case';

/** Another speaker's part in what a channel plays. */
export interface Stranger {
  readonly channel: ChannelLabel;
  /** Its power against that of all, dB. */
  readonly powerDb: number;
  /** Half width of the 90 % interval, dB. */
  readonly half: number;
}

const band = [60, 480] as const;
/** Less is not looked for, dB. */
const leastDb = -40;
const mostStrangers = 3;
/** A crossover to tell a full-range speaker from its bass on the subs. */
const plainHz = 100;

/** The sounds of all mains full range, as they should be; made once for a proof. */
export function openSounds(proof: ProofCase): ReadonlyMap<ChannelLabel, Transfer> {
  return new Map(
    proof.mains.flatMap((main): [ChannelLabel, Transfer][] => {
      const sound = expectThrough(proof, main, []);
      return sound ? [[main.channel.label, sound]] : [];
    }),
  );
}

/**
 * Other speakers that play along with a main, the loudest first; each is looked for in what the
 * main, its high-pass, the subs and the louder strangers leave. Null where its own sound is not known.
 */
export function findStrangers(
  proof: ProofCase,
  main: ProvedChannel,
  sounds: ReadonlyMap<ChannelLabel, Transfer>,
): Stranger[] | null {
  const { bassAfter, channel } = main;
  const own = sounds.get(channel.label);
  if (!bassAfter || !own) return null;
  const reach = crossoverOf(proof, main) ?? plainHz;
  const crossed = expectThrough(proof, main, [highPassOf(proof.typed, reach)]);
  const low = heardRedirected(proof, reach);
  const parts = [own, ...(crossed ? [crossed] : []), ...(low ? [low] : [])];
  const found: Stranger[] = [];
  while (found.length < mostStrangers) {
    let loudest: (Stranger & { readonly sound: Transfer }) | null = null;
    for (const [label, sound] of sounds) {
      if (label === channel.label || found.some((one) => one.channel === label)) continue;
      const share = explainBy(bassAfter, [...parts, sound], proof.hz, band)?.shares.at(-1);
      const stranger = share && strangerOf(label, share);
      if (stranger && stranger.powerDb > (loudest?.powerDb ?? leastDb)) {
        loudest = { ...stranger, sound };
      }
    }
    if (!loudest) break;
    const { sound, ...stranger } = loudest;
    parts.push(sound);
    found.push(stranger);
  }
  return found;
}

function strangerOf(channel: ChannelLabel, { factor, half, power }: Share): Stranger {
  const size = Math.hypot(factor.re, factor.im);
  return {
    channel,
    powerDb: 10 * Math.log10(Math.max(power, 1e-12)),
    half: size > 0 ? (20 / Math.LN10) * Math.min(half / size, 3) : 30,
  };
}
