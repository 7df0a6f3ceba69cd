// How fast a plan, a request and a sheet are, beside the geometry kernel's own time for the same tubes. Figures and
// ratios are printed; nothing is asserted, since a machine's load is not the program's fault.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { projectFolder } from '../../server/config.ts';
import { renderSheet, SHEET_NAMES } from '../../server/sheets/render-sheet.ts';
import { lastFew } from '../../server/solver/memory.ts';
import { plan } from '../../server/solver/plan.ts';
import { nestingBench } from './nesting-bench.ts';
import { spliceBench } from './splice-bench.ts';
import { thirtyBends } from './thirty-bends.ts';
import { typingTimes } from './typing.ts';
import { measureTube, startKernel } from '../kernel/kernel.ts';

const job = landingStage();
let flow = job.purge.prePurgeFlow;

/** Times of many calls, sorted [ms]. */
function timesOf(count: number, work: () => unknown): number[] {
  return Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
}

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;

const row = (name: string, value: number, goal: string): void =>
  console.log(`${name.padEnd(44)} ${value.toFixed(2).padStart(9)} ms   ${goal}`);

timesOf(1500, () => plan(job));
const plans = timesOf(1000, () => plan(job));
row('plan(demo), median', at(plans, 0.5), 'goal 5');
row('plan(demo), 99 of 100', at(plans, 0.99), '');
// a flow that is typed letter by letter: bends and ways are those of the plan before
const memory = lastFew(1);
const flows = timesOf(1000, () => {
  flow = flow === 9 ? 10 : 9;
  return plan({ ...job, purge: { ...job.purge, prePurgeFlow: flow } }, memory);
});
row('plan(demo), a flow typed, median', at(flows, 0.5), 'goal 10');
row('plan(demo), a flow typed, 99 of 100', at(flows, 0.99), '');
const asNew = timesOf(1000, () => plan({ ...job, cameBack: null }));
row('plan(demo made new), median', at(asNew, 0.5), 'goal 10');
const long = thirtyBends();
timesOf(500, () => plan(long));
const longPlans = timesOf(1000, () => plan(long));
row('plan(run of 30 bends), median', at(longPlans, 0.5), 'goal 5');
row('plan(run of 30 bends), 99 of 100', at(longPlans, 0.99), '');
spliceBench();
await nestingBench();

const data = mkdtempSync(join(tmpdir(), 'hoopwright-bench-'));
const server = spawn(process.execPath, ['dist/server/main.js'], {
  cwd: projectFolder(),
  env: { ...process.env, HOOPWRIGHT_PORT: '0', HOOPWRIGHT_DATA: data },
  stdio: ['ignore', 'pipe', 'inherit'],
});
// a bench that fails leaves no server behind
process.once('exit', () => server.kill());
const port = await new Promise<number>((resolve) => {
  server.stdout.on('data', (chunk: Buffer) => {
    const found = /127\.0\.0\.1:(\d+)/.exec(chunk.toString());
    if (found !== null) resolve(Number(found[1]));
  });
});
const body = JSON.stringify(job);
const agent = new Agent({ keepAlive: true });

/** Time until the last byte of an answer is there [ms]. */
const answered = () =>
  new Promise<number>((resolve, reject) => {
    const start = performance.now();
    const headers = { 'content-type': 'application/json' };
    const asked = request({ host: '127.0.0.1', port, path: '/api/plan', method: 'POST', agent, headers }, (answer) => {
      answer.resume().on('end', () => resolve(performance.now() - start));
    });
    asked.on('error', reject).end(body);
  });

const answers: number[] = [];
for (let round = 0; round < 2000; round += 1) answers.push(await answered());
const warm = answers.slice(1000).sort((a, b) => a - b);
row('POST /api/plan on loopback, median', at(warm, 0.5), '');
row('POST /api/plan on loopback, 99 of 100', at(warm, 0.99), 'goal 20');
agent.destroy();
const address = `http://127.0.0.1:${String(port)}`;
const stored = await fetch(`${address}/api/jobs`, {
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ job }),
});
const { id } = (await stored.json()) as { readonly id: string };
const typed = await typingTimes(address, id, 200);
row('a letter typed to the new drawing, median', at(typed, 0.5), '');
row('a letter typed to the new drawing, 95 of 100', at(typed, 0.95), 'goal 50');
server.kill();
rmSync(data, { recursive: true, force: true });

await startKernel();
const made = plan(job);
const members = made.frame?.members ?? [];
const kernel = timesOf(10, () => {
  for (const member of members) measureTube(member.pieces, job.tube);
});
row('geometry kernel, the same tubes swept, median', at(kernel, 0.5), '');
console.log(`kernel / plan: ${(at(kernel, 0.5) / at(plans, 0.5)).toFixed(1)}`);

for (const name of SHEET_NAMES) {
  const times: number[] = [];
  for (let round = 0; round < 10; round += 1) {
    const start = performance.now();
    await renderSheet(name, { plan: made, job, revision: null });
    times.push(performance.now() - start);
  }
  const [first = Number.NaN, ...others] = times;
  row(`sheet ${name}, first of the process`, first, '');
  row(`sheet ${name}, slowest of 9 more`, Math.max(...others), 'goal 300');
}
