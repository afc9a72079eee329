import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import { sentenceName } from '../proof/claim-answers';
import { unsureShapeDb } from '../proof/moved-microphone';
import { sayHz, sayLossDb } from '../proposal/phrases';
import { bandChanges, worstOf, type BandChange } from './band-changes';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { makeFinding, speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import type { VisitFinding } from './visits';

const limits = {
  main: { allowed: 2, coarsest: 2 },
  sub: { allowed: 2.5, coarsest: 2 },
} satisfies Record<string, ChangeLimits>;
const bandsHz = { main: [40, 10_000], sub: [20, 120] } as const;
/** So many mains must change alike before that is put down to the microphone or the room. */
const enoughMains = 3;

/**
 * The shape of each speaker's response, level aside, held against then in third octaves: the band
 * that changed most. What most mains have in common is said once and taken out of each.
 */
export function compareResponses(pair: PairedPosition, movedMetres: number): VisitFinding[] {
  const unsure = unsureShapeDb({ movedMetres });
  const rows = pair.speakers.map((speaker) => ({ speaker, bands: bandsOf(speaker) }));
  const mains = rows.filter(
    ({ speaker, bands }) => speaker.channel.kind !== 'sub' && bands.length > 0,
  );
  const common = mains.length >= enoughMains ? commonChange(mains.map(({ bands }) => bands)) : [];
  const commonAt = (hz: number): number => common.find((band) => band.hz === hz)?.db ?? 0;
  return [
    ...alike(pair, common, unsure),
    ...rows.map(({ speaker, bands }) =>
      responseOf(
        pair,
        speaker,
        speaker.channel.kind === 'sub'
          ? bands
          : bands.map((band) => ({ ...band, db: band.db - commonAt(band.hz) })),
        unsure,
      ),
    ),
  ];
}

function bandsOf(speaker: PairedSpeaker): BandChange[] {
  return bandChanges(speaker, bandsHz[speaker.channel.kind === 'sub' ? 'sub' : 'main']);
}

/** What more than half of the mains can tell of each band: the middle of their changes. */
function commonChange(mains: readonly (readonly BandChange[])[]): BandChange[] {
  const all = [...new Set(mains.flatMap((bands) => bands.map(({ hz }) => hz)))];
  return all.flatMap((hz): BandChange[] => {
    const told = mains.flatMap((bands) => bands.find((band) => band.hz === hz) ?? []);
    if (2 * told.length <= mains.length || told.length < enoughMains) return [];
    return [
      { hz, db: median(told.map(({ db }) => db)), half: median(told.map(({ half }) => half)) },
    ];
  });
}

function alike(
  { position: { name: position } }: PairedPosition,
  common: readonly BandChange[],
  unsure: number,
): VisitFinding[] {
  const worst = worstOf(common);
  if (!worst) return [];
  const { hz, db } = worst;
  const half = worst.half + unsure;
  if (judgeChange(db, half, limits.main) !== 'changed') return [];
  const sentence = msg(
    str`Most speakers changed alike: ${sayLossDb(db)} ${wayOf(db)} at ${sayHz(hz)}, give or take ${sayLossDb(half)}. That is the microphone, its calibration or the room; it is taken out of each.`,
  );
  const figure = changeFigure(db, half, limits.main, 'dB');
  return [makeFinding('response', 'all', { position, verdict: 'changed', sentence, figure })];
}

function responseOf(
  { position: { name: at } }: PairedPosition,
  { channel: { label, name, kind } }: PairedSpeaker,
  bands: readonly BandChange[],
  unsure: number,
): VisitFinding {
  const worst = worstOf(bands);
  if (!worst) {
    return speakerFinding('response', label, at, {
      verdict: 'cannot tell',
      sentence: msg(
        str`Whether ${name} sounds as it did cannot be told: its response was not kept, or lies in the noise.`,
      ),
      action: msg(str`Take ${at} again, louder.`),
    });
  }
  const limit = limits[kind === 'sub' ? 'sub' : 'main'];
  const { hz, db } = worst;
  const half = worst.half + unsure;
  const verdict = judgeChange(db, half, limit);
  const amount = msg(
    str`${sayLossDb(db)} ${wayOf(db)} what it was at ${sayHz(hz)}, give or take ${sayLossDb(half)}`,
  );
  const sentences = {
    'as it was': msg(
      str`${sentenceName(name)} sounds as it did: nowhere more than ${sayLossDb(Math.abs(db) + half)} apart in third octaves.`,
    ),
    changed: msg(str`${sentenceName(name)} sounds otherwise: ${amount}.`),
    'cannot tell': msg(str`${sentenceName(name)} may sound otherwise: ${amount}.`),
  } as const;
  return speakerFinding('response', label, at, {
    verdict,
    sentence: sentences[verdict],
    figure: changeFigure(db, half, limit, 'dB'),
    action:
      unsure > worst.half
        ? msg('Put the microphone where it stood then and take it again.')
        : msg(str`Take ${at} again, louder.`),
  });
}

function wayOf(db: number): string {
  return db < 0 ? msg('below') : msg('above');
}
