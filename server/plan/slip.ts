import { literals } from './figure.ts';

/** The classic ways of taking a sketch, its marks or the bends wrong; common practice, no source. */
export const SLIP_KEYS = [
  'outside-read-as-centre',
  'outside-read-as-inside',
  'centre-read-as-outside',
  'centre-read-as-inside',
  'inside-read-as-outside',
  'inside-read-as-centre',
  'apex-as-start',
  'apex-as-middle',
  'start-as-end',
  'marks-from-other-end',
  'cut-to-apexes',
  'stretch-left-out',
  'stretch-twice',
  'other-die',
  'springback-left-out',
  'springback-twice',
  'angle-as-supplement',
  'rotations-other-way',
  'bend-other-way',
  'other-hand',
] as const;
export const SlipKey = literals(SLIP_KEYS, 'slip');
export type SlipKey = (typeof SLIP_KEYS)[number];
