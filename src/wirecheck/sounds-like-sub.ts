import type { WalkSound } from './walk';

/** So much louder in the bass than in the middle, dB, only a sub is, or what feeds one. */
const bassDb = 15;

/** Whether levels say that nothing but bass is heard; null is a band that was not heard. */
export function soundsLikeSub({ levelDb, lowDb }: Pick<WalkSound, 'levelDb' | 'lowDb'>): boolean {
  return lowDb !== null && (levelDb === null || lowDb - levelDb > bassDb);
}
