/**
 * Everything that a number rests on. `kind` says how far it can be trusted: a standard or handbook, a paper, a
 * derivation of this program that its tests check, a practice of the trade without a source, or memory.
 */
export type Source = {
  readonly title: string;
  readonly place: string;
  readonly kind: 'standard' | 'handbook' | 'paper' | 'derivation' | 'practice' | 'memory' | 'typed';
};

export const source = (title: string, place: string, kind: Source['kind']): Source => ({ title, place, kind });
