import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { runCommand } from '../../server/command-line.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { planInWords } from '../../server/plan-in-words.ts';
import { SHEET_NAMES } from '../../server/sheets/render-sheet.ts';

let folder: string;
beforeEach(() => void (folder = mkdtempSync(join(tmpdir(), 'hoopwright-cli-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function jobFile(content: unknown): string {
  const file = join(folder, 'job.json');
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

async function run(...args: string[]) {
  const out: string[] = [];
  const said: string[] = [];
  const code = await runCommand(args, { out: (text) => out.push(text), say: (text) => said.push(text) });
  return { code, out: out.join('\n'), said: said.join('\n') };
}

const tooThick = () => ({ ...landingStage(), tube: { ...landingStage().tube, wall: 25 } });

describe('plan', () => {
  it('prints the plan and nothing else', async () => {
    const { code, out, said } = await run('plan', jobFile(landingStage()));
    expect({ code, said }).toEqual({ code: 0, said: '' });
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(planInWords(landingStage()))));
  });

  it('prints a plan with stops as a plan', async () => {
    const { code, out } = await run('plan', jobFile(tooThick()));
    expect(code).toBe(0);
    expect((JSON.parse(out) as Plan).findings).toContainEqual(expect.objectContaining({ grade: 'stop' }));
  });

  it('takes a file with a byte order mark', async () => {
    expect((await run('plan', jobFile(`\uFEFF${JSON.stringify(newJob('straight'))}`))).code).toBe(0);
  });
});

describe('what cannot be read ends with 2 and says why', () => {
  it.each<[string, unknown, RegExp]>([
    ['no JSON', '{', /job\.json is not JSON/],
    ['an empty file', '', /job\.json is not JSON/],
    ['no job', '[]', /job\.json: This is a list of 0, not a job/],
    ['a newer job', { ...newJob('ring'), version: 9 }, /^\/version: .*newer version of the program/],
    ['a wrong value', { ...newJob('ring'), title: 5 }, /^\/title: Title is 5; it takes a text/],
  ])('%s', async (_what, content, reason) => {
    const { code, out, said } = await run('plan', jobFile(content));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(said).toMatch(reason);
  });

  it('a missing file, a folder in its place', async () => {
    expect(await run('plan', join(folder, 'none.json'))).toMatchObject({ code: 2, out: '' });
    expect((await run('plan', folder)).said).toContain('cannot be read');
  });

  it.each([[[]], [['plan']], [['plan', 'a', 'b']], [['sheets', 'a']], [['sheets', 'a', 'b', 'c']], [['draw', 'a']]])(
    'the command %j',
    async (args) => {
      const { code, out, said } = await run(...args);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(said).toContain('plan -- job.json');
    },
  );
});

describe('sheets', () => {
  it('writes each sheet that can be made, names the others and ends with 1', async () => {
    const made = join(folder, 'new', 'sheets');
    const { code, out, said } = await run('sheets', jobFile({ ...landingStage(), cameBack: null }), made);
    expect(code).toBe(1);
    expect(said).toMatch(/^comparison: There is nothing to compare/m);
    expect(readdirSync(made)).toContain('bend.pdf');
    expect(readdirSync(made)).not.toContain('comparison.pdf');
    for (const file of out.split('\n')) expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('of a frame that cannot be made says so for every one and tells the stop', async () => {
    const made = join(folder, 'none');
    const { code, out, said } = await run('sheets', jobFile(tooThick()), made);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    for (const name of SHEET_NAMES) expect(said).toContain(`${name}: There is n`);
    expect(said).toMatch(/^Wall: /m);
  });

  it('into a place that cannot be written ends with 2', async () => {
    const file = jobFile(landingStage());
    const { code, said } = await run('sheets', file, file);
    expect(code).toBe(2);
    expect(said).toContain('cannot be written');
    expect(existsSync(join(file, 'bend.pdf'))).toBe(false);
  });
});
