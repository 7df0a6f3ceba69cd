/**
 * Everything that a number rests on. `kind` says how far it can be trusted: a standard or handbook, a paper, a
 * derivation of this program that its tests check, a practice of the trade without a source, or memory.
 */
export type Source = {
  readonly title: string;
  readonly place: string;
  readonly kind: 'standard' | 'handbook' | 'paper' | 'derivation' | 'practice' | 'memory' | 'typed';
};

const source = (title: string, place: string, kind: Source['kind']): Source => ({ title, place, kind });

export const SOURCES = {
  typed: source('Typed in this job', '', 'typed'),
  geometry: source('Plane and solid geometry', 'derived, checked against a geometry kernel', 'derivation'),
  practice: source('Common practice, no source', '', 'practice'),
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;
