import type { Doubt } from '../plan/leg.ts';
import { wordsOf } from './words.ts';

/** What a part of a band comes from: 'the foot of port leg', 'the point quay corner', 'the level'. */
export const doubtWords = (doubt: Pick<Doubt, 'words' | 'name'>): string =>
  wordsOf('doubt', doubt.words, { which: doubt.name });
