import { seededRandom } from '../../../dsp/signal/random';
import { headingOf } from '../headings';
import { bannerText, benchState } from '../live-app';
import { job, untilSaved, type JobStep } from './job';
import { withKillableApp, type KillableApp, type Killing, type OpenPage } from './killable-app';
import { createLedger, type Ledger } from './ledger';
import { lookIntoStore } from './look-into-store';
import { reportSaves } from './report-saves';

export interface CrashRun {
  /** How many moments, spread over the steps of the job. */
  readonly kills: number;
  readonly seed: number;
  /** Is told each moment as it comes. */
  readonly say?: (moment: string) => void;
}

/**
 * Does a whole job once to see how long each step takes, then again and again, killing the page or the
 * browser at a random moment of a step, opening it anew, holding what is there against what the app
 * had said, and doing the step again. Throws at the first moment after which something is wrong.
 */
export async function runCrashes({ kills, seed, say = () => undefined }: CrashRun): Promise<void> {
  const random = seededRandom(seed);
  const ledger = createLedger();
  const steps = kills < job.length ? job.filter(({ leftOut }) => !leftOut) : job;
  await withKillableApp(async (app) => {
    let here = await arrive(app, ledger);
    let round = 1;
    const took = new Map<JobStep, number>();
    for (const step of job) {
      const began = performance.now();
      await step.do({ page: here.page, ledger, round });
      took.set(step, performance.now() - began);
    }
    for (let kill = 0; kill < kills; kill++) {
      const step = steps[kill % steps.length];
      if (!step) throw new RangeError('there are no steps');
      const killing: Killing = kill % 2 === 0 ? 'page' : 'browser';
      const after = random() * (took.get(step) ?? 0);
      const moment = `seed ${seed}, kill ${kill + 1} of ${kills}: the ${killing} ${Math.round(after)} ms after the beginning of “${step.name}”`;
      say(moment);
      try {
        if (step.begins) round++;
        await cutOff(app, here, killing, after, step.do({ page: here.page, ledger, round }));
        here = await arrive(app, ledger);
        await judge(here, ledger);
        if (step.begins) round++;
        await step.do({ page: here.page, ledger, round });
        refuseComplaints(here);
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        throw new Error(`${moment}\n${why}`, { cause: error });
      }
    }
    await judge(here, ledger);
  });
}

/** Kills after so many milliseconds of the work, or at its end where that comes first. */
async function cutOff(
  app: KillableApp,
  here: OpenPage,
  killing: Killing,
  after: number,
  work: Promise<void>,
): Promise<void> {
  let killed = false;
  const ended = work.catch((error: unknown) => {
    // What is cut off ends with an error.
    if (!killed) throw error;
  });
  await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, after))]);
  refuseComplaints(here);
  killed = true;
  await app.kill(killing);
  await ended;
}

/** Opens the app and waits until it has read what is left to be read. */
async function arrive(app: KillableApp, ledger: Ledger): Promise<OpenPage> {
  const here = await app.open();
  await headingOf(here.page, /./);
  await reportSaves(here.page, (session) => ledger.said(session));
  await untilSaved(here.page);
  const said = await bannerText(here.page);
  if (said !== '') throw new Error(`the app opens with a trouble: ${said}`);
  return here;
}

/** Holds the store against the ledger; what is to be thrown away may take the page a moment. */
async function judge(here: OpenPage, ledger: Ledger): Promise<void> {
  const until = performance.now() + 20_000;
  for (;;) {
    const found = await lookIntoStore(here.page);
    const faults = ledger.judge(found);
    const { document } = await benchState(here.page);
    if (!found.sessions.some(({ id }) => id === document.id)) {
      faults.push(`the app opened ${document.name}, which is not stored`);
    }
    if (faults.length === 0) break;
    if (performance.now() > until) throw new Error(faults.join('\n'));
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  refuseComplaints(here);
}

function refuseComplaints({ complaints }: OpenPage): void {
  if (complaints.length > 0) throw new Error(complaints.join('\n'));
}
