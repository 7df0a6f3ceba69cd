import type { Doubt } from '../../plan/leg.ts';

/** What a part of a band comes from, as a person would point at it; `doubt.<key>` of the language catalogue has the words. */
type DoubtKey = Doubt['from'] | 'foot' | 'surface' | 'point-named' | 'thing-named';

/** A foot or a surface typed with a leg is told by that leg; a point or a thing by its name. */
export function doubtKey({ from, name, field }: Pick<Doubt, 'from' | 'name' | 'field'>): DoubtKey {
  if (name === '') return from;
  if (field.includes('/foot/at')) return 'foot';
  if (field.includes('/foot/surface')) return 'surface';
  return from === 'point' || from === 'thing' ? `${from}-named` : from;
}
