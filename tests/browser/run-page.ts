import type { Page } from 'playwright-core';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { field, open, settled, stage } from './person.ts';
import type { ScreenName, Workshop } from './workshop.ts';

/** A table as a spreadsheet copies it: named columns in an order of its own, a decimal comma beside a point. */
export const TABLE = [
  'z (mm)\ty\tx\tr',
  '0\t0\t0\t',
  '0\t0\t600\t',
  '0\t500\t600\t120',
  '400\t500\t600\t',
  '400\t500\t1.200,5\t',
].join('\r\n');

export function points({ frame }: Job) {
  if (frame.shape !== 'run') throw new Error('This job is no run.');
  return frame.points;
}

/** Pastes a text into a cell as the clipboard gives it. */
export async function paste(page: Page, pointer: string, text: string): Promise<void> {
  const cell = await field(page, pointer);
  await cell.focus();
  await cell.evaluate((input, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', pasted);
    input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

/** Pastes a table that can be read into its first cell, and waits until it is planned and saved. */
export async function pasteWell(page: Page, text: string): Promise<void> {
  await paste(page, '/frame/points/0/x', text);
  await stage(page, 'wanted')
    .getByText(/rows pasted/)
    .waitFor();
  await settled(page);
}

/** A run of its own on a new visitor's screen, with what the page asks the server for. */
export async function openRun(
  workshop: Workshop,
  screen: ScreenName,
): Promise<{ page: Page; id: string; asked: readonly string[] }> {
  const id = await workshop.store(newJob('run'));
  const page = await workshop.visit(screen);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await open(page, id);
  return { page, id, asked };
}
