import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { root } from '../../texts/localizer';
import { writeCatalogue } from '../../texts/write-catalogue';

it('all texts of the program are in the file for translators; else run npm run texts', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'leadline-texts-'));
  expect(await writeCatalogue(['en'], folder)).toBeGreaterThan(2000);
  const [written, kept] = await Promise.all(
    [folder, path.join(root, 'src/language/texts')].map((one) =>
      readFile(path.join(one, 'en.xlf'), 'utf8'),
    ),
  );
  expect(written === kept, 'src/language/texts/en.xlf is not up to date').toBe(true);
  await rm(folder, { recursive: true });
});
