import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Job } from './job/job.ts';
import { parseJob } from './job/validate.ts';
import { words } from './language/words.ts';
import { planInWords } from './plan-in-words.ts';
import { SHEET_NAMES, renderSheet } from './sheets/render-sheet.ts';

/** Where a command writes: results to `out`, everything else to `say`, a line each. */
export type Terminal = { readonly out: (text: string) => void; readonly say: (text: string) => void };

/** 0: done. 1: a sheet could not be made. 2: the command or its job cannot be read. */
export type ExitCode = 0 | 1 | 2;

const USAGE = [
  'npm run --silent plan -- job.json            prints the plan as JSON',
  'npm run --silent sheets -- job.json folder   writes the sheets as PDF files',
];

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The job in a file; undefined where there is none, after saying why. */
async function jobIn(file: string, { say }: Terminal): Promise<Job | undefined> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    say(`${file} cannot be read: ${reasonOf(error)}`);
    return undefined;
  }
  let document: unknown;
  try {
    document = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    say(`${file} is not JSON: ${reasonOf(error)}`);
    return undefined;
  }
  const parsed = parseJob(document);
  if (parsed.ok) return parsed.job;
  for (const { field, message } of parsed.problems) say(`${field === '' ? file : field}: ${message}`);
  return undefined;
}

async function writeSheets(job: Job, folder: string, { out, say }: Terminal): Promise<ExitCode> {
  const plan = planInWords(job);
  let code: ExitCode = 0;
  try {
    await mkdir(folder, { recursive: true });
    for (const name of SHEET_NAMES) {
      const sheet = await renderSheet(name, { plan, job, revision: null });
      if (sheet.ok) {
        const file = join(folder, `${name}.pdf`);
        await writeFile(file, sheet.pdf);
        out(file);
      } else {
        say(`${name}: ${words(`sheet.reason.${sheet.reason}`)}`);
        code = 1;
      }
    }
  } catch (error) {
    if (!(error instanceof Error && 'syscall' in error)) throw error;
    say(`${folder} cannot be written: ${error.message}`);
    return 2;
  }
  for (const { grade, message } of plan.findings) if (grade === 'stop') say(message ?? grade);
  return code;
}

/**
 * The same plan and sheets from a terminal.
 *
 * @param words the command with its arguments: 'plan', 'job.json'
 */
export async function runCommand(
  [command, file, folder, ...rest]: readonly string[],
  terminal: Terminal,
): Promise<ExitCode> {
  const isPlan = command === 'plan' && folder === undefined;
  const isSheets = command === 'sheets' && folder !== undefined && rest.length === 0;
  if (file === undefined || !(isPlan || isSheets)) {
    for (const line of USAGE) terminal.say(line);
    return 2;
  }
  const job = await jobIn(file, terminal);
  if (job === undefined) return 2;
  if (folder !== undefined) return writeSheets(job, folder, terminal);
  terminal.out(JSON.stringify(planInWords(job), null, 2));
  return 0;
}
