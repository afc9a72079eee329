import { judgeVisit, meddlings, visitHouse } from './visit-pairs';

/*
 * npx tsx tests/accuracy/visits.ts FIRST COUNT: houses that are read, meddled with in one way, and
 * read again by another microphone clock, gain and tape; prints what was missed and what was found
 * though nobody touched it, and fails when there is any.
 */
const [first = '0', count = '30'] = process.argv.slice(2);
const tally = new Map(meddlings.map(({ name }) => [name, { houses: 0, named: 0, wrong: 0 }]));
for (let seed = Number(first); seed < Number(first) + Number(count); seed++) {
  const house = await visitHouse(seed);
  for (const meddling of meddlings) {
    const comparison = await house.compare(meddling);
    const { missed, wrong } = judgeVisit(meddling, comparison);
    const row = tally.get(meddling.name);
    if (row) {
      row.houses++;
      if (missed.length === 0) row.named++;
      row.wrong += wrong.length;
    }
    for (const id of missed) {
      const said = comparison.findings.filter((one) => one.id.startsWith(id));
      console.log(`house ${seed}, ${meddling.name}: missed ${id}`);
      for (const { verdict, sentence } of said) console.log(`    ${verdict}: ${sentence}`);
    }
    for (const sentence of wrong) console.log(`house ${seed}, ${meddling.name}: false ${sentence}`);
  }
}
console.log('done between the visits    named  false findings');
for (const [name, { houses, named, wrong }] of tally) {
  console.log(
    `${name.padEnd(24)} ${`${named}/${houses}`.padStart(7)} ${String(wrong).padStart(8)}`,
  );
  if (named < houses || wrong > 0) process.exitCode = 1;
}
