import { describe, expect, it } from 'vitest';
import { readSessionFile } from '../../../../src/session/file/read-session-file';
import { isTrouble } from '../../../../src/trouble';
import { writeWav } from '../../../../src/wav/write-wav';
import {
  filedCaptures,
  filedContent,
  filedEntries,
  filedSession,
  textBytes,
} from './filed-session';
import { zipBytes, type EntrySpec } from './zip-bytes';

const { signal } = new AbortController();

/** The sentence a file is refused with, on opening it or on loading its sound; null: it is whole. */
async function refusal(bytes: Uint8Array<ArrayBuffer>): Promise<string | null> {
  const opened = await readSessionFile(new Blob([bytes]), signal);
  if (isTrouble(opened)) return opened.sentence;
  for (const capture of opened.captures) {
    const samples = await opened.load(capture);
    if (isTrouble(samples)) return samples.sentence;
  }
  return null;
}

/** The good entries, one of them changed. */
function changed(name: string, changes: Partial<EntrySpec>): EntrySpec[] {
  return filedEntries().map((entry) => (entry.name === name ? { ...entry, ...changes } : entry));
}

function withEntry(name: string): EntrySpec[] {
  return [...filedEntries(), { name, data: new Uint8Array(4) }];
}

const whole = zipBytes(filedEntries());
const zeros = new Uint8Array(2 ** 26);

describe('the file these cases damage', () => {
  it('is whole', async () => expect(await refusal(whole)).toBeNull());
});

