import type { Answer } from '../../web/api/client.ts';

export type Said = Answer<unknown, unknown>;
export const done = (body?: unknown): Said => ({ kind: 'done', body });
export const silence: Said = { kind: 'unreachable', reason: 'silence' };
export const refused = (reason: string): Said => ({ kind: 'refused', problems: [], reason });

/** A source that answers what a test tells it to, and says what it was asked. */
export function sourceOf<Source>(names: readonly string[], answers: Said[], more: object = {}) {
  const asked: unknown[][] = [];
  const calls = names.map((what) => [
    what,
    async (...given: unknown[]) => {
      asked.push([what, ...given]);
      return answers.shift() ?? silence;
    },
  ]);
  return { source: { ...Object.fromEntries(calls), ...more } as Source, asked };
}
