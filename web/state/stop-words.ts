import type { Units } from '../../server/job/job.ts';
import { describeFinding, isFindingCode } from '../../server/language/finding-words.ts';

/** Why an option cannot be done, in words, from the code of a finding that it would have. */
export const stopWords = (code: string, units: Units): string =>
  isFindingCode(code) ? describeFinding({ code, grade: 'stop', field: '', data: {}, wayOut: null }, units) : code;
