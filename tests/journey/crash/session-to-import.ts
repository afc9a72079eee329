import { isTrouble } from '../../../src/trouble';
import { seededRandom } from '../../../dsp/signal/random';
import { writeSessionFile } from '../../../src/session/file/write-session-file';
import { sampleDocument, sampleTake } from '../../components/sample-session';

/** A session file made elsewhere: two takes with half a minute of sound each. */
export async function sessionToImport(number: number): Promise<{ name: string; buffer: Buffer }> {
  const random = seededRandom(number);
  const sound = (): Float32Array =>
    Float32Array.from({ length: 30 * 48_000 }, () => random() - 0.5);
  const captures = new Map([0, 1].map((take) => [`sound ${number} ${take}`, sound()]));
  const document = {
    ...sampleDocument('2.0'),
    id: `imported ${number}`,
    name: `Import ${number}`,
    takes: [...captures.keys()].map((captureId) => ({
      ...sampleTake('2.0'),
      id: `take of ${captureId}`,
      captureId,
    })),
  };
  const store = { loadCapture: (id: string) => Promise.resolve(captures.get(id) ?? null) };
  const options = {
    savedAt: '2030-01-02T03:04:05.000Z',
    signal: new AbortController().signal,
    onProgress: () => undefined,
  };
  const written = await writeSessionFile(document, store, options);
  if (isTrouble(written)) throw new Error(written.sentence);
  const buffer = Buffer.from(await written.arrayBuffer());
  return { name: `Import ${number}.leadline.zip`, buffer };
}