describe('a file that is refused', () => {
  const cases: [string, () => Uint8Array<ArrayBuffer>, string][] = [
    ['empty', () => new Uint8Array(0), 'empty or cut off'],
    ['no ZIP', () => new Uint8Array(5000).fill(7), 'no ZIP file'],
    ['cut off at its end', () => whole.slice(0, -1), 'no ZIP file'],
    ['cut off at its beginning', () => whole.slice(10), 'directory is not where'],
    ['a ZIP without a session', () => zipBytes([]), 'no session.json'],
    ['with an entry twice', () => zipBytes(withEntry('captures/1.wav')), 'captures/1.wav twice'],
    ['with a path upwards', () => zipBytes(withEntry('../evil.wav')), 'leads out of the file'],
    [
      'with a path from the root',
      () => zipBytes(withEntry('/etc/passwd')),
      'leads out of the file',
    ],
    ['with a path of a drive', () => zipBytes(withEntry('C:/a.wav')), 'leads out of the file'],
    ['with backslashes', () => zipBytes(withEntry('captures\\4.wav')), 'leads out of the file'],
    ['with a path inside a path', () => zipBytes(withEntry('captures/../4.wav')), 'leads out'],
    ['with a stranger', () => zipBytes(withEntry('readme.txt')), 'no part of a session'],
    ['with an unlisted recording', () => zipBytes(withEntry('captures/9.wav')), 'does not list'],
    ['encrypted', () => zipBytes(changed('session.json', { flags: 1 })), 'encrypted'],
    ['strongly encrypted', () => zipBytes(changed('session.json', { flags: 0x41 })), 'encrypted'],
    ['patched', () => zipBytes(changed('session.json', { flags: 0x20 })), 'not known here'],
    ['packed otherwise', () => zipBytes(changed('session.json', { method: 12 })), 'not known here'],
    [
      'with 64-bit sizes',
      () => zipBytes(changed('session.json', { claims: 2 ** 32 - 1 })),
      '64-bit',
    ],
    ['with a 64-bit end', () => zipBytes(filedEntries(), { zip64: true }), '64-bit'],
    ['with a 64-bit count', () => zipBytes(filedEntries(), { count: 0xffff }), '64-bit'],
    ['with too many entries', () => zipBytes(filedEntries(), { count: 5000 }), '5000 files'],
    ['with fewer entries than it says', () => zipBytes(filedEntries(), { count: 9 }), 'damaged'],
    ['with more entries than it says', () => zipBytes(filedEntries(), { count: 2 }), 'holds more'],
    ['on several disks', () => zipBytes(filedEntries(), { disk: 1 }), 'one part of several'],
    ['with its directory elsewhere', () => zipBytes(filedEntries(), { start: 12 }), 'not where'],
    [
      'with two names for an entry',
      () => zipBytes(changed('session.json', { localName: 'session.jso_' })),
      'not where the directory says',
    ],
    ['with a wrong checksum', () => zipBytes(changed('session.json', { crc: 5 })), 'checksum'],
    [
      'that claims a text of gigabytes',
      () => zipBytes(changed('session.json', { claims: 2 ** 31 })),
      'session.json claims to be 2048 MiB large',
    ],
    [
      'that unpacks to more than it claims',
      () => zipBytes(changed('captures/1.wav', { data: zeros, stored: false, claims: 2000 })),
      'unpacks to more than it claims',
    ],
    [
      'that unpacks to less than it claims',
      () => zipBytes(changed('captures/1.wav', { stored: false, claims: 4000 })),
      'unpacks to less than it claims',
    ],
    [
      'that unpacks to more than a session of its size can hold',
      () => zipBytes([...filedEntries(), { name: 'captures/4.wav', data: zeros, claims: 2 ** 28 }]),
      'more than such a file can hold',
    ],
    ['of no JSON', () => zipBytes(changed('session.json', { data: textBytes('{') })), 'not JSON'],
    [
      'of another kind',
      () => zipBytes(filedEntries(filedContent({ format: 'something-else' }))),
      'something-else',
    ],
    [
      'of a newer version',
      () => zipBytes(filedEntries(filedContent({ version: 2 }))),
      'its "version" is 2, and only 1 is known here',
    ],
    [
      'with a session of a newer version',
      () => zipBytes(filedEntries(filedContent({ session: { ...filedSession, version: 99 } }))),
      'made by a newer Leadline',
    ],
    [
      'with a damaged session',
      () => zipBytes(filedEntries(filedContent({ session: { ...filedSession, layout: '99.9' } }))),
      'its session is damaged ("layout"',
    ],
    [
      'with a recording that is no WAV',
      () => zipBytes(changed('captures/3.wav', { data: textBytes('nope') })),
      'should stand (byte 0). Save it again where it was made.',
    ],
    [
      'with a recording listed twice',
      () => {
        const captures = [...filedCaptures, ...filedCaptures.slice(0, 1)];
        return zipBytes(filedEntries(filedContent({ captures })));
      },
      'lists a recording twice',
    ],
    [
      'with a recording no take names',
      () => zipBytes(filedEntries(filedContent({ missing: ['something'] }))),
      'no take names',
    ],
    [
      'without a recording a take names',
      () => {
        const captures = filedCaptures.slice(0, 2);
        const entries = filedEntries(filedContent({ captures }));
        return zipBytes(entries.filter(({ name }) => name !== 'captures/3.wav'));
      },
      'lacks a recording',
    ],
    [
      'that lists a recording it does not hold',
      () => zipBytes(filedEntries().filter(({ name }) => name !== 'captures/3.wav')),
      'captures/3.wav is not in it',
    ],
    [
      'that lists its text as a recording',
      () => {
        const captures = filedCaptures.map((one, index) =>
          index === 0 ? { ...one, file: 'session.json' } : one,
        );
        return zipBytes(filedEntries(filedContent({ captures })));
      },
      'session.json is not in it',
    ],
    [
      'with a recording of two channels',
      () => {
        const channels = [new Float32Array(400), new Float32Array(400)];
        const data = writeWav({ channels, sampleRate: 48000, depth: 'float', channelMask: 0 });
        return zipBytes(changed('captures/1.wav', { data }));
      },
      'not one channel of 32-bit float',
    ],
    [
      'with a recording of another length',
      () => {
        const channels = [new Float32Array(399)];
        const data = writeWav({ channels, sampleRate: 48000, depth: 'float', channelMask: 0 });
        return zipBytes(changed('captures/1.wav', { data }));
      },
      '399 samples and should have 400',
    ],
    [
      'with a recording that is no number',
      () => {
        const data = writeWav({
          channels: [new Float32Array(400)],
          sampleRate: 48000,
          depth: 'float',
          channelMask: 0,
        });
        new DataView(data.buffer).setFloat32(data.length - 8, NaN, true);
        return zipBytes(changed('captures/1.wav', { data }));
      },
      'not a finite number',
    ],
  ];
  for (const [what, make, sentence] of cases) {
    it(`is ${what}`, async () => expect(await refusal(make())).toContain(sentence));
  }

  it('is one that cannot be read any more', async () => {
    const gone = new Blob([whole]);
    gone.slice = () => {
      throw new DOMException('The file was moved.', 'NotReadableError');
    };
    const opened = await readSessionFile(gone, signal);
    expect(isTrouble(opened) && opened.sentence).toContain('The file was moved');
  });

  it('is one whose opening was stopped', async () => {
    const opened = await readSessionFile(new Blob([whole]), AbortSignal.abort());
    expect(opened).toMatchObject({ trouble: 'stopped' });
  });
});
