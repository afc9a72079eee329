import { msg, str } from '@lit/localize';
import { startLocale } from '../src/locale/kept-preferences';
import type { Late } from '../src/late';
import { followUpdates } from '../src/offline/follow-updates';
import type { Updates } from '../src/offline/updates';
import type { Bench } from '../src/session/bench';
import { createBench } from '../src/session/create-bench';
import { openStore } from '../src/session/store';
import { lateLive, latePractice } from '../src/session/late-rigs';
import { lateRuns } from '../src/session/run/late-runs';
import { loadWhenIdle } from './late/load-when-idle';
import { lateInspect } from './probe/inspect/late-inspect';
import './shell/app';
import { lateStages } from './shell/late-stages';
import { mayReload } from './shell/may-reload';
import { stageFromHash, stageOrder } from './shell/stages';

/** Opens the bench and shows it, with the stage it begins at; the rest follows in its own time. */
async function start(): Promise<void> {
  await startLocale();
  const stage = lateStages[stageFromHash(location.hash)].load();
  const app = document.createElement('ll-app');
  const bench = await createBench(openStore());
  // A stage that does not come is said by the shell.
  await stage;
  app.bench = bench;
  app.updates = startUpdates(bench);
  document.body.append(app);
  await app.updateComplete;
  void loadWhenIdle([...stageOrder.map((id) => lateStages[id]), ...laterParts(bench)]);
}

/** What is wanted soon after the stages. The live rig is no burden to those who never connect one. */
function laterParts({ state }: Bench): Late<object>[] {
  const rig = state.document.rig === 'live' ? lateLive : latePractice;
  return [lateRuns, rig, lateInspect];
}

/** The built app is kept in the browser where that is allowed: on https and localhost. */
function startUpdates(bench: Bench): Updates | null {
  if (!import.meta.env.PROD || !isSecureContext || !('serviceWorker' in navigator)) return null;
  const worker = new URL('service-worker.js', document.baseURI).href;
  return followUpdates(navigator.serviceWorker, worker, () => {
    if (mayReload(bench.state)) location.reload();
  });
}

start().catch((error: unknown) => {
  const why = error instanceof Error ? error.message : String(error);
  const sentence = document.createElement('p');
  sentence.setAttribute('role', 'alert');
  sentence.textContent = msg(
    str`Leadline could not start: ${why}. Reload the page; saved sessions are untouched.`,
  );
  document.body.append(sentence);
});
