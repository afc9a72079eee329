import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawMiswiring } from '../../src/rig/practice-miswiring';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble } from '../../src/trouble';
import { adviseRewiring } from '../../src/wirecheck/advise-rewiring';
import { solveWalk } from '../../src/wirecheck/solve-walk';
import { plainFindings } from '../src/wirecheck/plain-finding';
import { everyFault } from './every-fault';
import { benchState } from './live-app';
import { listenForComplaints, openPracticeApp, type PracticeApp } from './practice-app';

let app: PracticeApp;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

describe('a walk through a practice room with a fault hidden in its wiring', () => {
  it('ends in the sentence that names the fault, and in none beside it', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1024, height: 768 } });
    const page = await context.newPage();
    const complaints = listenForComplaints(page, app.address);
    await page.goto(app.address);
    await page.getByLabel(/^Another, by its name/).fill('5.1.4');
    await page.keyboard.press('Enter');
    await page.goto(`${app.address}#probe/connect`);
    // Even rooms have no inverted speaker of their own.
    await page.getByLabel('Room number').fill('12');
    await page.keyboard.press('Enter');
    await page.getByLabel('Hide a fault in the wiring').check();

    await page.goto(`${app.address}#patch/walk`);
    for (let visited = 0; visited < 10; visited++) {
      await page.getByRole('button', { name: /^Play here/ }).click();
      await page.locator('ll-walk-list .said').nth(visited).waitFor({ timeout: 60_000 });
    }
    const { document } = await benchState(page);
    const layout = layoutFromName('5.1.4');
    if (isTrouble(layout)) throw new Error(layout.sentence);
    const { findings } = solveWalk(document.walk, layout, document.system);
    const fault = drawMiswiring(layout, document.practice.hidden ?? Number.NaN);
    expect(plainFindings(findings)).toEqual(plainFindings(fault.findings));
    const expected = findings.map((finding) => adviseRewiring(finding).sentence);
    const said = page.getByRole('region', { name: 'Conclusion' });
    const sentences = await said.locator('.finding h3').allInnerTexts();
    expect(sentences.sort()).toEqual(expected.sort());
    expect(await everyFault(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
