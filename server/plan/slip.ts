import { literals } from './figure.ts';

/** The classic ways of taking a sketch or its marks wrong; common practice, no source. */
export const SLIP_KEYS = [
  'outside-read-as-centre',
  'outside-read-as-inside',
  'centre-read-as-outside',
  'centre-read-as-inside',
  'inside-read-as-outside',
  'inside-read-as-centre',
  'apex-as-start',
  'apex-as-middle',
  'cut-to-apexes',
  'springback-left-out',
  'other-die',
] as const;
export const SlipKey = literals(SLIP_KEYS, 'slip');
export type SlipKey = (typeof SLIP_KEYS)[number];
