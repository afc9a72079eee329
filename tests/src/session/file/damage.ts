import { filedContent, filedEntries, filedSession } from './filed-session';
import { zipBytes, type EntrySpec } from './zip-bytes';

type Random = () => number;

const whole = zipBytes(filedEntries());
const strangers: readonly unknown[] = [
  null,
  'words',
  '',
  -1,
  0.5,
  1e308,
  5e-324,
  Number.MAX_SAFE_INTEGER,
  true,
  [],
  {},
  [[[]]],
  'x'.repeat(50_000),
  '../../etc/passwd',
];

/** Ways in which a session file may be damaged, each drawn anew. */
export const damages: Readonly<Record<string, (random: Random) => Uint8Array<ArrayBuffer>>> = {
  'cut off': (random) => whole.slice(0, whole.length * random()),
  'bits flipped': (random) => {
    const bytes = whole.slice();
    for (let n = 0; n <= 8 * random(); n++) {
      const at = below(random, bytes.length);
      bytes[at] = (bytes[at] ?? 0) ^ (1 << below(random, 8));
    }
    return bytes;
  },
  'bits flipped in its directory': (random) => {
    const bytes = whole.slice();
    const at = bytes.length - 1 - below(random, 300);
    bytes[at] = (bytes[at] ?? 0) ^ (1 << below(random, 8));
    return bytes;
  },
  'a piece of it repeated': (random) => {
    const at = below(random, whole.length);
    const end = at + below(random, whole.length - at);
    const bytes = new Uint8Array(whole.length + end - at);
    bytes.set(whole.subarray(0, end));
    bytes.set(whole.subarray(at), end);
    return bytes;
  },
  'a value of another type': (random) => withContent(damaged(filedContent(), random)),
  'several values of other types': (random) => {
    let content: unknown = filedContent();
    for (let n = 0; n < 5; n++) content = damaged(content, random);
    return withContent(content);
  },
  'a number of another size': (random) => withContent(resized(filedContent(), random)),
  'another version': (random) => {
    const version = below(random, 9) - 1;
    const content = filedContent();
    if (random() < 0.5) return withContent({ ...content, version });
    return withContent({ ...content, session: { ...filedSession, version } });
  },
  'a bomb': (random) => {
    const data = new Uint8Array(2 ** 20 * (1 + below(random, 30)));
    const claims = random() < 0.5 ? below(random, 5000) : 2 ** (20 + below(random, 12));
    return withOne(random, { data, stored: false, claims });
  },
  'a path that leads elsewhere': (random) => {
    const names = [
      '../a.wav',
      '/a.wav',
      'captures/../../1.wav',
      'c:\\a.wav',
      '..\\1.wav',
      'a\u0000',
    ];
    return withOne(random, { name: names[below(random, names.length)] ?? '' });
  },
  'an entry twice': (random) => {
    const entries = filedEntries();
    const again = entries[below(random, entries.length)];
    return zipBytes(again ? [...entries, again] : entries);
  },
  'other flags': (random) => withOne(random, { flags: below(random, 0x10000) }),
  'other packing': (random) => withOne(random, { method: below(random, 100) }),
  'an end that lies': (random) =>
    zipBytes(filedEntries(), {
      count: below(random, 0x10000),
      start: below(random, 2 ** 32),
      disk: below(random, 3),
      zip64: random() < 0.5,
    }),
};

function withContent(content: unknown): Uint8Array<ArrayBuffer> {
  return zipBytes(filedEntries(content));
}

function withOne(random: Random, changes: Partial<EntrySpec>): Uint8Array<ArrayBuffer> {
  const entries = filedEntries();
  const one = below(random, entries.length);
  return zipBytes(
    entries.map((entry, index) => (index === one ? { ...entry, ...changes } : entry)),
  );
}

/** A copy of a value in which one leaf, or one branch, is another value. */
function damaged(value: unknown, random: Random): unknown {
  const isBranch = typeof value === 'object' && value !== null && Object.keys(value).length > 0;
  if (!isBranch || random() < 0.08) return strangers[below(random, strangers.length)];
  const keys = Object.keys(value);
  const key = keys[below(random, keys.length)] ?? '';
  const part = fieldOf(value, key);
  if (Array.isArray(value)) return value.with(Number(key), damaged(part, random));
  return { ...value, [key]: damaged(part, random) };
}

/** A copy of a value in which one number, drawn down to a leaf, is up to a billion times as large. */
function resized(value: unknown, random: Random): unknown {
  if (typeof value === 'number') return value * 10 ** Math.round(18 * random() - 9);
  if (typeof value !== 'object' || value === null) return value;
  const keys = Object.keys(value).filter((key) => holdsNumber(fieldOf(value, key)));
  const key = keys[below(random, keys.length)] ?? '';
  const part = resized(fieldOf(value, key), random);
  return Array.isArray(value) ? value.with(Number(key), part) : { ...value, [key]: part };
}

function holdsNumber(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return typeof value === 'number';
  return Object.values(value).some(holdsNumber);
}

function fieldOf(value: object, key: string): unknown {
  return (value as Record<string, unknown>)[key];
}

function below(random: Random, end: number): number {
  return Math.floor(random() * end);
}
