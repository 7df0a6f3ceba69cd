import type { Job } from '../../server/job/job.ts';
import { withPasted, type PastePlace, type Table } from './paste.ts';
import { pasteProblemWords, pastedWords } from './paste-words.ts';
import { cellsOf } from './pasted-cells.ts';

/** What came of pasting a text, in words. */
export type PastedText =
  | { readonly ok: true; readonly job: Job; readonly count: number; readonly left: number; readonly said: string }
  /** `row`: the one in the way, as pasted, from 1; 0 where it is not one of them. */
  | { readonly ok: false; readonly row: number; readonly said: string };

/** Pastes a text from a spreadsheet into a table of the job. */
export function pasteText(job: Job, text: string, table: Table, place: PastePlace): PastedText {
  const pasted = withPasted(job, cellsOf(text), table, place);
  if (pasted.ok)
    return {
      ok: true,
      job: pasted.job,
      count: pasted.count,
      left: pasted.left,
      said: pastedWords(pasted, table.pointer),
    };
  const { problem } = pasted;
  return { ok: false, row: 'row' in problem ? problem.row : 0, said: pasteProblemWords(problem, table.pointer) };
}
