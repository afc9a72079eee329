import { readTake } from '../src/reading/read-take';
import { renderCapture } from '../src/rig/practice-capture';
import { practiceSystem, type PracticeSystem } from '../src/rig/practice-system';
import { layoutFromName } from '../src/system/layout';
import { planTake } from '../src/take/plan-take';
import { compareVisits } from '../src/visits/compare-visits';
import { visit, withReadingsOf } from './src/visits/told-visits';

const settings = { sweepSeconds: 2.7, averages: 1, pauseSeconds: 0, overlap: false, repeats: 0 };
const layout: any = layoutFromName('5.1.2');
const plan: any = planTake(layout, settings, null, {});
const schedule = plan.parts[0].schedule;
async function hear(system: PracticeSystem) {
  const samples: any = await renderCapture(system, schedule, { processor: null });
  return (await readTake(schedule, { samples, sampleRate: 48000 }, { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: false, inForce: null } as any)) as any;
}
const doc = (id: string, readings: any) => {
  const d = withReadingsOf(visit(id), readings);
  return { ...d, layout: layout.name, takes: d.takes.map((t) => ({ ...t, schedule })) } as any;
};
const seeds = process.argv.slice(2).map(Number);
const move = (s: PracticeSystem, dx: number, dy: number, dz = 0) => ({ ...s, microphone: { x: s.microphone.x + dx, y: s.microphone.y + dy, z: s.microphone.z + dz } });
for (const seed of seeds) {
  const base = practiceSystem(layout, seed);
  const before = doc('then', await hear(base));
  const again = { ...base, seed: seed + 100, skewPpm: -base.skewPpm, sensitivityDb: base.sensitivityDb - 3 };
  const cases: [string, PracticeSystem][] = [
    ['again, gain -3', again],
    ['mic 2 cm off', move(again, 0.012, -0.012, 0.01)],
    ['mic 25 cm back', move(again, 0.05, -0.25)],
    ['SiL 30 cm off', { ...again, speakers: again.speakers.map((s) => s.channel === 'SiL' ? { ...s, speaker: { ...s.speaker, position: { ...s.speaker.position, y: s.speaker.position.y + 0.3 } } } : s) }],
    ['noise +20', { ...again, noise: { ...again.noise, pink: again.noise.pink * 10 } }],
  ];
  for (const [name, system] of cases) {
    const t = performance.now();
    const now = doc('now', await hear(system));
    const t2 = performance.now();
    const c = compareVisits(now, before);
    console.log(`== ${seed} ${name} ${JSON.stringify(c.counts)} heard ${(t2 - t) | 0} ms, compared ${(performance.now() - t2) | 0} ms`);
    for (const f of c.findings) if (f.position && f.verdict !== 'as it was') console.log(`  ${f.verdict}: ${f.id} ${f.sentence}`);
    if (name.startsWith('again')) for (const f of c.findings) if (f.position && f.verdict === 'as it was') console.log(`  ok: ${f.id} ${f.sentence}`);
  }
}
