import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';

/** Nothing has that name; what it is measured from is measured from it; or it cannot be told, which is said elsewhere. */
type Untold = 'missing' | 'circle' | 'failed';
export type Told<Value> = { readonly value: Value } | { readonly untold: Untold };

export type Lookup<Value> = {
  readonly at: (index: number) => Told<Value>;
  readonly named: (name: string) => Told<Value>;
};

/** Where each name stands first: of two that are called the same the first counts. An empty name is a name. */
function firsts(items: readonly { readonly name: string }[]): ReadonlyMap<string, number> {
  const first = new Map<string, number>();
  for (const [index, { name }] of items.entries()) if (!first.has(name)) first.set(name, index);
  return first;
}

/** Those of a list whose name was taken by one before it, as stops at their names. */
export function namedTwice(items: readonly { readonly name: string }[], field: string): Finding[] {
  const first = firsts(items);
  return items.flatMap(({ name }, index) =>
    first.get(name) === index ? [] : [finding('site-name-twice', 'stop', `${field}/${String(index)}/name`, { name })],
  );
}

/** True for the first of its name. */
export const isFirst = (items: readonly { readonly name: string }[], index: number): boolean =>
  items.findIndex(({ name }) => name === items[index]?.name) === index;

/**
 * Looks up what each of a list comes to, by its place or its name. Each is worked out once, when it is first asked for,
 * so that they may rest on each other in any order; one that leads back to itself is a circle.
 *
 * @param work null where it cannot be told
 */
export function lookup<Item extends { readonly name: string }, Value>(
  items: readonly Item[],
  work: (item: Item, index: number) => Value | null,
): Lookup<Value> {
  const first = firsts(items);
  const known = new Map<number, Told<Value>>();
  const at = (index: number): Told<Value> => {
    const before = known.get(index);
    if (before !== undefined) return before;
    const item = items[index];
    if (item === undefined) return { untold: 'missing' };
    known.set(index, { untold: 'circle' });
    const value = work(item, index);
    const told: Told<Value> = value === null ? { untold: 'failed' } : { value };
    known.set(index, told);
    return told;
  };
  return { at, named: (name) => at(first.get(name) ?? -1) };
}

/** What to say at a field that asks for something by name; null where it is told, or said at the thing itself. */
export function untold<Value>(told: Told<Value>, name: string, field: string): Finding | null {
  if (!('untold' in told) || told.untold === 'failed') return null;
  return finding(told.untold === 'missing' ? 'site-name-missing' : 'site-point-circle', 'stop', field, { name });
}
