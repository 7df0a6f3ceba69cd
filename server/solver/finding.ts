import type { Finding, FindingCode, FindingGrade } from '../plan/finding.ts';

/**
 * A finding.
 *
 * @param code from the closed list in server/plan/finding-codes.ts
 * @param grade note, caution or stop
 * @param field JSON pointer of the Job field that causes it, for instance '/tube/wall'
 * @param data what the words of this code need; a value out of its range gives `value`, `low` and/or `high`
 * @param wayOut a field and the value that would mend it
 */
export function finding(
  code: FindingCode,
  grade: FindingGrade,
  field: string,
  data: Record<string, number | string> = {},
  wayOut: Finding['wayOut'] = null,
): Finding {
  return { code, grade, field, data, wayOut };
}
