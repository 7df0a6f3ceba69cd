import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractConfiguration from 'dependency-cruiser/config-utl/extract-depcruise-config';
import extractTypeScriptConfiguration from 'dependency-cruiser/config-utl/extract-ts-config';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { findings } from '../server/language/en/findings.ts';
import { FINDING_CODES } from '../server/plan/finding-codes.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'hoopwright-imports-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** Every source file below a folder of the project, by its path from the root. */
function sources(folder: string): string[] {
  const entries = readdirSync(join(root, folder), { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile() && /\.(ts|svelte|mjs)$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)));
}

const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Holds the imports below a folder against the rules that stand for the table of DEVELOPERS.md. */
async function imports(baseDir: string, folders: string[]): Promise<ICruiseResult> {
  const { options = {}, ...ruleSet } = await extractConfiguration(join(root, '.config/dependency-cruiser.js'));
  const { enhancedResolveOptions, ...rest } = options;
  const { output } = await cruise(
    folders,
    { ...rest, baseDir, validate: true, ruleSet },
    { ...enhancedResolveOptions },
    { tsConfig: extractTypeScriptConfiguration(join(root, 'tsconfig.json')) },
  );
  if (typeof output === 'string') throw new Error(output);
  return output;
}

const named = (result: ICruiseResult) =>
  result.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`).sort();

describe('imports', () => {
  it('keep to the table, in every file there is', { timeout: 60_000 }, async () => {
    const folders = ['server', 'db', 'web'];
    const result = await imports(root, folders);
    const cruised = new Set(result.modules.map(({ source }) => source));
    const missed = folders.flatMap(sources).filter((file) => !file.endsWith('.d.mts') && !cruised.has(file));
    expect(missed).toEqual([]);
    expect(cruised.size).toBeGreaterThan(100);
    expect(named(result)).toEqual([]);
  });

  it('that break the table are found', { timeout: 60_000 }, async () => {
    const planted: Record<string, string> = {
      'server/solver/a.ts':
        "import { readFileSync } from 'node:fs';\nimport { b } from '../job/b.ts';\nreadFileSync(b);",
      'server/job/b.ts': "import { c } from '../../db/c.ts';\nexport const b = c;",
      'db/c.ts': "import { d } from '../server/sheets/d.ts';\nexport const c = d;",
      'server/sheets/d.ts':
        "import { e } from '../solver/e.ts';\nimport type { E } from '../solver/e.ts';\nexport const d: E = e;",
      'server/solver/e.ts': "export type E = string;\nexport const e: E = '';",
      'server/exports/g.ts': "import { e } from '../solver/e.ts';\nexport const g = e;",
      'server/nesting/h.ts': "import { d } from '../sheets/d.ts';\nexport const h = d;",
      'server/sheets/i.ts': "import { h } from '../nesting/h.ts';\nexport const i = h;",
      'web/f.ts': "import { b } from '../server/job/b.ts';\nimport './gone.ts';\nexport const f = b;",
    };
    for (const [file, text] of Object.entries(planted)) {
      mkdirSync(dirname(join(scratch, file)), { recursive: true });
      writeFileSync(join(scratch, file), text);
    }
    cpSync(join(root, 'tsconfig.json'), join(scratch, 'tsconfig.json'));
    const result = await imports(scratch, ['server', 'db', 'web']);
    const found = new Set(named(result));
    expect(found).toContain('solver-is-pure: server/solver/a.ts → fs');
    expect(found).toContain('solver-takes-types-of-documents: server/solver/a.ts → server/job/b.ts');
    expect(found).toContain('documents-stand-alone: server/job/b.ts → db/c.ts');
    expect(found).toContain('database-knows-documents-only: db/c.ts → server/sheets/d.ts');
    expect(found).toContain('sheets-take-types-and-words: server/sheets/d.ts → server/solver/e.ts');
    expect(found).toContain('exports-take-types-and-words: server/exports/g.ts → server/solver/e.ts');
    expect(found).toContain('nesting-takes-documents-and-solver: server/nesting/h.ts → server/sheets/d.ts');
    expect(found).toContain('nesting-is-for-routes: server/sheets/i.ts → server/nesting/h.ts');
    expect(found).toContain('page-takes-types-and-words: web/f.ts → server/job/b.ts');
    expect([...found].some((violation) => violation.startsWith('resolvable: web/f.ts'))).toBe(true);
  });
});

describe('the solver', () => {
  it('has no clock, no chance, no console and no surroundings', () => {
    const impure =
      /\b(Date|performance|console|process|globalThis|setTimeout|setInterval|fetch|Intl)\s*[.(]|Math\.random|new Date|import\(|import\.meta/;
    const found = sources('server/solver').filter((file) =>
      impure.test(read(file).replace(/\/\*[^]*?\*\/|\/\/.*/g, '')),
    );
    expect(found).toEqual([]);
  });

  it('has words for every finding', () => {
    expect(Object.keys(findings).sort()).toEqual([...FINDING_CODES].sort());
  });
});

describe('files', () => {
  const all = ['server', 'db', 'web', 'tests'].flatMap(sources);

  it('are short', () => {
    const long = all.map((file) => `${String(read(file).split('\n').length - 1)} ${file}`);
    expect(long.filter((line) => Number.parseInt(line, 10) > 250)).toEqual([]);
  });

  it('leave nothing for later', () => {
    const left = new RegExp(
      ['TO' + 'DO', 'FIX' + 'ME', '@ts-' + 'ignore', String.raw`\b(it|test|describe)\.(skip|only|todo)\b`].join('|'),
    );
    expect(all.filter((file) => left.test(read(file)))).toEqual([]);
  });

  it('are named after the one thing inside', () => {
    const name = /^([a-z0-9]+(-[a-z0-9]+)*(\.(test|bench|svelte|config|d))?\.(ts|mjs|mts)|[A-Z]\w*\.svelte)$/;
    expect(all.filter((file) => !name.test(file.slice(file.lastIndexOf('/') + 1)))).toEqual([]);
  });
});
